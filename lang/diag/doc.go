// Package diag is the one form in which every stage reports a problem.
//
// A stage gives its result and its diagnostics; it never fails instead. The
// package does not know the notation, prints nothing and computes nothing.
package diag
