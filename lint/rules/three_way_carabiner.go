package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var threeWayCarabiner = &lint.Rule{
	Name:     "three-way-carabiner",
	Severity: diag.Warning,
	Summary:  "a carabiner that is pulled three ways",
	Latent:   true,
	Check:    checkThreeWayCarabiner,
}

// checkThreeWayCarabiner asks every phase, and reports a carabiner in the one in which
// the largest of the three forces is greatest.
func checkThreeWayCarabiner(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "turn"})
	if limit == nil || p.Explained() {
		return
	}
	for _, part := range p.Rig.Parts {
		if part.Kind != model.Carabiner {
			continue
		}
		var worst *threeWays
		for _, ph := range p.Result.Every() {
			pulls, apart, ok := p.Result.ThreeWays(ph, part, limit.Allows)
			if w := (&threeWays{ph, pulls, apart}); ok && (worst == nil || w.most().Cmp(worst.most()) > 0) {
				worst = w
			}
		}
		if worst != nil {
			worst.report(p, part, limit)
		}
	}
}

// threeWays are three forces on a part in a phase, the nearest two so many degrees apart.
type threeWays struct {
	phase *solve.Phase
	pulls [3]solve.Pull
	apart lp.Num
}

// most is the largest of the forces that are known.
func (w *threeWays) most() lp.Num {
	most := lp.Num{}
	for _, pull := range w.pulls {
		if pull.Force != nil {
			most = lp.Max(most, *pull.Force)
		}
	}
	return most
}

func (w *threeWays) report(p *lint.Pass, part *model.Part, limit *house.Limit) {
	d := diag.Diagnostic{Place: p.OnRope(part), Subject: part.Name, Related: limit.Related()}
	var forces []string
	for _, pull := range w.pulls {
		var names []string
		for _, by := range pull.By {
			names = append(names, lint.NameOf(by))
			d.Also = append(d.Also, by.Name)
		}
		by := "by " + lint.List(names)
		if pull.Force != nil {
			by = p.Force(*pull.Force) + " " + by
		}
		forces = append(forces, by)
	}
	friction := ""
	if w.phase.Hauler != nil && !w.phase.Actual.Known() {
		friction = p.WithoutFriction()
	}
	d.Message = lint.NameOf(part) + " is pulled three ways, the nearest two " + lint.Degrees(w.apart) + " apart: " +
		lint.List(forces) + friction + ", " + p.During(w.phase) + "; a carabiner bears its strength along its spine alone"
	p.Report(d)
}
