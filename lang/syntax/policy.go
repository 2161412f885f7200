package syntax

import (
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/quantity"
)

// limitForm is one figure of a policy after its name: "require NAME [over|under] FIGURE …".
type limitForm struct {
	Keyword lexer.Token  `parser:"'require'"`
	Compare *lexer.Token `parser:"@( 'over' | 'under' )?"`
	Amount  amountForm   `parser:"@@"`
	For     *lexer.Token `parser:"( 'for' @Keyword )?"`
	Per     *lexer.Token `parser:"( 'per' @'person' )?"`
}

// unitsForm is "units WORD [WORD]".
type unitsForm struct {
	First  lexer.Token  `parser:"'units' @Name"`
	Second *lexer.Token `parser:"@Name?"`
}

var (
	limitGrammar = grammar[limitForm]()
	unitsGrammar = grammar[unitsForm]()
)

func (r *reporter) require(tokens []lexer.Token) Body {
	end := 1
	for end < len(tokens) && isWord(tokens[end]) && comparisonWord[tokens[end].Value] == Equal {
		end++
	}
	name := tokens[1:end]
	figure, ok := r.figureOf(tokens, name)
	if !ok {
		return &Bad{}
	}
	form := whole(r, limitGrammar, append([]lexer.Token{tokens[0]}, tokens[end:]...), figure.Example)
	if form == nil {
		return &Bad{}
	}
	q := &Require{Subject: Word{Text: figure.Name, Span: spanOf(name[0]).To(spanOf(name[len(name)-1]))},
		Compare: compareOf(form.Compare), For: maybeWord(form.For), PerPerson: form.Per != nil}
	if !r.limitFits(form, q, figure) {
		return &Bad{}
	}
	if q.Amount = r.amount(form.Amount, figure.Name, figure.Dimensions); q.Amount == nil {
		return &Bad{}
	}
	return q
}

func isWord(t lexer.Token) bool { return t.Type == nameClass || t.Type == keywordClass }

// figureOf finds the figure that the words after "require" name, and reports it if there
// is none.
func (r *reporter) figureOf(tokens, name []lexer.Token) (Figure, bool) {
	if len(name) == 0 {
		if !slices.ContainsFunc(tokens, isInvalid) {
			r.fault(RuleSyntax, placeAt(tokens, 1), "require goes on with %s", list(figureNames(), "or"))
		}
		r.faulty = true
		return Figure{}, false
	}
	var words []string
	for _, t := range name {
		words = append(words, t.Value)
	}
	written := strings.Join(words, " ")
	figure, known := FigureNamed(written)
	if !known {
		near := figureNear(written)
		at := spanOf(name[0]).To(spanOf(name[len(name)-1]))
		d := r.fault(RuleSyntax, at, "require goes on with a figure, not %s%s", clip(written),
			hintOr(near, "; it is one of "+list(figureNames(), "and")))
		r.offer(d, at, near)
	}
	return figure, known
}

// limitFits checks the words around the figure's amount.
func (r *reporter) limitFits(form *limitForm, q *Require, f Figure) bool {
	switch {
	case f.Bound == Floor && q.Compare == Under || f.Bound == Ceiling && q.Compare == Over || f.Bound == Band && q.Compare != Equal:
		r.fault(RuleSyntax, spanOf(*form.Compare), "%s is not bounded so; it is written as in %s", f.Name, f.Example)
	case f.Bound == Band && form.Amount.High == nil:
		r.fault(RuleSyntax, form.Amount.span(), "%s needs a range, as in %s", f.Name, f.Example)
	case f.Bound != Band && form.Amount.High != nil:
		r.fault(RuleSyntax, form.Amount.span(), "%s is one figure, not a range", f.Name)
	case q.For != nil && !f.ForKind:
		r.fault(RuleSyntax, q.For.Span, "%s is asked of the whole rig; only %s is asked for a kind", f.Name,
			figuresLike(func(f Figure) bool { return f.ForKind }))
	case q.For != nil && !r.isKind(*form.For):
	case q.PerPerson && !f.PerPerson:
		r.fault(RuleSyntax, spanOf(*form.Per), "%s is not counted per person; only %s is", f.Name,
			figuresLike(func(f Figure) bool { return f.PerPerson }))
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
