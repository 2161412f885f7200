package lint

import (
	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/solve"
)

// judgeStroke judges how far the load rises until two parts meet.
func judgeStroke(res *solve.Result, c *model.Claim) Verdict {
	written := wanted(c.Compare, c.Amount.String())
	hauls := raising(res, c)
	if len(hauls) == 0 {
		return failed("stroke is none, not " + written + ": " + noneRaises(res, c))
	}
	return each(hauls, func(ph *solve.Phase) Verdict {
		what, stroke := "stroke"+by(res, ph), ph.Stroke
		switch {
		case stroke == nil:
			return failed(what + " is no single figure, not " + written + ": " + severalLoads)
		case !stroke.Known():
			return unplaced(stroke).unconfirmed(what, written, "")
		case stroke.First == nil && c.Compare == syntax.Over:
			return Verdict{Holds: true} // nothing ever meets
		case stroke.First == nil:
			return failed(what + " is without end, not " + written + ": no two parts meet")
		case fits(c.Compare, *stroke.Rise, *stroke.Rise, claimed(c)):
			return Verdict{Holds: true}
		}
		return failed(what + " is " + inUnit(*stroke.Rise, c.Amount.Unit, claimed(c)) + ", not " + written + ": " +
			NameOf(stroke.First.Lower) + " meets " + NameOf(stroke.First.Upper))
	})
}

// unplaced doubts a stroke for want of positions, or for positions that cannot be.
func unplaced(stroke *solve.Stroke) *doubt {
	if len(stroke.Missing) > 0 {
		return withoutClause(stroke.Missing, func(*model.Part) string { return "position" })
	}
	at := stroke.Against[0]
	return &doubt{says: "the positions contradict " + StrandName(at.Rope, at.Index)}
}
