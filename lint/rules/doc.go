// Package rules is the list of the linter's rules, each with its page.
//
// A rule is a literal of data and one function that is given a solved rig and
// reports what it finds. It asks the solver for every force, motion and fall: it
// computes no mechanics, holds no threshold of its own, and does not look at the
// shape of the text. Its page says what it finds and why it matters, and
// is its test: the rigs on it are examined, and what comes out stands on it.
package rules
