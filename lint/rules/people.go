package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// hazard says how grave it is that bodies go down: a warning where people hang on one of
// them or stand below it, else advice.
func hazard(p *lint.Pass, bodies []*solve.Body) diag.Severity {
	if peopleOn(bodies) || len(peopleBelow(p, bodies)) > 0 {
		return diag.Warning
	}
	return diag.Advice
}

// peopleOn says whether people hang on bodies: a load with people, or somebody who hauls
// or tends from what is raised.
func peopleOn(bodies []*solve.Body) bool {
	for _, b := range bodies {
		for _, part := range b.Parts {
			if part.Kind.IsPerson() {
				return true
			}
			if n := part.Values.People; n != nil && n.High.Sign() > 0 {
				return true
			}
		}
	}
	return false
}

// below is somebody who stands below a load, at the start or once it is raised.
type below struct {
	who, load *model.Part
	// at is where they stand, top how high the load gets; in metres along the haul line.
	at, top lp.Num
}

// peopleBelow lists the haulers and tenders whose positions are below those that loads of
// the bodies get to, each once; who hangs on the body itself goes down with it.
func peopleBelow(p *lint.Pass, bodies []*solve.Body) []below {
	var list []below
	for _, who := range p.Rig.Parts {
		at, known := lp.Num{}, false
		if who.Kind.IsPerson() {
			at, known = p.Result.Position(who)
		}
		if !known {
			continue
		}
		for _, b := range bodies {
			if slices.Contains(b.Parts, who) || slices.ContainsFunc(list, func(o below) bool { return o.who == who }) {
				continue
			}
			for _, load := range b.Loads {
				if top, known := p.Result.Highest(load); known && at.Cmp(top) < 0 {
					list = append(list, below{who, load, at, top})
					break
				}
			}
		}
	}
	return list
}
