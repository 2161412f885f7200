// Package watch lints rig files as they are saved.
//
// It is given paths and rules and gives a batch of results at the start and after
// each save: one loop that waits until a burst of events is over, reads everything
// anew and lints what has changed. Events of the file system only wake it; what has
// changed it sees for itself, so that a lost or doubled event, an atomic save or an
// editor's swap file makes no difference. It prints nothing and knows no terminal.
package watch
