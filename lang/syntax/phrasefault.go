package syntax

import (
	"fmt"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/source"
)

// rest judges what is left of a phrase once its clause took what it takes.
func (p *phrases) rest(tokens []lexer.Token, used int) {
	if used >= len(tokens) {
		return
	}
	last := tokens[max(0, used-1)]
	next := tokens[used]
	switch {
	case next.Value == "," && tokens[0].Value == "at":
		p.partFault(RuleSyntax, spanOf(next).To(spanOf(tokens[len(tokens)-1])), "two positions, as in at 1.2 m, 4.5 m, are reserved for later; write one, along the line")
	case next.Value == "to" && next.Type == keywordClass:
		p.partFault(RuleSyntax, spanOf(last), "the unit of a range stands once, after it, as in 0.85 to 0.95 %")
	case next.Type == numberClass && last.Type == numberClass && strings.HasPrefix(next.Value, "-"):
		p.partFault(RuleSyntax, spanOf(last).To(spanOf(next)), "a range is written with to, as in 0.85 to 0.95")
	case next.Type == keywordClass && used == 1 && takesName(last):
		p.reserved(next)
	default:
		p.stray(tokens[used:])
	}
}

// takesName says whether a token is a clause that the name of a part may follow.
func takesName(t lexer.Token) bool {
	c, known := ClauseNamed(t.Value)
	return t.Type == keywordClass && known && c.Shape == MaybeName
}

// stray reports tokens that belong to no clause.
func (p *phrases) stray(tokens []lexer.Token) {
	first := tokens[0]
	if first.Value == "(" || first.Value == ")" {
		if p.parenthesis {
			return
		}
		p.parenthesis = true
	}
	switch {
	case first.Type != nameClass:
		p.partFault(RuleSyntax, spanOf(first), p.misplaced(first))
	case p.takesKnot && (len(tokens) == 1 || tokens[1].Type != numberClass):
		p.tie(tokens)
	default:
		p.unknownClause(wordOf(first))
	}
}

// unknownClause reports a word that is no clause.
func (p *phrases) unknownClause(w Word) {
	candidates := p.allowed
	if p.noOn == "" {
		candidates = append([]string{"on"}, candidates...)
	}
	end := ""
	if len(p.allowed) > 0 {
		end = "; it takes " + list(p.allowed, "and")
	}
	near := nearest(w.Text, candidates)
	p.offer(p.partFault(RuleUnknownClause, w.Span, p.taker+" has no clause "+clip(w.Text)+hintOr(near, end)), w.Span, near)
}

// tie takes the knot of a node.
func (p *phrases) tie(tokens []lexer.Token) {
	w := wordOf(tokens[0])
	if near := nearest(w.Text, nodeFlags); len(near) > 0 {
		p.unknownClause(w)
		return
	}
	if p.knot != nil {
		p.partFault(RuleSyntax, w.Span, "a second knot, "+clip(w.Text)+", ties the same node")
	} else {
		p.knot = &w
	}
	p.rest(tokens, 1)
}

// misplaced says why a token cannot stand among clauses.
func (p *phrases) misplaced(t lexer.Token) string {
	switch {
	case t.Type == keywordClass && t.Value == "lowering":
		return "lowering stands after an efficiency only, as in efficiency 60 % lowering 40 %"
	case t.Type == keywordClass && p.takesKnot:
		return t.Value + " is a word of the notation and names no knot"
	case t.Type == keywordClass && StartsStatement(t.Value):
		return t.Value + " begins a statement of its own, on a new line"
	case t.Type == strokeClass:
		return "strokes stand in a reeving line only"
	case t.Value == "(" || t.Value == ")":
		return "parentheses stand at the nodes of a reeving line only"
	case t.Value == ",":
		return "clauses stand side by side, without commas"
	case t.Type == numberClass || t.Type == unitClass:
		return clip(t.Value) + " belongs to no clause"
	}
	return clip(t.Value) + " cannot stand here"
}

// needsName reports that a name lacks after a word.
func (p *phrases) needsName(word, example string, tokens []lexer.Token, at int) {
	if at < len(tokens) && tokens[at].Type == keywordClass && !beginsPhrase(tokens, at) {
		p.reserved(tokens[at])
		return
	}
	p.partFault(RuleSyntax, placeAt(tokens, at), word+" needs a name, as in "+example+foundAt(tokens, at))
}

// needsNumber reports that a number lacks in a clause.
func (p *phrases) needsNumber(c Clause, tokens []lexer.Token, at int) {
	message := c.Word + " needs a number, as in " + c.Example
	switch before := tokens[max(0, at-1)].Value; {
	case before == "to":
		message = "the range needs a second number, as in 0.85 to 0.95"
	case before == c.Second && c.Second != "":
		message = c.Second + " needs a number, as in efficiency 60 % lowering 40 %"
	}
	p.partFault(RuleSyntax, placeAt(tokens, at), message+foundAt(tokens, at))
}

// whole checks that a count has no fraction.
func (p *phrases) whole(form amountForm, word string) bool {
	for _, t := range []*lexer.Token{&form.Low, form.High} {
		if t != nil && strings.Contains(t.Value, ".") {
			p.partFault(RuleSyntax, spanOf(*t), word+" is a whole number")
			return false
		}
	}
	return true
}

// reserved reports a word of the notation where a name must stand.
func (r *reporter) reserved(t lexer.Token) {
	r.partFault(RuleReservedName, spanOf(t), t.Value+" is a word of the notation and cannot be a name")
}

// placeAt gives the place of a token, or that after the last one.
func placeAt(tokens []lexer.Token, at int) source.Span {
	if at < len(tokens) {
		return spanOf(tokens[at])
	}
	end := spanOf(tokens[len(tokens)-1]).End
	return source.Span{Start: end, End: end}
}

// foundAt says what stands at a place instead; empty if nothing does.
func foundAt(tokens []lexer.Token, at int) string {
	if at >= len(tokens) {
		return ""
	}
	return fmt.Sprintf(", not %s", clip(tokens[at].Value))
}
