package lint

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// carried is what a part carries over all phases: the worst of them.
type carried struct {
	// phase is the one with the largest load; nil if no phase has forces.
	phase  *solve.Phase
	atMost bool
	// low is the least that the worst phase comes to, high the most, in fractions of
	// the reference weight; endless says that preload can make it any more.
	low, high lp.Num
	endless   bool
	// sure is the least that it comes to, whatever friction is; nil if nothing is sure.
	sure *lp.Num
	// doubt is why the load in some phase with friction is not known; low and high are
	// those without it there.
	doubt *doubt
}

// worst gives the most that a part carries in any phase with tensions, with friction
// where that is known. Phases of other haulers than by are left out, if it is given.
func worst(res *solve.Result, part, by *model.Part) (load carried) {
	for _, ph := range res.Bearing() {
		parts, _ := ph.Loads()
		if by != nil && ph.Hauler != nil && ph.Hauler != by || part.Index >= len(parts) {
			continue
		}
		of := parts[part.Index]
		if !of.Known() {
			continue
		}
		low := *of.Low
		if of.AtMost { // what it really carries is anything up to that
			low = lp.Num{}
		}
		if load.phase == nil || of.Most().Cmp(load.high) > 0 {
			load.phase, load.high, load.atMost = ph, of.Most(), of.AtMost
			load.endless = of.High == nil
		}
		load.low = lp.Max(load.low, low)
		switch d := runningDoubt(res, ph); {
		case d != nil && load.doubt == nil:
			load.doubt = d
		case d == nil && (load.sure == nil || load.sure.Cmp(low) < 0):
			load.sure = &low
		}
	}
	return load
}

// runningDoubt says why the loads in a phase with friction are not known; nil where
// they are, and where no pull makes rope run.
func runningDoubt(res *solve.Result, ph *solve.Phase) *doubt {
	if ph.Hauler == nil || ph.Actual == nil && ph.Status != solve.OK {
		return nil
	}
	return inDoubt(res, ph)
}

func judgeLoad(res *solve.Result, c *model.Claim) Verdict {
	what := "load on " + NameOf(c.Of)
	written := wanted(c.Compare, c.Amount.String())
	load := worst(res, c.Of, c.By)
	if load.phase == nil {
		return failed(what + " is unknown, not " + written + ": " + noBalance(res))
	}
	unit := lp.Int(1)
	if c.Amount.Dimension == quantity.Force {
		if res.WeightNewtons == nil {
			return massless(res).unconfirmed(what, written, "it is "+forceOf(res, load.high)+load.when(res))
		}
		unit = *res.WeightNewtons
	}
	is := load.say(func(n lp.Num) string {
		if strings.Contains(c.Amount.Written, ":") { // said as it is claimed
			return Number(n)
		}
		return inUnit(n.Mul(unit), c.Amount.Unit, claimed(c))
	}) + unitless(c)
	if load.doubt != nil {
		is += " without friction"
	}
	switch load.figure().against(c.Compare, claimed(c).Quo(unit)) {
	case holds:
		return Verdict{Holds: true}
	case fails:
		return failed(what + " is " + is + ", not " + written + load.when(res))
	}
	return load.doubt.unconfirmed(what, written, "it is "+is+load.when(res))
}

// figure is what is known of the load with friction.
func (l carried) figure() figure {
	if l.doubt != nil {
		return figure{low: l.sure, bounds: true}
	}
	return figure{low: &l.low, high: &l.high}
}

// say gives the load in words: one figure, a range, or one end of it.
func (l carried) say(say func(lp.Num) string) string {
	switch {
	case l.atMost:
		return "at most " + say(l.high)
	case l.endless:
		return say(l.low) + " or more"
	}
	return between(l.low, l.high, say)
}

// unitless says what a plain number is a multiple of.
func unitless(c *model.Claim) string {
	if c.Amount.Dimension == quantity.None {
		return " × the load"
	}
	return ""
}

// when names the phase of a load: " (hauling)".
func (l carried) when(res *solve.Result) string { return " (" + phaseName(res, l.phase) + ")" }

// phaseName says what goes on in a phase: "held", "hauling", "red lowering".
func phaseName(res *solve.Result, ph *solve.Phase) string {
	doing := "hauling"
	switch {
	case ph.Hauler == nil:
		return "held"
	case ph.Lowering:
		doing = "lowering"
	}
	if len(res.Hauls()) > 1 {
		return NameOf(ph.Hauler) + " " + doing
	}
	return doing
}

// noBalance says why no phase has forces.
func noBalance(res *solve.Result) string {
	if res.Status == solve.Unsolved {
		return nothingToSolve
	}
	return "no forces balance the load"
}
