// Package rigfmt writes a rig file in the standard style.
//
// It is given a source.File and gives its text anew: the same statements, tokens
// and comments in the same order, only the layout and the order of the clauses
// of a part changed. A file with an error in its text is left as it is. The
// package does not know what a rig means, and writes no file.
package rigfmt
