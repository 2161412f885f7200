package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// solveLower solves the phase in which a hauler gives rope: the hauled end moves
// one unit toward its neighbour, grips that can be opened under load are open, and
// friction helps. The program asks for the smallest force on the hand; where that
// is none, a grip holds the load instead and nothing comes down.
func (s *system) solveLower(name string, hauler *model.Part) *Phase {
	ph := &Phase{Name: name, Hauler: hauler, Lowering: true}
	weight, inexact := exactly(s.bodyWeights(s.pulled.layout, false))
	ph.inexact = inexact
	ph.program = newProgram(s.pulled, weight, hands{hauler: hauler, lowering: true}, nil)
	solved := lp.Solve(ph.program.lp)
	if solved.Status != lp.Optimal {
		s.runaway(ph, solved)
		ph.Unpinned = s.unpinned(ph, weight)
		s.withoutTensions(ph)
		return ph
	}
	t := newTensions(ph.program, solved, s.reference)
	ph.exact, ph.usual = t, t
	ph.run = newRunning(ph.program, solved, t.pieceTensions())
	ph.tension = t.pieceTensions()
	ph.holds = t.gripForces()
	ph.pull = t.pull(hauler)
	ph.Pull = ph.marked(Force{Value: &ph.pull}).Value
	ph.Strands, ph.Parts = ph.forces(s, t)
	ph.Status = StaysUp
	if ph.pull.Sign() > 0 {
		s.motions(ph, solved)
	}
	if !anyLoadSinks(ph.Motion) {
		ph.Holding = t.holding()
		return ph
	}
	ph.Status = Lowers
	ph.Actual = s.actual(ph)
	return ph
}

// anyLoadSinks says whether a load or counterweight comes down. A light part may
// hang on the hand while a grip holds the load.
func anyLoadSinks(list []Motion) bool {
	return slices.ContainsFunc(list, func(m Motion) bool { return len(m.Body.Loads) > 0 && m.Rise.Sign() < 0 })
}

// motions reads the motion of every body off an optimum.
func (s *system) motions(ph *Phase, solved *lp.Solution) {
	ph.Motion = make([]Motion, len(s.bodies))
	for i, b := range s.bodies {
		ph.Motion[i] = Motion{Body: b}
		if ph.Hauler != nil {
			ph.Motion[i] = motion(solved, b)
		}
	}
}

// holding lists the parts whose grips hold something, in file order.
func (t *tensions) holding() []*model.Part {
	return t.partsOf(func(group int) bool { return t.gripForce(group).Sign() > 0 })
}
