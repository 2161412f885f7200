package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
)

var wideAnchorAngle = &lint.Rule{
	Name:     "wide-anchor-angle",
	Severity: diag.Warning,
	Summary:  "legs of an anchor that open so wide that each carries most of the load, or more than all of it",
	Check:    checkWideAnchorAngle,
}

func checkWideAnchorAngle(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "anchor angle"})
	if p.Explained() {
		return
	}
	for _, o := range p.Result.Openings() {
		if o.Phase == nil || limit.Allows(o.Angle) {
			continue
		}
		d := diag.Diagnostic{Place: o.Right.NamePlace, Subject: o.Focal.Name, Also: []string{o.Left.Name, o.Right.Name}}
		d.Message = fmt.Sprintf("%s and %s open %s deg at %s, where %s: %s, %s; two even legs carry all of it each at %s deg",
			lint.NameOf(o.Left), lint.NameOf(o.Right), lint.Number(o.Angle), lint.NameOf(o.Focal), required(limit),
			p.During(o.Phase), legLoads(p, o), lint.Number(solve.EvenAngle))
		d.Related = append(limit.Related(), diag.Related{Place: o.Left.NamePlace, Message: "the other leg"})
		p.Report(d)
	}
}

// legLoads says what two legs carry: "each carries 1.38 kN, 78 % of what master does".
func legLoads(p *lint.Pass, o solve.Opening) string {
	if !o.OnLeft.Known() || !o.OnRight.Known() {
		return "they cannot balance what it carries"
	}
	left, right, whole := p.Force(o.OnLeft.Most()), p.Force(o.OnRight.Most()), o.Load.Most()
	without, upTo := p.Frictionless(o.Phase), ""
	if o.OnLeft.Ranges() || o.OnRight.Ranges() {
		upTo = "up to "
	}
	of := " of what " + lint.NameOf(o.Focal) + " does"
	if left == right {
		return fmt.Sprintf("each carries %s%s%s, %s%s", upTo, left, without, lint.PerCent(o.OnLeft.Most().Quo(whole)), of)
	}
	return fmt.Sprintf("%s carries %s%s and %s %s%s, %s and %s%s", lint.NameOf(o.Left), upTo, left, lint.NameOf(o.Right), right,
		without, lint.PerCent(o.OnLeft.Most().Quo(whole)), lint.PerCent(o.OnRight.Most().Quo(whole)), of)
}
