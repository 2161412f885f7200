// Package show writes findings: as text for people, with the culprit marked in
// its source line, and as JSON for machines.
//
// It is given findings and a writer. It finds nothing itself and decides no exit
// status.
package show
