package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var hitchSlips = &lint.Rule{
	Name:     "hitch-slips",
	Severity: diag.Warning,
	Summary:  "a hitch or clamp that grips more than the force at which it slips",
	Check:    checkHitchSlips,
}

func checkHitchSlips(p *lint.Pass) {
	said := map[*model.Part]bool{}
	for _, b := range burdens(p) {
		s := slips(p, b.Part)
		if s == nil || said[b.Part] || b.byShare() {
			continue
		}
		for _, part := range s.parts {
			said[part] = true
		}
		s.report(p, b)
	}
}

// slip is some hitches or clamps in a row on one rope that grip more than they can.
type slip struct {
	parts []*model.Part
	// from and surely are the forces in newtons at which they start to slip together, and
	// at which they surely do.
	from, surely lp.Num
}

// slips gives the hitches and clamps in a row of which one is a part, if together they grip
// more than the force at which they start to slip. Nil if they do not, if the force is not
// known of one of them, or if the part breaks or harms its rope before.
func slips(p *lint.Pass, part *model.Part) *slip {
	rating := p.Result.Ratings()[part.Index]
	if rating.Limit != solve.Slips || rating.Load == nil {
		return nil
	}
	s := &slip{parts: p.Result.GripsWith(part)}
	for _, q := range s.parts {
		v := q.Values
		if v.Slips == nil {
			return nil
		}
		s.from = s.from.Add(lp.FromRat(v.Slips.Low))
		s.surely = s.surely.Add(lp.FromRat(v.Slips.High))
	}
	if rating.Load.Cmp(s.from) <= 0 {
		return nil
	}
	return s
}

func (s *slip) report(p *lint.Pass, b burden) {
	var names []string
	d := diag.Diagnostic{Place: p.OnRope(b.Part), Subject: b.Part.Name}
	for _, q := range s.parts {
		names = append(names, lint.NameOf(q))
		if q != b.Part {
			d.Also = append(d.Also, q.Name)
		}
	}
	who, grip, slip, does := names[0], "grips", "slips", "it does"
	if len(names) > 1 {
		who, grip, slip, does = lint.List(names)+" together", "grip", "slip", "they do"
	}
	at := p.NewtonsFrom(s.from, *b.Load)
	if s.from.Cmp(s.surely) != 0 {
		at = p.Between(s.from, s.surely)
	}
	if b.Least.Cmp(s.from) <= 0 || b.Load.Cmp(s.surely) <= 0 && s.from.Cmp(s.surely) != 0 {
		slip = "may slip, which " + does
	}
	d.Message = fmt.Sprintf("%s %s, and %s at %s", who, b.carries(p, grip, "grip"), slip, at)
	p.Report(d)
}
