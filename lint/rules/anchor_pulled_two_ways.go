package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var anchorPulledTwoWays = &lint.Rule{
	Name:     "anchor-pulled-two-ways",
	Severity: diag.Warning,
	Summary:  "an anchor that is pulled another way when the rig is held, lowered or caught than when it is hauled",
	Check:    checkAnchorPulledTwoWays,
}

func checkAnchorPulledTwoWays(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "turn"})
	if p.Explained() || limit == nil {
		return
	}
	caught := hasSlack(p.Rig) && p.AffordLosses(2*len(p.Rig.Parts))
	for _, t := range p.Result.Turnings(caught, limit.Allows) {
		p.Report(diag.Diagnostic{
			Place: t.Point.NamePlace, Subject: t.Point.Name, Related: limit.Related(),
			Message: fmt.Sprintf("%s is pulled %s and %s: the pull turns by %s deg, where %s", lint.NameOf(t.Point),
				pulledWords(p, t.From), pulledWords(p, t.To), lint.From(t.Degrees, lp.FromRat(limit.High)), required(limit)),
		})
	}
}

// pulledWords says in words which way an anchor is pulled in a state, and when: "down by 1 kN
// held".
func pulledWords(p *lint.Pass, d solve.Pulled) string {
	way, off := "down", d.Off
	if off.Cmp(lp.Int(90)) > 0 {
		way, off = "up", lp.Int(180).Sub(off)
	}
	if off.Cmp(lp.Frac(1, 2)) > 0 {
		way += " at " + lint.Degrees(off) + " to the line"
	}
	when := ""
	if d.Phase != nil {
		when = p.During(d.Phase) + p.Frictionless(d.Phase)
	} else {
		when = "without " + lint.NameOf(d.After.Part)
	}
	return way + " by " + p.Force(d.Force) + " " + when
}

// hasSlack says whether slack rope lies anywhere in a rig.
func hasSlack(rig *model.Rig) bool {
	for _, r := range rig.Ropes {
		if isLoose(r) {
			return true
		}
	}
	return false
}
