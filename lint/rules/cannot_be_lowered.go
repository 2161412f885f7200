package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/solve"
)

var cannotBeLowered = &lint.Rule{
	Name:     "cannot-be-lowered",
	Severity: diag.Advice,
	Summary:  "people hang on a load, or a part is releasable, and nothing lowers it: a grip that carries it cannot be opened",
	Check:    checkCannotBeLowered,
	Latent:   true,
}

// checkCannotBeLowered looks for the grips that keep the load from coming down when hands
// give rope. It asks only where lowering matters: people hang on the load, or the rig has
// something that can be opened.
func checkCannotBeLowered(p *lint.Pass) {
	res := p.Result
	if res.Status != solve.OK || !p.Keeps(res.Released) || !speaksOfLowering(p) {
		return
	}
	var holding []*model.Part
	for _, ph := range res.Lowers {
		if ph.Status != solve.StaysUp || len(ph.Holding) == 0 {
			return // it comes down, or nothing keeps it
		}
		for _, part := range ph.Holding {
			if !slices.Contains(holding, part) {
				holding = append(holding, part)
			}
		}
	}
	if len(holding) == 0 || othersLower(res, holding) {
		return
	}
	d := diag.Diagnostic{Place: p.OnRope(holding[0]), Subject: holding[0].Name}
	for _, part := range holding[1:] {
		d.Also = append(d.Also, part.Name)
	}
	verb := " holds and cannot be opened under load"
	if len(holding) > 1 {
		verb = " hold and cannot be opened under load"
	}
	who := loaded(res.Bodies)
	d.Also = append(d.Also, lint.NamesIn(who)...)
	d.Message = lint.Bodies(who) + " cannot be lowered: " + lint.List(partNames(holding)) + verb
	p.Report(d)
}

// speaksOfLowering says whether lowering matters in a rig. A claim on the lowering hand
// says what is wrong itself.
func speaksOfLowering(p *lint.Pass) bool {
	if slices.ContainsFunc(p.Rig.Claims, func(c *model.Claim) bool { return c.Subject == syntax.LowerHand && !c.Broken }) {
		return false
	}
	opens := func(part *model.Part) bool { return part.Values.Releasable || part.Values.Lowering != nil }
	return peopleOn(p.Result.Bodies) || slices.ContainsFunc(p.Rig.Parts, opens)
}

// othersLower says whether, each of the holding grips taken off, another line holds the
// load that can be opened: then that one lowers.
func othersLower(res *solve.Result, holding []*model.Part) bool {
	for _, part := range holding {
		lost := solve.Lost{Kind: solve.LostHold, Part: part}
		if part.Kind.IsGrip() {
			lost = solve.LostOf(res.Rig, part)
		}
		then := res.After(lost)
		keeps := then.Holding()
		if !then.LoadsStay() || len(keeps) == 0 || slices.ContainsFunc(keeps, func(q *model.Part) bool { return !q.Values.Releasable }) {
			return false
		}
	}
	return true
}

// loaded lists the bodies with a load that weighs something; a counterweight is none.
func loaded(bodies []*solve.Body) []*solve.Body {
	isLoad := func(part *model.Part) bool { return part.Kind == model.Load }
	return slices.DeleteFunc(slices.Clone(bodies), func(b *solve.Body) bool {
		return b.Weight.Sign() <= 0 || !slices.ContainsFunc(b.Loads, isLoad)
	})
}
