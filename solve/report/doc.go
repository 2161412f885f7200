// Package report writes what was computed of a rig: as text for people, with
// the figures under the strokes of the reeving line, and as JSON for machines.
//
// It is given results and counts and a writer. It computes no mechanics, reads
// no file and decides no exit status.
package report
