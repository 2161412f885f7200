package syntax

import (
	"math/big"

	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/quantity"
	"fairlead/lang/source"
)

var (
	advantageGrammar = grammar[advantageForm]()
	pullGrammar      = grammar[pullForm]()
	loadGrammar      = grammar[loadForm]()
	factorGrammar    = grammar[factorForm]()
	travelGrammar    = grammar[travelForm]()
	classGrammar     = grammar[classForm]()
	strokeGrammar    = grammar[strokeForm]()
	lowerGrammar     = grammar[lowerForm]()
	findingGrammar   = grammar[findingForm]()
	heldGrammar      = grammar[heldForm]()
)

var (
	forces         = []quantity.Dimension{quantity.Force}
	forcesOrPlain  = []quantity.Dimension{quantity.Force, quantity.None}
	lengths        = []quantity.Dimension{quantity.Length}
	plain          = []quantity.Dimension{quantity.None}
	comparisonWord = map[string]Compare{"over": Over, "under": Under}
)

// compareOf gives the comparison of an optional word.
func compareOf(t *lexer.Token) Compare {
	if t == nil {
		return Equal
	}
	return comparisonWord[t.Value]
}

func (r *reporter) expectAdvantage(tokens []lexer.Token) *Expect {
	if r.fraction(tokens) {
		return nil
	}
	form := whole(r, advantageGrammar, tokens, "expect advantage 3:1")
	if form == nil {
		return nil
	}
	e := &Expect{Subject: Advantage, SubjectSpan: spanOf(form.Advantage), Compare: compareOf(form.Compare), By: maybeWord(form.By)}
	if form.Actual != nil {
		e.Subject, e.SubjectSpan = ActualAdvantage, spanOf(*form.Actual).To(e.SubjectSpan)
	}
	if e.Ratio = r.ratio(form.Ratio); e.Ratio == nil {
		return nil
	}
	return e
}

// ratio makes "A:B" of its form; a plain number n is n:1.
func (r *reporter) ratio(form ratioForm) *Ratio {
	second := "1"
	ratio := &Ratio{Span: spanOf(form.A)}
	if form.B != nil {
		second, ratio.Span = form.B.Value, ratio.Span.To(spanOf(*form.B))
	}
	ratio.A, _ = quantity.New(form.A.Value, "", "")
	ratio.B, _ = quantity.New(second, "", "")
	if ratio.B.Low.Sign() == 0 {
		r.fault(RuleSyntax, spanOf(*form.B), "a ratio to 0 means nothing")
		return nil
	}
	return ratio
}

func (r *reporter) expectPull(tokens []lexer.Token) *Expect {
	form := whole(r, pullGrammar, tokens, "expect pull under 300 N per person")
	if form == nil {
		return nil
	}
	return r.figure(&Expect{
		Subject: Pull, SubjectSpan: spanOf(form.Subject), Compare: compareOf(form.Compare),
		PerPerson: form.Per != nil, By: maybeWord(form.By),
	}, form.Amount, forces)
}

func (r *reporter) expectLoad(tokens []lexer.Token) *Expect {
	if r.fraction(tokens) {
		return nil
	}
	form := whole(r, loadGrammar, tokens, "expect load on head under 6 kN")
	if form == nil {
		return nil
	}
	e := &Expect{
		Subject: LoadOn, SubjectSpan: spanOf(form.Subject), Compare: compareOf(form.Compare),
		Of: maybeWord(&form.Of), By: maybeWord(form.By),
	}
	if form.B == nil {
		return r.figure(e, figureForm{form.A, form.Unit}, forcesOrPlain)
	}
	ratio := r.ratio(ratioForm{form.A, form.B})
	if ratio == nil {
		return nil
	}
	e.Amount = ratio.amount()
	return e
}

// fraction reports a stroke between two numbers, which was meant for a ratio.
func (r *reporter) fraction(tokens []lexer.Token) bool {
	for i := 1; i+1 < len(tokens); i++ {
		before, after := tokens[i-1], tokens[i+1]
		if tokens[i].Value != "/" || before.Type != numberClass || after.Type != numberClass {
			continue
		}
		a, b := clip(before.Value), clip(after.Value)
		r.fault(RuleSyntax, spanOf(before).To(spanOf(after)), "%s / %s is written %s:%s, since / is a stroke", a, b, a, b)
		return true
	}
	return false
}

// amount gives a ratio as a plain number: "2:3" is two thirds.
func (r *Ratio) amount() *Amount {
	value := new(big.Rat).Quo(r.A.Low, r.B.Low)
	return &Amount{
		Quantity: quantity.Quantity{Low: value, High: value, Written: r.A.Written + ":" + r.B.Written},
		Span:     r.Span, LowSpan: r.Span, HighSpan: r.Span, UnitSpan: source.Span{Start: r.Span.End, End: r.Span.End},
	}
}

