package syntax

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fairlead/lang/source"
)

// scanner cuts a text into tokens and lines. It never stops: what fits nothing
// becomes an InvalidToken and is reported once, at its exact bytes.
type scanner struct {
	*reporter
	text   string
	at     int
	tokens []Token
	// ends has the number of tokens up to the end of each line.
	ends []int
}

const byteOrderMark = "\uFEFF"

// scan gives the lines of a file, each with its tokens, which are slices of one list.
func scan(f *source.File, r *reporter) (tokens []Token, lines []Line) {
	s := &scanner{reporter: r, text: f.Text, tokens: make([]Token, 0, len(f.Text)/5+8)}
	if strings.HasPrefix(s.text, byteOrderMark) {
		s.at = len(byteOrderMark)
	}
	for s.at < len(s.text) {
		s.next()
	}
	s.ends = append(s.ends, len(s.tokens))
	lines = make([]Line, len(s.ends))
	start := 0
	for i, end := range s.ends {
		lines[i] = Line{Tokens: s.tokens[start:end:end]}
		start = end
	}
	return s.tokens, lines
}

// next reads one token, one blank or one line end.
func (s *scanner) next() {
	switch c := s.text[s.at]; {
	case c == ' ' || c == '\t':
		s.at++
	case c == '\n':
		s.at++
		s.ends = append(s.ends, len(s.tokens))
	case c == '\r' && strings.HasPrefix(s.text[s.at:], "\r\n"):
		s.at++
	case c == '#':
		s.comment()
	case c == '"':
		s.quoted()
	case c == '/' || c == '\\' || c == '~':
		s.token(StrokeToken, s.at+1)
	case c == ':' || c == ',' || c == '(' || c == ')':
		s.token(PunctuationToken, s.at+1)
	case c == '%':
		s.token(UnitToken, s.at+1)
	case s.beginsNumber():
		s.number()
	default:
		if r, _ := utf8.DecodeRuneInString(s.text[s.at:]); inWord(r) {
			s.word()
		} else {
			start := s.at
			s.badRun(len(s.text))
			s.emit(InvalidToken, start)
		}
	}
}

// token adds a token that ends before end and goes on there.
func (s *scanner) token(kind TokenKind, end int) source.Span {
	start := s.at
	s.at = end
	return s.emit(kind, start)
}

// emit adds the token from start to where the scanner is.
func (s *scanner) emit(kind TokenKind, start int) source.Span {
	span := source.Span{Start: start, End: s.at}
	s.tokens = append(s.tokens, Token{Kind: kind, Text: s.text[start:s.at], Span: span})
	return span
}

// lineEnd gives the offset at which the current line ends, its line end not included.
func (s *scanner) lineEnd() int {
	n := strings.IndexByte(s.text[s.at:], '\n')
	if n < 0 {
		return len(s.text)
	}
	end := s.at + n
	if end > s.at && s.text[end-1] == '\r' {
		end--
	}
	return end
}

// comment reads from # to the last visible character of the line.
func (s *scanner) comment() {
	start, end := s.at, s.lineEnd()
	end = start + len(strings.TrimRight(s.text[start:end], " \t"))
	s.check(end)
	s.emit(CommentToken, start)
}

// quoted reads a string; one that is not closed goes to the end of the line.
func (s *scanner) quoted() {
	start, end := s.at, s.lineEnd()
	for i := start + 1; i < end; i++ {
		switch s.text[i] {
		case '"':
			s.check(i + 1)
			s.emit(StringToken, start)
			return
		case '\\':
			if i+1 < end && strings.IndexByte(`"\`, s.text[i+1]) < 0 {
				_, n := utf8.DecodeRuneInString(s.text[i+1:])
				s.fault(RuleSyntax, source.Span{Start: i, End: i + 1 + n},
					`a backslash in quotes stands before " or \ only`)
			}
			i++
		}
	}
	end = start + len(strings.TrimRight(s.text[start:end], " \t"))
	s.check(end)
	s.fault(RuleSyntax, s.emit(InvalidToken, start), "the text has no closing quote on its line")
}

// check goes on to end and reports what may not even stand in comments and strings.
func (s *scanner) check(end int) {
	for s.at < end {
		c := s.text[s.at]
		if c >= ' ' && c < 0x7f || c == '\t' {
			s.at++
			continue
		}
		r, broken, n := s.character(end)
		if broken || unicode.IsControl(r) {
			s.badRun(end)
			continue
		}
		s.at += n
	}
}

// word reads a word or a dotted name and judges its form.
func (s *scanner) word() {
	start := s.at
	for s.at < len(s.text) {
		r, n := utf8.DecodeRuneInString(s.text[s.at:])
		if !inWord(r) && r != '.' {
			break
		}
		s.at += n
	}
	text := s.text[start:s.at]
	complaint, kind := wordFault(text)
	span := s.emit(kind, start)
	if complaint != "" {
		s.fault(RuleSyntax, span, "%s %s", clip(text), complaint)
	}
}

// wordFault says what is wrong with a word; a word that ends in "-" can still be
// read as the name that it was meant to be.
func wordFault(text string) (complaint string, kind TokenKind) {
	kind = WordToken
	for part := range strings.SplitSeq(text, ".") {
		first, _ := utf8.DecodeRuneInString(part)
		switch {
		case text == "-":
			return "stands before digits or inside a word only", InvalidToken
		case part == "":
			return "has a point that no word follows or precedes", InvalidToken
		case !unicode.IsLetter(first):
			return "begins with no letter", InvalidToken
		case strings.HasSuffix(part, "-"):
			complaint = "ends in -, which no name does"
		}
	}
	return complaint, kind
}

func inWord(r rune) bool {
	return r == '-' || r == '_' || unicode.IsLetter(r) || unicode.IsMark(r) || unicode.IsDigit(r)
}
