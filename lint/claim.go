package lint

import (
	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// Verdict says whether a claim about a rig's figures comes true.
type Verdict struct {
	Holds bool
	// Message says both values when the claim does not hold, such as
	// "advantage is 2:1, not 3:1".
	Message string
	// Missing names the quantity that the claim needs and that is not computed
	// yet; Holds and Message say nothing then.
	Missing string
}

// Judge compares a claim with what was solved. A figure with a range counts by
// its worse end. Claims about findings are none of its business: they hold here.
func Judge(res *solve.Result, c *model.Claim) Verdict {
	switch c.Subject {
	case syntax.Advantage:
		return judgeAdvantage(res, c)
	case syntax.Travel:
		return judgeTravel(res, c)
	case syntax.Class:
		return judgeClass(res, c)
	case syntax.Held:
		return judgeHeld(res, c)
	case syntax.LoadOn:
		return judgeLoad(res, c)
	case syntax.Pull:
		return judgePull(res, c)
	case syntax.Finding:
		return Verdict{Holds: true}
	}
	return Verdict{Missing: missing[c.Subject]}
}

// missing names the quantities that are not computed yet.
var missing = map[syntax.Subject]string{
	syntax.ActualAdvantage: "the advantage with friction",
	syntax.Factor:          "the safety factor",
	syntax.StrokeLength:    "the stroke",
	syntax.LowerHand:       "the force of the lowering hand",
}

func failed(message string) Verdict { return Verdict{Message: message} }

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
		return "the rig has no load or no rope to compute with"
	case len(res.Hauls()) == 0:
		return "nobody hauls"
	case c.By != nil:
		return NameOf(c.By) + " does not raise the load"
	}
	return "the haul does not raise the load"
}

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
	if compare == syntax.Equal {
		return ", not " + claimed
	}
	return ", not " + string(compare) + " " + claimed
}
