// Package tidy holds the house rules of the source tree as tests: what stands at
// the top level, which package may import which, how long files and functions may
// be, and that every rule has its page.
//
// It is given the files of the tree and knows nothing of what they compute.
package tidy
