package page

import (
	"strings"
	"unicode"

	"github.com/rivo/uniseg"
)

// Columns is the width of a page in terminal columns.
const Columns = 80

// Width gives the columns that a text takes on a terminal.
func Width(text string) int { return uniseg.StringWidth(text) }

// Left gives the text with spaces after it, so that it takes the columns.
func Left(text string, columns int) string {
	return text + gap(columns-Width(text))
}

// Clean gives a text that no terminal takes for a command: control characters
// and marks that turn the writing direction become "�", tabs a space.
func Clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case unicode.IsControl(r), turnsDirection(r):
			return unicode.ReplacementChar
		}
		return r
	}, text)
}

// turnsDirection says whether a character is one of the explicit directional
// marks of Unicode Annex 9, sections 2.1 to 2.4, which can make a line read as
// another one.
func turnsDirection(r rune) bool {
	return r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069
}

// Wrap breaks a text at its spaces into lines of at most the given columns; a
// word that is wider has a line of its own. There is always one line.
func Wrap(text string, columns int) []string {
	var lines []string
	line, width := "", 0
	for _, word := range strings.Fields(text) {
		w := Width(word)
		if width > 0 && width+1+w > columns {
			lines = append(lines, line)
			line, width = "", 0
		}
		if width > 0 {
			line, width = line+" ", width+1
		}
		line, width = line+word, width+w
	}
	return append(lines, line)
}

// List joins words as a sentence does: "a, b and c".
func List(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

func gap(columns int) string {
	return strings.Repeat(" ", max(0, columns))
}
