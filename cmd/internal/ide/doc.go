// Package ide answers what an editor asks of rig files: what stands under the cursor,
// what may stand there, where a name is from and where it is used, what is wrong and
// how to mend it.
//
// It is given texts, saved or not, and places as byte offsets; it gives texts, byte
// spans and edits. A Desk holds what is open; a Snapshot of it never changes, and
// every answer is a pure function on one. It knows no protocol, counts no UTF-16,
// writes no file, and takes every force and finding from the solver and the linter.
package ide
