// Package house is the house rules in force: which figures a rig must keep to, and how
// grave a finding is.
//
// It is given the policies that apply to a file, the usual ones first, and answers for
// each figure and each rule what holds, and which line says so. It looks at no rig and
// reads no file but the usual rules, which are part of the program.
package house
