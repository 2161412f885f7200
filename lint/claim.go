package lint

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// Verdict says whether a claim about a rig's figures comes true.
type Verdict struct {
	Holds bool
	// Unknown says that the claim is neither confirmed nor contradicted: a figure that
	// it needs is not known, since something is not said in the rig.
	Unknown bool
	// Message says both values when the claim does not hold, such as "advantage is
	// 2:1, not 3:1", and what lacks when that is unknown.
	Message string
	// Lacking are the parts that do not say what it takes to judge an unknown claim.
	Lacking []Lack
	// Related are places that help to understand the message.
	Related []diag.Related
	// Missing names what was not worked out, since the rig is too large to ask for so
	// much; nothing else is said then.
	Missing string
}

// Lack is a part that does not say something.
type Lack struct {
	Part *model.Part
	// What it does not say, such as "efficiency".
	What string
}

// Judge compares a claim with what was solved. A figure with a range counts by
// its worse end, and so does one of which only a bound is known. Claims about
// findings are none of its business: they hold here. The house says which drop counts
// as held.
func Judge(res *solve.Result, rules *house.Rules, c *model.Claim) Verdict {
	switch c.Subject {
	case syntax.Advantage:
		return judgeAdvantage(res, c)
	case syntax.ActualAdvantage:
		return judgeActual(res, c)
	case syntax.Travel:
		return judgeTravel(res, c)
	case syntax.Class:
		return judgeClass(res, c)
	case syntax.Held:
		return judgeHeld(res, rules, c)
	case syntax.LoadOn:
		return judgeLoad(res, c)
	case syntax.Factor:
		return judgeFactor(res, c)
	case syntax.Pull:
		return judgePull(res, c)
	case syntax.LowerHand:
		return judgeLower(res, c)
	case syntax.StrokeLength:
		return judgeStroke(res, c)
	}
	return Verdict{Holds: true} // about a finding
}

func failed(message string) Verdict { return Verdict{Message: message} }

// each judges phase by phase. A claim fails if it fails in one of them, and is
// unknown if it is in one.
func each(phases []*solve.Phase, judge func(*solve.Phase) Verdict) Verdict {
	all := Verdict{Holds: true}
	for _, ph := range phases {
		v := judge(ph)
		if !v.Holds && !v.Unknown {
			return v
		}
		if v.Unknown && !all.Unknown {
			all = v
		}
	}
	return all
}

// raising gives the haul phases that a claim is about: that of the hauler it
// names, else every one that raises the load.
func raising(res *solve.Result, c *model.Claim) []*solve.Phase {
	var list []*solve.Phase
	for _, ph := range res.Hauls() {
		if ph.Status == solve.OK && (c.By == nil || ph.Hauler == c.By) {
			list = append(list, ph)
		}
	}
	return list
}

// noneRaises says why there is no haul phase to judge.
func noneRaises(res *solve.Result, c *model.Claim) string {
	switch {
	case res.Status == solve.Unsolved:
		return nothingToSolve
	case len(res.Hauls()) == 0:
		return "nobody hauls"
	case c.By != nil:
		return NameOf(c.By) + " does not raise the load"
	}
	return "the haul does not raise the load"
}

const nothingToSolve = "the rig has no load or no rope to compute with"

// by names the hauler of a phase where a rig has several.
func by(res *solve.Result, ph *solve.Phase) string {
	if len(res.Hauls()) < 2 || ph == nil || ph.Hauler == nil {
		return ""
	}
	return " by " + NameOf(ph.Hauler)
}

// fits compares a figure that may be a range, low to high, with the one claimed.
func fits(compare syntax.Compare, low, high, claimed lp.Num) bool {
	switch compare {
	case syntax.Over:
		return low.Cmp(claimed) > 0
	case syntax.Under:
		return high.Cmp(claimed) < 0
	}
	return low.Cmp(claimed) == 0 && high.Cmp(claimed) == 0
}

// not says what was claimed, after what is.
func not(compare syntax.Compare, claimed string) string {
	return ", not " + wanted(compare, claimed)
}

// wanted says what was claimed: "over 2.4", "3:1".
func wanted(compare syntax.Compare, claimed string) string {
	if compare == syntax.Equal {
		return claimed
	}
	return string(compare) + " " + claimed
}
