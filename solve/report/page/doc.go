// Package page sets words on lines: how wide a text is, where it breaks, what
// is bold or faint.
//
// It is given text and gives text of at most the page's width. It knows nothing
// of rigs and writes to no stream.
package page
