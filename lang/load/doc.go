// Package load finds rig files, reads and resolves them.
//
// It is given paths, standard input and perhaps texts that an editor has not
// saved yet, and gives for each file its text, tree, model and findings, with the files
// that it uses and the house rules that hold for it. It is the only package of lang that
// opens files. It prints nothing and judges nothing.
package load
