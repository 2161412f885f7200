package solve

import "fairlead/solve/lp"

// TwoPulls gives the pull with friction both ways, in the mode of the exact motion
// and as the largest one that can be balanced; nil where a way has no answer.
func TwoPulls(res *Result) (inMode, largest *lp.Num) {
	ph := res.Main()
	solved := lp.Solve(ph.program.lp)
	f := &friction{system: res.system, ph: ph, run: newRunning(ph.program, solved, ph.tension)}
	value := func(s *lp.Solution, _ *program) *lp.Num {
		if s.Status != lp.Optimal {
			return nil
		}
		return &s.Value
	}
	return value(f.inMode(typical)), value(f.largestPull(typical))
}
