package lint

import (
	"math/big"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// claimed gives the figure of a claim, in SI units.
func claimed(c *model.Claim) lp.Num { return lp.FromRat(c.Amount.Low) }

// ratioClaimed gives the ratio of a claim, and as it is written.
func ratioClaimed(c *model.Claim) (ratio lp.Num, written string) {
	return lp.FromRat(new(big.Rat).Quo(c.Ratio.A.Low, c.Ratio.B.Low)), c.Place.File.Slice(c.Ratio.Span)
}

// severalLoads says why there is no advantage where the load rises.
const severalLoads = "several loads move, and raise names none of them"

func judgeAdvantage(res *solve.Result, c *model.Claim) Verdict {
	want, written := ratioClaimed(c)
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("advantage is none" + not(c.Compare, written) + ": " + noneRaises(res, c))
	}
	return each(hauls, func(ph *solve.Phase) Verdict {
		switch {
		case ph.Ideal == nil:
			return failed("advantage" + by(res, ph) + " is no single figure" + not(c.Compare, written) + ": " + severalLoads)
		case !fits(c.Compare, *ph.Ideal, *ph.Ideal, want):
			return failed("advantage" + by(res, ph) + " is " + Ratio(*ph.Ideal) + not(c.Compare, written))
		}
		return Verdict{Holds: true}
	})
}

// judgeActual judges the advantage with friction. Where friction is not known, the
// ideal advantage bounds it from above.
func judgeActual(res *solve.Result, c *model.Claim) Verdict {
	want, written := ratioClaimed(c)
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("actual advantage is none" + not(c.Compare, written) + ": " + noneRaises(res, c))
	}
	return each(hauls, func(ph *solve.Phase) Verdict {
		what := "actual advantage" + by(res, ph)
		if ph.Ideal == nil {
			return failed(what + " is no single figure" + not(c.Compare, written) + ": " + severalLoads)
		}
		say := func(n lp.Num) string { return apart(n, want, big.NewRat(1, 1)) + ":1" }
		d := frictionDoubt(ph)
		if d == nil {
			low, high := *ph.Actual.Advantage.Low, *ph.Actual.Advantage.High
			if fits(c.Compare, low, high, want) {
				return Verdict{Holds: true}
			}
			return failed(what + " is " + between(low, high, say) + not(c.Compare, written))
		}
		switch (figure{high: ph.Ideal, bounds: true}).against(c.Compare, want) {
		case holds:
			return Verdict{Holds: true}
		case fails:
			return failed(what + " is at most " + Ratio(*ph.Ideal) + ", that without friction" + not(c.Compare, written))
		}
		return d.unconfirmed(what, wanted(c.Compare, written), "it is "+Ratio(*ph.Ideal)+" without friction")
	})
}

func judgeTravel(res *solve.Result, c *model.Claim) Verdict {
	per := lp.FromRat(c.Per.Middle())
	written := c.Amount.String() + " per " + c.Per.String()
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("travel is none" + not(c.Compare, written) + ": " + noneRaises(res, c))
	}
	return each(hauls, func(ph *solve.Phase) Verdict {
		if ph.Ideal == nil {
			return failed("travel" + by(res, ph) + " is no single figure" + not(c.Compare, written) + ": " + severalLoads)
		}
		hauled := ph.Ideal.Mul(per)
		if !fits(c.Compare, hauled, hauled, claimed(c)) {
			return failed("travel" + by(res, ph) + " is " + inUnit(hauled, c.Amount.Unit, claimed(c)) + " per " +
				c.Per.String() + not(c.Compare, written))
		}
		return Verdict{Holds: true}
	})
}

func judgeClass(res *solve.Result, c *model.Claim) Verdict {
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("class is none, not " + c.Class.Text + ": " + noneRaises(res, c))
	}
	return each(hauls, func(ph *solve.Phase) Verdict {
		switch ph.Class {
		case solve.Class(c.Class.Text):
			return Verdict{Holds: true}
		case solve.NoClass:
			return failed("class" + by(res, ph) + " is none, not " + c.Class.Text + ": several loads move")
		}
		return failed("class" + by(res, ph) + " is " + string(ph.Class) + ", not " + c.Class.Text)
	})
}
