package page

import "strings"

// Line is one line under construction: texts at columns, from left to right.
type Line struct {
	words []word
}

type word struct {
	column int
	text   string
	style  Style
}

// Put sets a text at a 0-based column. Texts are put from left to right; one
// that would overlap the one before moves right.
func (l *Line) Put(column int, text string, style Style) {
	l.words = append(l.words, word{column, text, style})
}

// PutEnding sets a text so that its last column is the given one.
func (l *Line) PutEnding(column int, text string, style Style) {
	l.Put(column-Width(text)+1, text, style)
}

// Shift moves the text that was put last to the right.
func (l *Line) Shift(columns int) {
	if n := len(l.words); n > 0 {
		l.words[n-1].column += columns
	}
}

// End gives the column after the last text.
func (l *Line) End() int {
	end := 0
	for _, w := range l.words {
		end = max(end, w.column) + Width(w.text)
	}
	return end
}

// String gives the line without blanks at its end.
func (l *Line) String(p Paint) string {
	var b strings.Builder
	at := 0
	for _, w := range l.words {
		if w.text == "" {
			continue
		}
		b.WriteString(gap(w.column - at))
		b.WriteString(p.Set(w.style, w.text))
		at = max(at, w.column) + Width(w.text)
	}
	return b.String()
}
