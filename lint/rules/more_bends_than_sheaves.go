package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve/lp"
)

var moreBendsThanSheaves = &lint.Rule{
	Name:     "more-bends-than-sheaves",
	Severity: diag.Warning,
	Summary:  "a pulley round which rope bends more often than it has sheaves",
	Check:    checkMoreBendsThanSheaves,
}

func checkMoreBendsThanSheaves(p *lint.Pass) {
	type bends struct {
		times int
		first model.Node // the first that has no sheave left
	}
	at := map[*model.Part]*bends{}
	for _, r := range p.Rig.Ropes {
		for _, n := range r.Nodes {
			if n.Part == nil || n.Part.Values.Sheaves == nil || n.Role != model.Bend && n.Role != model.Capture {
				continue
			}
			b := at[n.Part]
			if b == nil {
				b = &bends{}
				at[n.Part] = b
			}
			b.times++
			if n.Part.Values.Sheaves.High.Num().Int64() == int64(b.times-1) {
				b.first = n
			}
		}
	}
	for _, part := range p.Rig.Parts {
		if b := at[part]; b != nil && b.first.Part != nil {
			report(p, part, b.times, b.first)
		}
	}
}

// report reports the bends of a pulley, at the first that has no sheave left.
func report(p *lint.Pass, part *model.Part, times int, n model.Node) {
	sheaves, who := part.Values.Sheaves, lint.NameOf(part)
	has := sheaves.String() + " sheaves"
	if sheaves.High.IsInt() && sheaves.High.Num().Int64() == 1 {
		has = "1 sheave"
	}
	d := diag.Diagnostic{Place: n.Place, Subject: part.Name}
	if part.FromStock("sheaves") == nil {
		d.Related = []diag.Related{{Place: part.Values.Places["sheaves"], Message: "the sheaves of " + who}}
	} else {
		who += ", " + lint.Clipped(part.Model) + ","
	}
	d.Message = fmt.Sprintf("%s has %s, but rope bends round it %s", who, has, lint.Times(lp.Int(int64(times))))
	p.Report(d)
}
