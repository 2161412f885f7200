package syntax

import (
	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/quantity"
)

// requireForm is one figure of a policy: "require SUBJECT [over|under] FIGURE …".
type requireForm struct {
	Factor    *lexer.Token `parser:"'require' ( ( @'factor'"`
	Pull      *lexer.Token `parser:"| @'pull'"`
	Drop      *lexer.Token `parser:"| @'drop'"`
	People    *lexer.Token `parser:"| ( @'people' 'times'"`
	Advantage *lexer.Token `parser:"@'advantage' ) )"`
	Compare   *lexer.Token `parser:"@( 'over' | 'under' )?"`
	Amount    figureForm   `parser:"@@"`
	For       *lexer.Token `parser:"( 'for' @Keyword )?"`
	Per       *lexer.Token `parser:"( 'per' @'person' )? )"`
}

// unitsForm is "units WORD [WORD]".
type unitsForm struct {
	First  lexer.Token  `parser:"'units' @Name"`
	Second *lexer.Token `parser:"@Name?"`
}

var (
	requireGrammar = grammar[requireForm]()
	unitsGrammar   = grammar[unitsForm]()
)

func (r *reporter) require(tokens []lexer.Token) Body {
	form := whole(r, requireGrammar, tokens, "require factor 4 for hitch")
	if form == nil {
		return &Bad{}
	}
	q := &Require{Compare: compareOf(form.Compare), For: maybeWord(form.For), PerPerson: form.Per != nil}
	dims := plain
	switch {
	case form.Factor != nil:
		q.Subject = wordOf(*form.Factor)
	case form.Pull != nil:
		q.Subject, dims = wordOf(*form.Pull), forces
	case form.Drop != nil:
		q.Subject, dims = wordOf(*form.Drop), lengths
	default:
		q.Subject = Word{Text: "people times advantage", Span: spanOf(*form.People).To(spanOf(*form.Advantage))}
	}
	if !r.requireFits(form, q) {
		return &Bad{}
	}
	if q.Amount = r.amount(form.Amount.amount(), q.Subject.Text, dims); q.Amount == nil {
		return &Bad{}
	}
	return q
}

// requireFits checks the words after the figure: "for KIND" belongs to a factor,
// "per person" to a pull.
func (r *reporter) requireFits(form *requireForm, q *Require) bool {
	switch {
	case q.For != nil && form.Factor == nil:
		r.fault(RuleSyntax, q.For.Span, "%s is asked of the whole rig; only a factor is asked for a kind", q.Subject.Text)
	case q.For != nil && !r.isKind(*form.For):
	case q.PerPerson && form.Pull == nil:
		r.fault(RuleSyntax, spanOf(*form.Per), "%s is not counted per person; only a pull is", q.Subject.Text)
	default:
		return true
	}
	return false
}

// units reads what results are printed in: a unit of force, one of length or both.
func (r *reporter) units(tokens []lexer.Token) Body {
	if len(tokens) == 1 {
		r.fault(RuleSyntax, placeAt(tokens, 1), "units needs a unit of force, one of length or both, as in units kN m")
		return &Bad{}
	}
	for _, t := range tokens[1:] {
		if t.Type != nameClass && t.Type != invalidClass {
			r.fault(RuleSyntax, spanOf(t), "%s is no unit of force or length; it is written as in units kN m", clip(t.Value))
			return &Bad{}
		}
	}
	form := whole(r, unitsGrammar, tokens, "units kN m")
	if form == nil {
		return &Bad{}
	}
	u := &Units{Words: []Word{wordOf(form.First)}}
	if form.Second != nil {
		u.Words = append(u.Words, wordOf(*form.Second))
	}
	seen := map[quantity.Dimension]bool{}
	for _, w := range u.Words {
		unit, known := quantity.UnitNamed(w.Text)
		switch {
		case !known || unit.Dimension != quantity.Force && unit.Dimension != quantity.Length:
			wanted := unitsOf([]quantity.Dimension{quantity.Force, quantity.Length})
			var near []string
			if !known {
				near = meantUnit(w.Text, wanted)
			}
			d := r.fault(RuleBadUnit, w.Span, "%s is no unit of force or length%s", clip(w.Text),
				hintOr(near, "; it is one of "+list(wanted, "or")))
			r.offer(d, w.Span, near)
		case seen[unit.Dimension]:
			r.fault(RuleSyntax, w.Span, "%s is a second unit of %s", w.Text, spokenDimension[unit.Dimension])
		default:
			seen[unit.Dimension] = true
			continue
		}
		return &Bad{}
	}
	return u
}
