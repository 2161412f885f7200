package lint

import (
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// carried is what a part carries in its worst phase.
type carried struct {
	phase  *solve.Phase
	force  solve.Force
	atMost bool
}

// worst gives the most that a part carries in any phase with tensions; none if
// there is no such phase.
func worst(res *solve.Result, part, by *model.Part) (load carried, none bool) {
	none = true
	for _, ph := range res.Phases {
		if by != nil && ph.Hauler != nil && ph.Hauler != by || part.Index >= len(ph.Parts) {
			continue
		}
		of := ph.Parts[part.Index]
		if of.Known() && (none || of.Most().Cmp(load.force.Most()) > 0) {
			load, none = carried{ph, of.Force, of.AtMost}, false
		}
	}
	return load, none
}

func judgeLoad(res *solve.Result, c *model.Claim) Verdict {
	name := "load on " + NameOf(c.Of)
	written := c.Amount.String()
	load, none := worst(res, c.Of, c.By)
	switch {
	case none:
		return failed(name + " is unknown" + not(c.Compare, written) + ": " + noBalance(res))
	case c.Amount.Dimension == quantity.Force && res.WeightNewtons == nil:
		return failed(name + " is " + forceOf(res, load.force.Most()) + "; it takes the load's mass to compare it with " + written)
	}
	unit := lp.Int(1)
	if c.Amount.Dimension == quantity.Force {
		unit = *res.WeightNewtons
	}
	say := func(n lp.Num) string { return inUnit(n.Mul(unit), c.Amount.Unit, claimed(c)) }
	low, high := *load.force.Low, load.force.Most()
	if load.atMost { // what it really carries is anything up to that
		low = lp.Num{}
	}
	if fits(c.Compare, low, high, claimed(c).Quo(unit)) {
		return Verdict{Holds: true}
	}
	return failed(name + " is " + load.say(say) + unitless(c) + not(c.Compare, written) + load.when(res))
}

// say gives the load in words: one figure, a range, or one end of it.
func (l carried) say(say func(lp.Num) string) string {
	low, high := *l.force.Low, l.force.Most()
	switch {
	case l.atMost:
		return "at most " + say(high)
	case !l.force.Ranges():
		return say(high)
	case l.force.High == nil:
		return say(low) + " or more"
	}
	return say(low) + " to " + say(high)
}

// unitless says what a plain number is a multiple of.
func unitless(c *model.Claim) string {
	if c.Amount.Dimension == quantity.None {
		return " × the load"
	}
	return ""
}

// when names the phase of a load.
func (l carried) when(res *solve.Result) string {
	switch {
	case l.phase.Hauler == nil:
		return " (held)"
	case len(res.Hauls()) > 1:
		return " (" + NameOf(l.phase.Hauler) + " hauling)"
	}
	return " (hauling)"
}

// noBalance says why no phase has forces.
func noBalance(res *solve.Result) string {
	if res.Status == solve.Unsolved {
		return "the rig has no load or no rope to compute with"
	}
	return "no forces balance the load"
}
