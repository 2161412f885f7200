package lint

import (
	"math/big"

	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// claimed gives the figure of a claim, in SI units.
func claimed(c *model.Claim) lp.Num { return lp.FromRat(c.Amount.Low) }

func judgeAdvantage(res *solve.Result, c *model.Claim) Verdict {
	want := lp.FromRat(new(big.Rat).Quo(c.Ratio.A.Low, c.Ratio.B.Low))
	written := c.Place.File.Slice(c.Ratio.Span)
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("advantage is none" + not(c.Compare, written) + ": " + noneRaises(res, c))
	}
	for _, ph := range hauls {
		switch {
		case ph.Ideal == nil:
			return failed("advantage" + by(res, ph) + " is no single figure" + not(c.Compare, written) +
				": several loads move, and raise names none of them")
		case !fits(c.Compare, *ph.Ideal, *ph.Ideal, want):
			return failed("advantage" + by(res, ph) + " is " + Ratio(*ph.Ideal) + not(c.Compare, written))
		}
	}
	return Verdict{Holds: true}
}

func judgeTravel(res *solve.Result, c *model.Claim) Verdict {
	per := lp.FromRat(c.Per.Middle())
	written := c.Amount.String() + " per " + c.Per.String()
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("travel is none" + not(c.Compare, written) + ": " + noneRaises(res, c))
	}
	for _, ph := range hauls {
		if ph.Ideal == nil {
			return failed("travel" + by(res, ph) + " is no single figure" + not(c.Compare, written) +
				": several loads move, and raise names none of them")
		}
		hauled := ph.Ideal.Mul(per)
		if !fits(c.Compare, hauled, hauled, claimed(c)) {
			return failed("travel" + by(res, ph) + " is " + inUnit(hauled, c.Amount.Unit, claimed(c)) + " per " +
				c.Per.String() + not(c.Compare, written))
		}
	}
	return Verdict{Holds: true}
}

func judgeClass(res *solve.Result, c *model.Claim) Verdict {
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("class is none, not " + c.Class.Text + ": " + noneRaises(res, c))
	}
	for _, ph := range hauls {
		switch ph.Class {
		case solve.Class(c.Class.Text):
		case solve.NoClass:
			return failed("class" + by(res, ph) + " is none, not " + c.Class.Text + ": several loads move")
		default:
			return failed("class" + by(res, ph) + " is " + string(ph.Class) + ", not " + c.Class.Text)
		}
	}
	return Verdict{Holds: true}
}

// judgePull compares the ideal pull, which is the actual one only where nothing
// is said about friction.
func judgePull(res *solve.Result, c *model.Claim) Verdict {
	if rubs(res.Rig) {
		return Verdict{Missing: "the pull with friction"}
	}
	written := c.Amount.String()
	if c.PerPerson {
		written += " per person"
	}
	hauls := raising(res, c)
	switch {
	case len(hauls) == 0:
		return failed("pull is none" + not(c.Compare, written) + ": " + noneRaises(res, c))
	case res.WeightNewtons == nil:
		return failed("pull is " + forceOf(res, *hauls[0].Pull) + "; it takes the load's mass to compare it with " + written)
	}
	for _, ph := range hauls {
		newtons := ph.Pull.Mul(*res.WeightNewtons)
		of, low, high := "", newtons, newtons
		if c.PerPerson {
			people := ph.Hauler.Values.People
			if people == nil || people.Low.Sign() <= 0 {
				return failed("pull per person is unknown" + not(c.Compare, written) + ": " +
					NameOf(ph.Hauler) + " does not say how many people pull")
			}
			of = " per person"
			low, high = newtons.Quo(lp.FromRat(people.High)), newtons.Quo(lp.FromRat(people.Low))
		}
		if !fits(c.Compare, low, high, claimed(c)) {
			return failed("pull" + by(res, ph) + " is " + worse(c, low, high) + of + not(c.Compare, written))
		}
	}
	return Verdict{Holds: true}
}

// worse gives the end of a range by which a claim counts, in the claim's unit.
func worse(c *model.Claim, low, high lp.Num) string {
	say := func(n lp.Num) string { return inUnit(n, c.Amount.Unit, claimed(c)) }
	switch {
	case c.Compare == syntax.Over || low.Cmp(high) == 0:
		return say(low)
	case c.Compare == syntax.Under:
		return say(high)
	}
	return say(low) + " to " + say(high)
}

// rubs says whether anything that a rope runs over has an efficiency or friction.
func rubs(rig *model.Rig) bool {
	for _, r := range rig.Ropes {
		for _, n := range r.Nodes {
			if n.Efficiency != nil || n.Lowering != nil || n.Friction != nil && !isWeight(n) || n.Turns != nil {
				return true
			}
		}
	}
	return false
}

// isWeight says whether a node is a load, whose friction is on the ground.
func isWeight(n model.Node) bool { return n.Part != nil && n.Part.Kind.IsWeight() }
