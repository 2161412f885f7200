package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/quantity"
	"fairlead/lang/source"
)

// A statement with clauses is read phrase by phrase: each clause is fitted to its
// own form, so that a bad one costs nothing but itself.

// phrases reads clauses one after another.
type phrases struct {
	*reporter
	// taker is what takes the clauses, as one says it: "a pulley", "a node".
	taker string
	// allowed are the clauses that it takes.
	allowed []string
	// noOn says why "on PART" cannot stand here; empty where it can.
	noOn string
	// takesKnot says whether the word of a knot may stand here.
	takesKnot bool

	clauses  []ClauseUse
	on, knot *Word
	// parenthesis says that one was reported; its partner then is not.
	parenthesis bool
}

// read goes through tokens from one phrase to the next.
func (p *phrases) read(tokens []lexer.Token) {
	for len(tokens) > 0 {
		end := phraseEnd(tokens)
		p.phrase(tokens[:end])
		tokens = tokens[end:]
	}
}

// phraseEnd gives the index at which the next phrase begins.
func phraseEnd(tokens []lexer.Token) int {
	for i := 1; i < len(tokens); i++ {
		if beginsPhrase(tokens, i) {
			return i
		}
	}
	return len(tokens)
}

// beginsPhrase says whether a clause, right or misspelt, begins at token i. A word
// that a quantity follows is a misspelt clause, unless a name must stand there.
func beginsPhrase(tokens []lexer.Token, i int) bool {
	t := tokens[i]
	number := i+1 < len(tokens) && tokens[i+1].Type == numberClass
	switch t.Type {
	case nameClass:
		return number && (i == 0 || !wantsName(tokens[i-1]))
	case keywordClass:
		if t.Value == "to" {
			return !number && !(i > 0 && tokens[i-1].Type == numberClass && !nameAt(tokens, i+1))
		}
		return t.Value == "on" || isClause(t.Value)
	}
	return false
}

func nameAt(tokens []lexer.Token, i int) bool {
	return i < len(tokens) && tokens[i].Type == nameClass
}

func isClause(word string) bool {
	_, known := ClauseNamed(word)
	return known
}

// wantsName says whether the name of a part must follow the token.
func wantsName(t lexer.Token) bool {
	if t.Type != keywordClass {
		return false
	}
	c, known := ClauseNamed(t.Value)
	return t.Value == "on" || known && c.Shape == Name
}

// phrase reads the tokens from one clause word to the next.
func (p *phrases) phrase(tokens []lexer.Token) {
	if i := slices.IndexFunc(tokens, isInvalid); i >= 0 {
		p.torn(tokens[:i])
		return
	}
	first := tokens[0]
	if first.Type == keywordClass && first.Value == "on" {
		p.rest(tokens, p.onPart(tokens))
		return
	}
	clause, known := ClauseNamed(first.Value)
	if first.Type != keywordClass || !known {
		p.stray(tokens)
		return
	}
	if !slices.Contains(p.allowed, clause.Word) {
		p.partFault(RuleUnknownClause, spanOf(first), p.refusal(clause.Word))
		return
	}
	use, used, ok := p.clause(clause, tokens)
	if ok && !p.repeated(use) {
		p.clauses = append(p.clauses, use)
	}
	if !ok && used < len(tokens) && isUnitWord(tokens[used]) {
		used++ // that of a number such as 18O, of which the O was taken for the unit
	}
	p.rest(tokens, used)
}

func isUnitWord(t lexer.Token) bool {
	_, known := quantity.UnitNamed(t.Value)
	return known && t.Type == nameClass
}

// torn reads what stands before an invalid token, which the scanner reported. If
// it is no whole clause, nothing more is said: the invalid token may be the reason.
func (p *phrases) torn(tokens []lexer.Token) {
	if len(tokens) == 0 {
		return
	}
	known := len(p.problems)
	p.phrase(tokens)
	p.problems = p.problems[:known]
}

func isInvalid(t lexer.Token) bool { return t.Type == invalidClass }

// refusal says that a clause is not taken here, and which are.
func (p *phrases) refusal(word string) string {
	if len(p.allowed) == 0 {
		return p.taker + " takes no clauses"
	}
	return p.taker + " does not take " + word + "; it takes " + list(p.allowed, "and")
}

// repeated reports a clause that stands already.
func (p *phrases) repeated(use ClauseUse) bool {
	i := slices.IndexFunc(p.clauses, func(c ClauseUse) bool { return c.Word.Text == use.Word.Text })
	if i < 0 {
		return false
	}
	p.twice(use.Word.Text, use.Word.Span, p.clauses[i].Word.Span)
	return true
}

// onPart reads "on PART" and gives the number of tokens that it took.
func (p *phrases) onPart(tokens []lexer.Token) int {
	if p.noOn != "" {
		p.partFault(RuleSyntax, spanOf(tokens[0]), p.noOn)
		return len(tokens)
	}
	form, used, ok := read(nameGrammar, tokens)
	if !ok {
		p.needsName("on", "on head", tokens, used)
		return len(tokens)
	}
	if p.on != nil {
		p.twice("on", spanOf(form.Word), p.on.Span)
		return used
	}
	p.on = maybeWord(&form.Name)
	return used
}

func (p *phrases) twice(word string, second, first source.Span) {
	d := p.partFault(RuleRepeatedClause, second, word+" stands twice")
	d.Related = append(d.Related, p.related(first, "it stands here first"))
}
