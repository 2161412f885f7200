// Package cli is the command line: one file for each sub-command.
//
// It is given the arguments and the standard streams, and gives the exit status.
// It decides which files are read, in which form results are written and what
// counts as found; it computes nothing and finds nothing itself.
package cli
