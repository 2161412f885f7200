// Package markdown finds the rigs in Markdown notes.
//
// It is given the text of a document and gives a text of the same length in which
// everything but the inside of the fenced rig blocks is blank, so that every offset in it
// is one of the document; and it fits edits of that text into the document, where blocks
// stand in lists and quotes. It does not know what the notation means.
package markdown
