package syntax

import "github.com/alecthomas/participle/v2/lexer"

// The forms of the clauses, one for each shape of the vocabulary.

type flagForm struct {
	Word lexer.Token `parser:"@Keyword"`
}

type nameForm struct {
	Word lexer.Token `parser:"@Keyword"`
	Name lexer.Token `parser:"@Name"`
}

type maybeNameForm struct {
	Word lexer.Token  `parser:"@Keyword"`
	Name *lexer.Token `parser:"@Name?"`
}

type measureForm struct {
	Word   lexer.Token `parser:"@Keyword"`
	Amount amountForm  `parser:"@@"`
}

type secondForm struct {
	Word   lexer.Token `parser:"@Keyword"`
	Amount amountForm  `parser:"@@"`
	Second *amountForm `parser:"( 'lowering' @@ )?"`
}

var (
	flagGrammar      = grammar[flagForm]()
	nameGrammar      = grammar[nameForm]()
	maybeNameGrammar = grammar[maybeNameForm]()
	measureGrammar   = grammar[measureForm]()
	secondGrammar    = grammar[secondForm]()
)

// clause fits a phrase to the form of its clause and gives the number of tokens
// that it took. Ok is false if the clause cannot be used, which has been reported.
func (p *phrases) clause(c Clause, tokens []lexer.Token) (use ClauseUse, used int, ok bool) {
	switch {
	case c.Shape == Flag:
		_, used, ok = read(flagGrammar, tokens)
	case c.Shape == Name || c.Shape == FreeWord:
		use, used, ok = p.named(c, tokens)
	case c.Shape == MaybeName:
		var form *maybeNameForm
		form, used, ok = read(maybeNameGrammar, tokens)
		use.Name = maybeWord(form.Name)
	case c.Second != "":
		use, used, ok = p.twoMeasures(c, tokens)
	default:
		use, used, ok = p.measured(c, tokens)
	}
	use.Word = wordOf(tokens[0])
	use.Span = use.Word.Span
	if used > 0 {
		use.Span = use.Span.To(spanOf(tokens[used-1]))
	}
	return use, used, ok
}

func (p *phrases) named(c Clause, tokens []lexer.Token) (use ClauseUse, used int, ok bool) {
	form, used, ok := read(nameGrammar, tokens)
	if !ok {
		p.needsName(c.Word, c.Example, tokens, used)
		return use, len(tokens), false
	}
	use.Name = maybeWord(&form.Name)
	return use, used, true
}

func (p *phrases) measured(c Clause, tokens []lexer.Token) (use ClauseUse, used int, ok bool) {
	form, used, ok := read(measureGrammar, tokens)
	if !ok {
		p.needsNumber(c, tokens, used)
		return use, len(tokens), false
	}
	use.Amount = p.amount(form.Amount, c.Word, c.Dimensions)
	if use.Amount == nil || c.Shape == Count && !p.whole(form.Amount, c.Word) {
		return use, used, false
	}
	return use, used, true
}

func (p *phrases) twoMeasures(c Clause, tokens []lexer.Token) (use ClauseUse, used int, ok bool) {
	form, used, ok := read(secondGrammar, tokens)
	if !ok {
		p.needsNumber(c, tokens, used)
		return use, len(tokens), false
	}
	use.Amount = p.amount(form.Amount, c.Word, c.Dimensions)
	ok = use.Amount != nil
	if form.Second != nil {
		use.Second = p.amount(*form.Second, c.Second, c.Dimensions)
		ok = ok && use.Second != nil
	}
	return use, used, ok
}
