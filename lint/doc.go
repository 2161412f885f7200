// Package lint runs rules over solved rigs and settles what their authors claim.
//
// It is given loaded files and a list of rules. It solves every rig once, lets
// each rule look at the result, and gives all findings: those of the text and of
// the names, those of the rules, and those about claims, in the order of the
// files. A fix is offered only when it is proved: the edit is made in memory, the
// text read again and the rig solved again. Mend makes the fixes of a file in
// memory, those of the text too, and proves each by examining the whole file again.
//
// It holds no rule itself and computes no mechanics: forces, motion and falls are
// the solver's answers. It prints nothing and writes no file.
package lint
