package syntax

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"fairlead/lang/diag"
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
	if s.badRuns++; s.badRuns <= mostBadPlaces {
		s.lastBad = len(s.problems)
		s.fault(RuleBadCharacter, span, "%s", badCharacter(first, broken))
	}
}

// character gives the next character, whether it is broken UTF-8, and its bytes.
func (s *scanner) character(end int) (r rune, broken bool, n int) {
	r, n = utf8.DecodeRuneInString(s.text[s.at:end])
	return r, r == utf8.RuneError && n < 2, n
}

// mostBadPlaces is how many places with bad characters are reported one by one. The
// rest is counted, so that a text in another encoding does not bury everything else.
const mostBadPlaces = 20

// bound gives the faults that are to be reported, in file order. Of a file that is no
// text at all, such as a picture, no more is said than of bad characters.
func (r *reporter) bound() []diag.Diagnostic {
	if at, words := otherText(r.file.Text); words != "" && len(r.problems) > 0 {
		r.problems = nil
		r.fault(RuleBadCharacter, at, "%s", words)
		return r.problems
	}
	unsaid, end := max(0, r.badRuns-mostBadPlaces), ""
	if unsaid > 0 {
		end = fmt.Sprintf(", and there are %d more such places", unsaid)
		if unsaid == 1 {
			end = ", and there is 1 more such place"
		}
	}
	noText := strings.Contains(r.file.Text, "\x00") && len(r.problems)+unsaid > mostBadPlaces
	if end != "" && !noText {
		r.problems[r.lastBad].Message += end
	}
	diag.Sort(r.problems, []*source.File{r.file})
	if noText {
		unsaid += max(0, len(r.problems)-mostBadPlaces)
		r.problems = r.problems[:min(len(r.problems), mostBadPlaces)]
		r.problems[len(r.problems)-1].Message += fmt.Sprintf(", and %d more faults follow; this is probably no rig file", unsaid)
	}
	return r.problems
}

// otherText says that a text is in another encoding, or ends its lines as no text does
// any more, and where that shows first; what else is wrong in it comes of that. Words are
// empty if it is not so.
func otherText(text string) (at source.Span, words string) {
	if strings.HasPrefix(text, "\xff\xfe") || strings.HasPrefix(text, "\xfe\xff") {
		return source.Span{End: 2}, "this is UTF-16 text; save the file as UTF-8"
	}
	if first := strings.IndexByte(text, '\r'); !strings.Contains(text, "\n") && strings.Count(text, "\r") > 1 {
		return source.Span{Start: first, End: first + 1}, "the lines of this file end in a carriage return alone; save it with line feeds"
	}
	return source.Span{}, ""
}

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
