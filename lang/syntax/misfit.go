package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// misfit reports the first token that does not fit a form, or that something lacks
// after the last one, with what could stand there.
func misfit[F any](r *reporter, parser func() *participle.Parser[F], tokens []lexer.Token, at int, example string) {
	if slices.ContainsFunc(tokens[:min(at+1, len(tokens))], isInvalid) {
		r.faulty = true
		return // reported by the scanner
	}
	spoken, words := expected(parser, tokens[:at])
	ending := ", as in " + example
	if at == len(tokens) {
		r.fault(RuleSyntax, placeAt(tokens, at), "%s ends too soon; it goes on with %s%s", tokens[0].Value, list(spoken, "or"), ending)
		return
	}
	t := tokens[at]
	near := nearest(t.Value, words)
	ending = hintOr(near, ending)
	switch {
	case t.Type == keywordClass && slices.Contains(spoken, aName):
		r.reserved(t)
	case len(spoken) == 0:
		r.fault(RuleSyntax, spanOf(t), "%s ends before %s%s", tokens[0].Value, clip(t.Value), ending)
	default:
		d := r.fault(RuleSyntax, spanOf(t), "%s goes on with %s, not %s%s", tokens[0].Value, list(spoken, "or"), clip(t.Value), ending)
		r.offer(d, spanOf(t), near)
	}
}

const aName = "a name"

// candidates are what may stand somewhere in a form, each with how one says it.
var candidates = []struct {
	token  lexer.Token
	spoken string
}{
	{lexer.Token{Type: nameClass, Value: "name"}, aName},
	{lexer.Token{Type: keywordClass, Value: "keyword"}, "a kind"},
	{lexer.Token{Type: numberClass, Value: "1"}, "a number"},
	{lexer.Token{Type: unitClass, Value: "kN"}, "a unit"},
	{lexer.Token{Type: stringClass, Value: `""`}, "a text in quotes"},
}

// expected asks a form what it takes after the tokens that fit: each candidate is
// tried, so that the answer is the form's own and no second list of it exists.
// Spoken is that as one says it, near the single words of which one may be meant.
func expected[F any](parser func() *participle.Parser[F], fitting []lexer.Token) (spoken, near []string) {
	const most = 50 // no form that ends is longer, and each candidate costs a reading
	if len(fitting) > most {
		return []string{"its end"}, nil
	}
	tokens := append(slices.Clone(fitting), lexer.Token{})
	last := len(fitting)
	takes := func(t lexer.Token) bool {
		t.Pos.Offset = -2 // no token of the file
		tokens[last] = t
		_, used, _ := read(parser, tokens)
		return used == len(tokens)
	}
	for _, word := range formWords {
		if takes(lexer.Token{Type: literalClass, Value: word}) {
			spoken = append(spoken, word)
		}
	}
	near = slices.Clone(spoken)
	for _, c := range candidates {
		if !takes(c.token) {
			continue
		}
		spoken = append(spoken, c.spoken)
		if c.token.Type == keywordClass {
			near = append(near, kindWords...)
		}
	}
	return spoken, near
}
