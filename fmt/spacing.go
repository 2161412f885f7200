package rigfmt

import (
	"strings"

	"fairlead/lang/syntax"
)

// spaced writes tokens with one space between them, save where none belongs:
// before ":" and ",", inside parentheses and in a ratio.
func spaced(tokens []syntax.Token) string {
	var b strings.Builder
	for i, t := range tokens {
		if i > 0 && !tight(tokens, i) {
			b.WriteByte(' ')
		}
		b.WriteString(t.Text)
	}
	return b.String()
}

// tight says whether token i touches the one before it.
func tight(tokens []syntax.Token, i int) bool {
	before, t := tokens[i-1], tokens[i]
	if t.Kind == syntax.PunctuationToken && t.Text != "(" {
		return true
	}
	if before.Kind != syntax.PunctuationToken {
		return false
	}
	ratio := before.Text == ":" && t.Kind == syntax.NumberToken
	return before.Text == "(" || ratio
}