func (r *reporter) expectFactor(tokens []lexer.Token) *Expect {
	form := whole(r, factorGrammar, tokens, "expect factor of grab over 4")
	if form == nil {
		return nil
	}
	return r.figure(&Expect{
		Subject: Factor, SubjectSpan: spanOf(form.Subject), Compare: compareOf(form.Compare),
		Of: maybeWord(form.Of), By: maybeWord(form.By),
	}, form.Amount, plain)
}

func (r *reporter) expectTravel(tokens []lexer.Token) *Expect {
	form := whole(r, travelGrammar, tokens, "expect travel 3 m per 1 m")
	if form == nil {
		return nil
	}
	e := r.figure(&Expect{
		Subject: Travel, SubjectSpan: spanOf(form.Subject), Compare: compareOf(form.Compare), By: maybeWord(form.By),
	}, form.Amount, lengths)
	if e == nil { // whoever forgets one unit forgets the other
		return nil
	}
	per := r.amount(form.Per.amount(), "travel", lengths)
	if per == nil {
		return nil
	}
	if per.Low.Sign() == 0 {
		r.fault(RuleSyntax, per.Span, "travel per nothing raised means nothing")
		return nil
	}
	e.Per = per
	return e
}

func (r *reporter) expectClass(tokens []lexer.Token) *Expect {
	form := whole(r, classGrammar, tokens, "expect class compound")
	if form == nil {
		return nil
	}
	return &Expect{Subject: Class, SubjectSpan: spanOf(form.Subject), Class: maybeWord(&form.Class), By: maybeWord(form.By)}
}

func (r *reporter) expectStroke(tokens []lexer.Token) *Expect {
	form := whole(r, strokeGrammar, tokens, "expect stroke over 2 m")
	if form == nil {
		return nil
	}
	return r.figure(&Expect{
		Subject: StrokeLength, SubjectSpan: spanOf(form.Subject), Compare: compareOf(form.Compare), By: maybeWord(form.By),
	}, form.Amount, lengths)
}

func (r *reporter) expectLowerHand(tokens []lexer.Token) *Expect {
	form := whole(r, lowerGrammar, tokens, "expect lower hand under 200 N")
	if form == nil {
		return nil
	}
	return r.figure(&Expect{
		Subject: LowerHand, SubjectSpan: spanOf(form.Lower).To(spanOf(form.Hand)), Compare: compareOf(form.Compare),
	}, form.Amount, forces)
}

func (r *reporter) expectFinding(tokens []lexer.Token) *Expect {
	form := whole(r, findingGrammar, tokens, "expect finding redirect-loads-anchor at corner")
	if form == nil {
		return nil
	}
	return &Expect{Subject: Finding, SubjectSpan: spanOf(form.Subject), Rule: maybeWord(&form.Rule), Of: maybeWord(form.At)}
}

func (r *reporter) expectHeld(tokens []lexer.Token) *Expect {
	form := whole(r, heldGrammar, tokens, "expect held when released")
	if form == nil {
		return nil
	}
	e := &Expect{Subject: Held, SubjectSpan: spanOf(form.Held), Not: maybeWord(form.Not)}
	ok := true
	once := func(set bool, t *lexer.Token) {
		if set && t != nil {
			r.fault(RuleRepeatedClause, spanOf(*t), "held has %s twice", clip(t.Value))
			ok = false
		}
	}
	var hands *source.Span
	for _, c := range form.Clauses {
		once(e.WhenReleased, c.Released)
		once(e.WhileHauling, c.Hauling)
		if e.Of != nil && c.Without != nil {
			r.fault(RuleRepeatedClause, spanOf(*c.Without), "held names two lost parts; each has a claim of its own")
			ok = false
		}
		e.WhenReleased = e.WhenReleased || c.Released != nil
		e.WhileHauling = e.WhileHauling || c.Hauling != nil
		if c.Without != nil {
			e.Of = maybeWord(c.Without)
		}
		if t := c.Hauling; t != nil {
			span := spanOf(*t)
			hands = &span
		}
	}
	if e.WhenReleased && hands != nil {
		r.fault(RuleSyntax, *hands, "hands are off when released and on while hauling; one claim cannot have both")
		ok = false
	}
	if !ok {
		return nil
	}
	return e
}

// figure gives a claim its amount; nil if the unit does not fit.
func (r *reporter) figure(e *Expect, form figureForm, dims []quantity.Dimension) *Expect {
	what := string(e.Subject)
	if e.Of != nil {
		what += map[Subject]string{LoadOn: " on ", Factor: " of "}[e.Subject] + clip(e.Of.Text)
	}
	if e.Amount = r.amount(form.amount(), what, dims); e.Amount == nil {
		return nil
	}
	return e
}
