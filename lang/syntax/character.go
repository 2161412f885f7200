package syntax

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"fairlead/lang/source"
)

// badRun reads as many equal faults as stand side by side, up to end, and
// reports them once.
func (s *scanner) badRun(end int) {
	start := s.at
	first, broken, n := s.character(end)
	for s.at += n; s.at < end; s.at += n {
		var r rune
		var alsoBroken bool
		r, alsoBroken, n = s.character(end)
		if r != first || alsoBroken != broken || strings.HasPrefix(s.text[s.at:], "\r\n") {
			break
		}
	}
	span := source.Span{Start: start, End: s.at}
	switch s.badRuns++; {
	case s.badRuns < maxBadRuns:
		s.fault(RuleBadCharacter, span, "%s", badCharacter(first, broken))
	case s.badRuns == maxBadRuns:
		s.fault(RuleBadCharacter, span, "%s, and there are more such places; this may be no rig file", badCharacter(first, broken))
	}
}

// character gives the next character, whether it is broken UTF-8, and its bytes.
func (s *scanner) character(end int) (r rune, broken bool, n int) {
	r, n = utf8.DecodeRuneInString(s.text[s.at:end])
	return r, r == utf8.RuneError && n < 2, n
}

// maxBadRuns is the most places with bad characters that are reported, so that a
// picture taken for a rig file does not fill the memory with faults.
const maxBadRuns = 1000

// badCharacter says what a character is and, where one can tell, what was meant.
func badCharacter(r rune, broken bool) string {
	switch {
	case broken:
		return "this is not UTF-8 text"
	case r == '\r':
		return "a lone carriage return ends no line; write a line feed"
	case r == '\uFEFF':
		return "a byte order mark stands at the start of a file only"
	case unicode.IsControl(r):
		return fmt.Sprintf("the control character U+%04X is not allowed", r)
	case unicode.IsSpace(r) || unicode.Is(unicode.Cf, r):
		return fmt.Sprintf("U+%04X is no blank of the notation; write a space", r)
	}
	for _, m := range meant {
		if strings.ContainsRune(m.characters, r) {
			return fmt.Sprintf("%c has no meaning here; %s", r, m.advice)
		}
	}
	return fmt.Sprintf("%c has no meaning in a rig file", r)
}

// meant are characters that people write for others.
var meant = []struct{ characters, advice string }{
	{"“”„‟«»", `quotes are written "`},
	{"‘’'`", `texts stand between "`},
	{"−–—‐‑", "the sign and the hyphen are written -"},
	{"／∕⁄↑", "up the line is written /"},
	{"＼∖↓", `down the line is written \`},
	{"∼～", "slack is written ~"},
	{"=", "a clause is its word and its value side by side"},
	{";", "each statement has a line of its own"},
	{"[]{}", "clauses of a node stand in ( )"},
	{"°", "an angle is written 90 deg"},
	{"*!", "a comment begins with #"},
	{".", "a point stands between digits or between words only"},
}
