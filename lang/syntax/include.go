package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"
)

// includeForm is "include" RIG "as" NAME.
type includeForm struct {
	Rig lexer.Token `parser:"'include' @Name"`
	As  lexer.Token `parser:"'as' @Name"`
}

// withForm is "with" PART and withoutForm "without" PART.
type withForm struct {
	Part lexer.Token `parser:"'with' @Name"`
}

type withoutForm struct {
	Part lexer.Token `parser:"'without' @Name"`
}

var (
	includeGrammar = grammar[includeForm]()
	withGrammar    = grammar[withForm]()
	withoutGrammar = grammar[withoutForm]()
)

// include reads "include RIG as NAME {with PART CLAUSE…} {without PART}".
func (r *reporter) include(tokens []lexer.Token) Body {
	const example = "include shaft-raise as low"
	head := tokens[:changeAt(tokens, 1)]
	form := whole(r, includeGrammar, head, example)
	if form == nil {
		return &Bad{}
	}
	in := &Include{Rig: wordOf(form.Rig), As: wordOf(form.As)}
	for tokens = tokens[len(head):]; len(tokens) > 0; {
		end := changeAt(tokens, 1)
		r.change(in, tokens[:end])
		tokens = tokens[end:]
	}
	return in
}

// changeAt gives the index, from one on, at which the next "with" or "without" stands.
func changeAt(tokens []lexer.Token, from int) int {
	for i := from; i < len(tokens); i++ {
		if v := tokens[i].Value; v == "with" || v == "without" {
			return i
		}
	}
	return len(tokens)
}

// change reads one "with PART CLAUSE…" or "without PART".
func (r *reporter) change(in *Include, tokens []lexer.Token) {
	if tokens[0].Value == "without" {
		if form := whole(r, withoutGrammar, tokens, "without knot-a"); form != nil {
			in.Without = append(in.Without, wordOf(form.Part))
		}
		return
	}
	form, used, ok := read(withGrammar, tokens)
	if !ok || slices.ContainsFunc(tokens[:used], isInvalid) {
		misfit(r, withGrammar, tokens, used, "with litter mass 90 kg")
		return
	}
	change := Change{Part: wordOf(form.Part)}
	if used == len(tokens) {
		r.fault(RuleSyntax, placeAt(tokens, used), "%s needs a clause that changes it, as in with litter mass 90 kg", clip(change.Part.Text))
		return
	}
	r.subject = change.Part.Text
	p := &phrases{reporter: r, taker: "a part", allowed: clauseWords, noOn: "a copied part keeps what it is on"}
	p.read(tokens[used:])
	r.subject = ""
	change.Clauses = p.clauses
	in.With = append(in.With, change)
}
