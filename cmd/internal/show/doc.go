// Package show writes findings: as text for people, with the culprit marked in its
// source line, and as JSON, SARIF or lists for machines; what was mended, and what
// authors accept; and the pages of rules, for reading.
//
// It is given findings, or Markdown, and a writer. It finds and mends nothing itself
// and decides no exit status.
package show
