package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
)

var strokeAgainstPosition = &lint.Rule{
	Name:     "stroke-against-position",
	Severity: diag.Error,
	Summary:  "a stroke that contradicts the positions of its two parts; a warning where one of them has its position from another part",
	Check:    checkStrokeAgainstPosition,
}

// checkStrokeAgainstPosition finds the strokes at which a part has its position from
// what it is on or from what hangs on it. Where both have one of their own, the reading
// of the text finds them.
func checkStrokeAgainstPosition(p *lint.Pass) {
	for _, r := range p.Rig.Ropes {
		if r.Broken {
			continue
		}
		for i, stroke := range r.Strokes {
			length, known := p.Result.StrandLength(r, i)
			from, to := r.Nodes[i].Part, r.Nodes[r.After(i)].Part
			if !known || stroke == model.Slack || length.Sign() >= 0 || !apart(p, r, i) {
				continue
			}
			way, lies := "up", "above"
			if stroke == model.Down {
				way, lies = "down", "below"
			}
			d := diag.Diagnostic{
				Place: r.StrokePlaces[i], Subject: from.Name, Also: []string{to.Name, r.Line.Name},
				Message: fmt.Sprintf("%s lies %s %s, yet the stroke leads %s", whereIs(p, from), lies, whereIs(p, to), way),
			}
			for _, part := range []*model.Part{p.Result.PlacedBy(from), p.Result.PlacedBy(to)} {
				d.Related = append(d.Related, diag.Related{
					Place: part.Values.Places["at"], Message: "the position of " + lint.NameOf(part)})
			}
			p.ReportAs(diag.Warning, d)
		}
	}
}

// apart says whether no values within the ranges of two positions fit a stroke, of which
// not both are written at the parts themselves.
func apart(p *lint.Pass, r *model.Rope, stroke int) bool {
	from, to := r.Nodes[stroke].Part, r.Nodes[r.After(stroke)].Part
	lower, upper := p.Result.PlacedBy(from), p.Result.PlacedBy(to)
	if lower == from && upper == to {
		return false
	}
	if r.Strokes[stroke] == model.Down {
		lower, upper = upper, lower
	}
	return upper.Values.At.High.Cmp(lower.Values.At.Low) < 0
}

// whereIs names a part with its position: "top, on head at 12 m,".
func whereIs(p *lint.Pass, part *model.Part) string {
	by := p.Result.PlacedBy(part)
	at := " at " + by.Values.At.String()
	if by == part {
		return lint.NameOf(part) + at
	}
	return lint.NameOf(part) + " (" + lint.NameOf(by) + at + ")"
}
