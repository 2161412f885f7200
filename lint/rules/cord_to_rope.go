package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve/lp"
)

var cordToRope = &lint.Rule{
	Name:     "cord-to-rope",
	Severity: diag.Advice,
	Summary:  "a hitch whose cord is too thin or too thick for its rope; a warning where it is too thick, which may not grip",
	Check:    checkCordToRope,
}

func checkCordToRope(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "cord"})
	if limit == nil {
		return
	}
	type pair struct{ hitch, line *model.Part }
	seen := map[pair]bool{}
	for _, r := range p.Rig.Ropes {
		for _, n := range r.Nodes {
			on := pair{n.Part, r.Line}
			if r.Broken || n.Role != model.Grip || n.Part.Kind != model.Hitch || seen[on] {
				continue
			}
			seen[on] = true
			reportCord(p, n, r.Line, limit)
		}
	}
}

// reportCord compares the cord of a hitch with the rope that it grips. A cord or rope
// whose diameter is a range is reported only if it is out of the limit from end to end.
func reportCord(p *lint.Pass, n model.Node, line *model.Part, limit *house.Limit) {
	cord, rope := n.Part.Values.Cord, line.Values.Diameter
	if cord == nil || rope == nil {
		return
	}
	least, most := lp.FromRat(cord.Low).Quo(lp.FromRat(rope.High)), lp.FromRat(cord.High).Quo(lp.FromRat(rope.Low))
	thinnest, thickest := lp.FromRat(limit.Low), lp.FromRat(limit.High)
	severity, is := diag.Advice, most
	how := "thinner than %s: it holds less, and is hard to loosen"
	switch {
	case least.Cmp(thickest) > 0:
		severity, is, how = diag.Warning, least, "thicker than %s: it may not grip"
	case most.Cmp(thinnest) >= 0:
		return
	}
	fits := lint.InUnit(thinnest.Mul(lp.FromRat(rope.High)), thickest.Mul(lp.FromRat(rope.Low)), cord.Unit)
	p.ReportAs(severity, diag.Diagnostic{
		Place: n.Place, Subject: n.Part.Name, Also: []string{line.Name},
		Message: fmt.Sprintf("%s has a cord of %s on %s of %s, %s of its diameter, "+how+"; %s would fit",
			lint.NameOf(n.Part), cord, lint.NameOf(line), rope, lint.PerCent(is), limit, fits),
		Related: limit.Related(),
	})
}
