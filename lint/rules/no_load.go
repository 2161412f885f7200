package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var noLoad = &lint.Rule{
	Name:     "no-load",
	Severity: diag.Advice,
	Summary:  "a rig with a rope but without a load that can move, of which no figure can be worked out",
	Check:    checkNoLoad,
}

// checkNoLoad says of a rig that it is not checked: without a finding it would pass as one
// in which nothing is wrong. Where an error left something out, that error says more, and
// of a rig without a rope unused-part does.
func checkNoLoad(p *lint.Pass) {
	if p.Result.Status != solve.Unsolved || p.Rig.Incomplete || len(p.Rig.Ropes) == 0 {
		return
	}
	loads := func(part *model.Part) bool { return part.Kind == model.Load }
	lacks := "no load"
	if slices.ContainsFunc(p.Rig.Parts, loads) {
		lacks = "no load that can move"
	}
	first := p.Rig.Ropes[0]
	p.Report(diag.Diagnostic{
		Place: first.Place, Subject: first.Line.Name,
		Message: "the rig has " + lacks + ", so that no figure of it can be worked out: only its text is checked",
	})
}
