package solve

import "fairlead/solve/lp"

// TwoPulls gives the pull with friction both ways, in the mode of the exact motion
// and as the largest one that can be balanced; nil where a way has no answer.
func TwoPulls(res *Result) (inMode, largest *lp.Num) {
	return twoForces(res.system, res.Main())
}

// TwoForces gives the same for any phase with friction.
func TwoForces(res *Result, ph *Phase) (inMode, largest *lp.Num) { return twoForces(res.system, ph) }

func twoForces(s *system, ph *Phase) (inMode, largest *lp.Num) {
	f := &friction{system: s, ph: ph, run: ph.run}
	value := func(s *lp.Solution, _ *program) *lp.Num {
		if s.Status != lp.Optimal {
			return nil
		}
		return &s.Value
	}
	return value(f.inMode(typical)), value(f.largestPull(typical))
}
