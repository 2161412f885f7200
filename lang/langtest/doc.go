// Package langtest helps tests of the notation: texts in which the expected
// findings are marked where they must be, and golden files.
//
// # Marks
//
// A mark is ⟦text⟧rule: a finding of that rule, whose place is exactly the text
// between the brackets. The marks are taken out before the text is used:
//
//	pulley top on ⟦hed⟧unknown-part
//
// Several findings at one place are written with commas, ⟦text⟧rule,rule. Marks
// may stand inside one another, and an empty pair ⟦⟧rule marks a place at which
// something is missing. Check fails for every mark without its finding and for
// every finding without its mark, so a test says everything that is found.
//
// # Goldens
//
// Golden compares a text with a file and, with -update, writes the file:
//
//	go test ./lang/… -update
//
// The package knows no rule and resolves nothing: the findings are given to it.
package langtest
