package lint

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// massless doubts a claim in newtons about a rig in which nothing has a mass.
func massless(res *solve.Result) *doubt {
	return withoutClause([]*model.Part{res.Reference}, func(*model.Part) string { return "mass" })
}

// judgePull judges what a whole team pulls, or each of its people. Where friction is
// not known, the ideal pull bounds it from below.
func judgePull(res *solve.Result, c *model.Claim) Verdict {
	written := wanted(c.Compare, c.Amount.String())
	if c.PerPerson {
		written += " per person"
	}
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("pull is none, not " + written + ": " + noneRaises(res, c))
	}
	return each(hauls, func(ph *solve.Phase) Verdict {
		what := "pull" + by(res, ph)
		pull := res.PullNewtons(ph)
		if pull == nil {
			return massless(res).unconfirmed(what, written, "it is "+forceOf(res, *ph.Pull))
		}
		low, high, of := *pull.Low, *pull.High, ""
		if c.PerPerson {
			people := ph.Hauler.Values.People
			if people == nil || people.Low.Sign() <= 0 {
				return uncounted(ph.Hauler).unconfirmed(what, written, "")
			}
			low, high, of = low.Quo(lp.FromRat(people.High)), high.Quo(lp.FromRat(people.Low)), " per person"
		}
		return judgeForce(c, force{what: what, written: written, of: of, low: low, high: high, doubt: inDoubt(res, ph)})
	})
}

// uncounted doubts a figure for each of an unknown number of people.
func uncounted(hauler *model.Part) *doubt {
	return &doubt{says: NameOf(hauler) + " does not say how many people pull", lacking: []Lack{{hauler, "number of people"}}}
}

// judgeLower judges the force of the hand that lowers. Where friction is not known,
// the force without it bounds it from above.
func judgeLower(res *solve.Result, c *model.Claim) Verdict {
	written := wanted(c.Compare, c.Amount.String())
	lowers, why := lowering(res)
	if why != "" {
		return failed("lower hand is none, not " + written + ": " + why)
	}
	return each(lowers, func(ph *solve.Phase) Verdict {
		what := "lower hand" + by(res, ph)
		hand := res.PullNewtons(ph)
		if hand == nil {
			return massless(res).unconfirmed(what, written, "it is "+forceOf(res, *ph.Pull))
		}
		return judgeForce(c, force{what: what, written: written, low: *hand.Low, high: *hand.High, eased: true, doubt: inDoubt(res, ph)})
	})
}

// lowering lists the phases in which a load comes down on a hand; why is empty unless
// there is none, or one in which it falls.
func lowering(res *solve.Result) (phases []*solve.Phase, why string) {
	switch {
	case res.Status == solve.Unsolved:
		return nil, nothingToSolve
	case len(res.Lowers) == 0:
		return nil, "nobody has the rope in hand"
	}
	for _, ph := range res.Lowers {
		switch who := NameOf(ph.Hauler); {
		case ph.Status == solve.Lowers:
			phases = append(phases, ph)
		case ph.Status == solve.StaysUp && why == "":
			why = staysUp(ph)
		case ph.Status == solve.Falls:
			return nil, "the load falls when " + who + " gives rope"
		case why == "":
			why = "nothing balances when " + who + " gives rope"
		}
	}
	if len(phases) > 0 {
		return phases, ""
	}
	return nil, why
}

// staysUp says what keeps a load from coming down.
func staysUp(ph *solve.Phase) string {
	switch len(ph.Holding) {
	case 0:
		return "nothing comes down when " + NameOf(ph.Hauler) + " gives rope"
	case 1:
		return named(ph.Holding) + " holds and is not releasable"
	}
	return named(ph.Holding) + " hold and are not releasable"
}

// force is a force in newtons that a claim is about.
type force struct {
	// what it is, as it is claimed, and of whom: "pull", "under 300 N per person",
	// " per person".
	what, written, of string
	low, high         lp.Num
	// doubt is why it is not known with friction; the two ends are then those without
	// friction, which makes the true force larger, or smaller where it is eased.
	doubt *doubt
	eased bool
}

func judgeForce(c *model.Claim, f force) Verdict {
	known := figure{low: &f.low, high: &f.high, bounds: f.doubt != nil}
	ideal := ""
	if f.doubt != nil {
		ideal = " without friction"
		if f.eased {
			known.low = nil
		} else {
			known.high = nil
		}
	}
	is := between(f.low, f.high, func(n lp.Num) string { return inUnit(n, c.Amount.Unit, claimed(c)) }) + f.of + ideal
	switch known.against(c.Compare, claimed(c)) {
	case holds:
		return Verdict{Holds: true}
	case fails:
		return failed(f.what + " is " + is + ", not " + f.written)
	}
	return f.doubt.unconfirmed(f.what, f.written, "it is "+is)
}
