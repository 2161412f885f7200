package solve

import "fairlead/solve/lp"

// open says whether statics leaves open, even without friction, how the hauled ends
// share the pull: with friction the pull itself is then open.
func (f *friction) open() bool {
	t := f.ph.exact
	if f.ph.Lowering || !t.any {
		return false
	}
	for i, p := range t.pieces {
		if column := t.column[i]; column >= 0 && t.open[column] && p.pulledBy(f.ph.Hauler) > 0 {
			return true
		}
	}
	return false
}

// spread sets the figures of a haul whose shares are open: every balance in the mode
// of the exact motion counts, and the middle is shown, in the tensions that it gives.
// Nil if there is none.
func (f *friction) spread(a *Actual) *tensions {
	usual := f.balances(typical)
	if usual == nil {
		return nil
	}
	pull := usual.force(usual.pullForm())
	if f.ranges() {
		for _, at := range []level{best, worst} {
			if t := f.balances(at); t != nil {
				pull.widen(t.force(t.pullForm()))
			}
		}
	}
	if pull.High == nil || pull.Low.Sign() <= 0 {
		return nil
	}
	f.set(a, pull)
	return usual
}

// balances gives all tensions that balance at a level of friction, with every grip
// sliding that slides in the exact motion; nil if there are none.
func (f *friction) balances(at level) *tensions {
	losses := f.losses(at)
	losses.slides = make([]bool, len(f.ph.program.grips))
	for i := range losses.slides {
		losses.slides[i] = f.ph.holds[i].carriesNothing()
	}
	do := hands{hauler: f.ph.Hauler, free: true}
	program := newProgram(f.ph.program.network, f.load(), do, losses)
	solved := program.solve()
	if solved.Status != lp.Optimal {
		return nil
	}
	return newTensions(program, solved, f.reference)
}

// pullForm is the sum of the tensions on the hauler's ends.
func (t *tensions) pullForm() linear {
	var sum linear
	for _, r := range t.rig.Ropes {
		for i, n := range r.Nodes {
			if n.Part == t.hands.hauler && n.Role.Ends() && !r.Broken {
				sum.add(t.endTerm(r, i))
			}
		}
	}
	return sum
}
