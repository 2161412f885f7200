// Package setups holds the tests of what users copy to bring Fairlead into their editor
// and their version control: the folders examples/editors and examples/hooks.
//
// Each set-up is tried in the real program it is made for, on the blocks of the manual
// and in fresh repositories; where that program is not installed, its tests are skipped
// and say so. The word lists of the highlighting are written here, from the vocabulary of
// the notation, by -update.
//
// It is given the files of the tree and knows nothing of what the program computes.
package setups
