// Package source holds the text of a rig file and the places in it.
//
// It is given a name and the bytes of a file, and gives byte spans, lines and
// columns. It does not know what the text means and opens no file.
package source
