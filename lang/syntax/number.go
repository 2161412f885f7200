package syntax

import "strings"

// maxDigits is the most digits that a number may have: enough for every real
// figure, few enough that no file can make the arithmetic slow.
const maxDigits = 30

// beginsNumber says whether a number, right or wrong, begins here.
func (s *scanner) beginsNumber() bool {
	rest := s.text[s.at:]
	if rest[0] == '+' || rest[0] == '-' {
		rest = rest[1:]
	}
	rest = strings.TrimPrefix(rest, ".")
	return rest != "" && isDigit(rest[0])
}

// number reads a number and judges its form. What looks like a number of
// another notation is read whole, so that one message covers it.
func (s *scanner) number() {
	start := s.at
	s.at++ // a sign, a point or a digit
	for s.at < len(s.text) && (isDigit(s.text[s.at]) || s.text[s.at] == '.' || s.text[s.at] == ',') {
		s.at++
	}
	for s.at > start && s.text[s.at-1] == ',' {
		s.at--
	}
	complaint := numberFault(s.text[start:s.at])
	if n := exponent(s.text[s.at:]); n > 0 {
		s.at += n
		complaint = "is written with an exponent, which numbers here have not"
	}
	if complaint == "" {
		s.emit(NumberToken, start)
		return
	}
	text := s.text[start:s.at]
	s.fault(RuleSyntax, s.emit(InvalidToken, start), "%s %s", clip(text), complaint)
}

// numberFault says what is wrong with a number, in the words of its author.
func numberFault(text string) string {
	digits := strings.TrimLeft(text, "+-")
	switch {
	case text[0] == '+':
		return "has a plus sign; a number without a sign is positive"
	case strings.Contains(digits, ","):
		return "has a comma; the decimal sign is a point, and thousands are not parted"
	case strings.Count(digits, ".") > 1:
		return "has more than one point"
	case digits[0] == '.':
		return "begins with a point; write 0" + clip(digits)
	case strings.HasSuffix(digits, "."):
		return "ends in a point; leave it out or write a digit after it"
	case len(strings.ReplaceAll(digits, ".", "")) > maxDigits:
		return "has more than 30 digits"
	}
	return ""
}

// exponent gives the length of the exponent that the text begins with.
func exponent(text string) int {
	if text == "" || text[0] != 'e' && text[0] != 'E' {
		return 0
	}
	n := 1
	if n < len(text) && (text[n] == '+' || text[n] == '-') {
		n++
	}
	digits := n
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	if n == digits {
		return 0
	}
	return n
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
