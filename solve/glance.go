package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Glance is what is seen of a rig at first: whether the load rises, and how. It agrees
// with Rig and costs a fraction of it, for trying many changes out.
type Glance struct {
	Status Status
	// Ideal is that of Result.Main: rope hauled for one unit that the load rises. Nil
	// unless the load rises and its motion is the only one.
	Ideal *lp.Num

	system *system
}

// LookAt gives the glance of a rig.
func LookAt(rig *model.Rig) *Glance {
	g := &Glance{Status: Unsolved, system: newSystem(rig)}
	s := g.system
	if s.reference == nil || !hasRope(rig) {
		return g
	}
	var hauls []*Phase
	for _, h := range s.haulers() {
		ph := s.glancePhase(s.pulled, h)
		hauls = append(hauls, ph)
		if ph.Status == OK { // Main is the first that raises
			g.Ideal = ph.Ideal
			break
		}
	}
	g.Status = overall(hauls)
	return g
}

// glancePhase solves a haul for its status and its advantage alone.
func (s *system) glancePhase(n *network, hauler *model.Part) *Phase {
	ph := &Phase{Hauler: hauler}
	weight, _ := exactly(s.bodyWeights(n.layout, true))
	ph.program = newProgram(n, weight, hands{hauler: hauler}, nil)
	solved := lp.Solve(ph.program.lp)
	switch solved.Status {
	case lp.Infeasible:
		s.runaway(ph, solved)
	case lp.Unbounded:
		ph.Status = Jammed
	default:
		for _, b := range s.bodies {
			m := Motion{Body: b, Free: true}
			if s.raisable(b) && solved.Y[b.Index].Sign() > 0 { // else it does not rise
				m = motion(solved, b)
			}
			ph.Motion = append(ph.Motion, m)
		}
		s.judge(ph)
	}
	return ph
}

// Released gives the answer of the whistle test.
func (g *Glance) Released() Answer {
	if g.Status == Unsolved {
		return ""
	}
	return g.system.stay(question{}).Answer
}
