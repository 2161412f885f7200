package lint

import (
	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// judgeFactor judges strength over load: of one part, or the smallest in the rig, in
// which parts whose strength is not said do not count.
func judgeFactor(res *solve.Result, c *model.Claim) Verdict {
	what, written := "factor", wanted(c.Compare, c.Amount.String())
	if c.Of != nil {
		what += " of " + NameOf(c.Of)
	}
	var rated []rating
	for _, r := range res.Ratings() {
		if r.Strength != nil && (c.Of == nil || r.Part == c.Of) {
			rated = append(rated, rating{Rating: r, load: worst(res, r.Part, c.By)})
		}
	}
	weakest, bound := weakestOf(res, rated)
	switch {
	case len(rated) == 0:
		return unrated(c.Of).unconfirmed(what, written, "")
	case weakest == nil:
		return failed(what + " is unknown, not " + written + ": " + noBalance(res))
	case res.WeightNewtons == nil:
		return massless(res).unconfirmed(what, written, "")
	case weakest.load.high.Sign() == 0:
		return judgeUnloaded(c, what, written, weakest)
	}
	is := inUnit(*weakest.factor, "", claimed(c))
	if c.Of == nil {
		is += " at " + NameOf(weakest.Part)
	}
	known := figure{low: weakest.factor, high: weakest.factor}
	if bound.doubt != nil {
		known = figure{high: bound.most, bounds: true}
		is += " without friction"
	}
	switch known.against(c.Compare, claimed(c)) {
	case holds:
		return Verdict{Holds: true}
	case fails:
		return failed(what + " is " + is + ", not " + written + weakest.why(res))
	}
	return bound.doubt.unconfirmed(what, written, "it is "+is+weakest.why(res))
}

// unrated doubts the factor of a part, or of all, without a strength.
func unrated(part *model.Part) *doubt {
	if part == nil {
		return &doubt{says: "no part has a strength"}
	}
	return withoutClause([]*model.Part{part}, func(*model.Part) string { return "strength" })
}

// judgeUnloaded judges the factor of what carries nothing: it is over every figure.
func judgeUnloaded(c *model.Claim, what, written string, r *rating) Verdict {
	switch {
	case r.load.doubt != nil:
		return r.load.doubt.unconfirmed(what, written, "nothing is carried without friction")
	case c.Compare == syntax.Over:
		return Verdict{Holds: true}
	}
	return failed(what + " is without end, not " + written + ": nothing is carried")
}

// rating is a part's strength with what it carries.
type rating struct {
	solve.Rating
	load carried
	// factor is strength over the largest load, without friction where that is not
	// known; nil where the part carries nothing.
	factor *lp.Num
}

// bound is what is known of the smallest factor of several parts.
type bound struct {
	// most is more than which it is not, whatever friction is; nil if nothing is sure.
	most *lp.Num
	// doubt is why it is not known with friction, if so.
	doubt *doubt
}

// weakestOf finds the part with the smallest factor, the first of several, or one that
// carries nothing if none carries anything; nil if no load is known.
func weakestOf(res *solve.Result, rated []rating) (weakest *rating, known bound) {
	newtons := lp.Int(1)
	if res.WeightNewtons != nil {
		newtons = *res.WeightNewtons
	}
	over := func(r *rating, load *lp.Num) *lp.Num {
		if load == nil || load.Sign() <= 0 {
			return nil
		}
		f := r.Strength.Quo(load.Mul(newtons))
		return &f
	}
	smaller := func(f, than *lp.Num) bool { return f != nil && (than == nil || f.Cmp(*than) < 0) }
	for i := range rated {
		r := &rated[i]
		if r.load.phase == nil {
			continue
		}
		r.factor = over(r, &r.load.high)
		if weakest == nil || smaller(r.factor, weakest.factor) {
			weakest = r
		}
		sure := r.factor
		if r.load.doubt != nil {
			sure = over(r, r.load.sure)
			if known.doubt == nil {
				known.doubt = r.load.doubt
			}
		}
		if smaller(sure, known.most) {
			known.most = sure
		}
	}
	return weakest, known
}

// why says from what a factor comes: " (slips at 5 kN, carries 0.961 kN hauling)".
func (r *rating) why(res *solve.Result) string {
	bears := map[solve.Limit]string{solve.Slips: "slips at ", solve.Damages: "damages rope at "}[r.Limit]
	if bears == "" {
		bears = "bears "
	}
	bears += newtons(res, *r.Strength)
	if r.Knot != "" {
		bears += " with " + Clipped(r.Knot)
	}
	return " (" + bears + ", carries " + forceOf(res, r.load.high) + " " + phaseName(res, r.load.phase) + ")"
}
