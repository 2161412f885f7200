package solve

import (
	"sync"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve/lp"
)

// Limit says what happens to a part at the load that counts as its strength.
type Limit string

// The limits.
const (
	Breaks  Limit = "breaks"
	Slips   Limit = "slips"   // a hitch or clamp lets rope through
	Damages Limit = "damages" // a clamp harms the rope
)

// Rating sets the worst load of a part against what it bears.
type Rating struct {
	Part *model.Part
	// Load is the worst over all phases of Result.Bearing in newtons, its upper end, or the lower one
	// where preload leaves it open above. With friction where it is known. Nil if no
	// phase tells, or if the rig has no masses.
	Load *lp.Num
	// Phase is the phase in which the load is worst; nil without Load.
	Phase *Phase
	// Ideal says that friction in that phase is unknown, so that the true load of a
	// part on the team's side is larger.
	Ideal bool
	// Ranges says that the load is the upper end of a range, AtMost that the forces are not
	// parallel, so that their sizes were added up: the true load may be smaller.
	Ranges, AtMost bool
	// Least is what the part surely carries in some phase, in newtons; 0 without Load.
	Least lp.Num
	// Open is how much of it hangs on how ropes share a load while hauling; nil if
	// nothing does.
	Open *OpenShare
	// Strength is what the part bears in newtons, the lower end of a range: the
	// smallest of strength, slip and damage force, and of a line what its worst knot
	// leaves of it. Nil if none is stated.
	Strength *lp.Num
	Limit    Limit
	// Knot is the name of the knot that weakens a line, if one does.
	Knot string
	// Factor is strength over load; nil if either is unknown or the load is 0.
	Factor *lp.Num
}

// ratings remembers them: many ask.
type ratings struct {
	once sync.Once
	list []Rating
}

// Ratings gives the rating of every part, in file order. The list is shared: nobody may
// change it.
func (r *Result) Ratings() []Rating {
	if r.system == nil {
		return nil
	}
	known := &r.system.ratings
	known.once.Do(func() { known.list = r.rate() })
	return known.list
}

func (r *Result) rate() []Rating {
	list := make([]Rating, len(r.Rig.Parts))
	for i, p := range r.Rig.Parts {
		list[i] = Rating{Part: p}
		r.worstLoad(&list[i])
		list[i].Open = r.openShare(p)
		list[i].bears(r.Rig)
		if list[i].Load != nil && list[i].Strength != nil && list[i].Load.Sign() > 0 {
			factor := list[i].Strength.Quo(*list[i].Load)
			list[i].Factor = &factor
		}
	}
	return list
}

// Weakest gives the part with the smallest factor, the first in file order of
// several; nil if no factor is known.
func (r *Result) Weakest() *Rating {
	var weakest *Rating
	ratings := r.Ratings()
	for i := range ratings {
		f := ratings[i].Factor
		if f != nil && (weakest == nil || f.Cmp(*weakest.Factor) < 0) {
			weakest = &ratings[i]
		}
	}
	return weakest
}

// Every gives all phases: hold, the hauls, and those lowers that move.
func (r *Result) Every() []*Phase {
	list := append([]*Phase{}, r.Phases...)
	for _, ph := range r.Lowers {
		if ph.Status == Lowers {
			list = append(list, ph)
		}
	}
	return list
}

// Loads gives what the parts carry in a phase: with friction where that is known.
func (p *Phase) Loads() (parts []PartLoad, ideal bool) {
	if p.Actual.Known() {
		return p.Actual.Parts, false
	}
	return p.Parts, p.Hauler != nil
}

// Tensions gives what the strands carry in a phase: with friction where that is known.
func (p *Phase) Tensions() (strands []Strand, ideal bool) {
	if p.Actual.Known() {
		return p.Actual.Strands, false
	}
	return p.Strands, p.Hauler != nil
}

// worstLoad finds the phase in which a part carries most. Where rope slides with
// unknown friction, the hold phase and the ideal haul are all there is to say.
func (r *Result) worstLoad(rating *Rating) {
	if r.WeightNewtons == nil {
		return
	}
	for _, ph := range r.Bearing() {
		parts, ideal := ph.Loads()
		load := parts[rating.Part.Index]
		if !load.Known() {
			continue
		}
		newtons := load.Most().Mul(*r.WeightNewtons)
		if !load.AtMost {
			rating.Least = lp.Max(rating.Least, load.Low.Mul(*r.WeightNewtons))
		}
		if rating.Load == nil || newtons.Cmp(*rating.Load) > 0 {
			rating.Load, rating.Phase, rating.Ideal = &newtons, ph, ideal
			rating.Ranges, rating.AtMost = load.High != nil && load.Force.Ranges(), load.AtMost
		}
	}
}

// bears fills in what the part can bear.
func (r *Rating) bears(rig *model.Rig) {
	v := r.Part.Values
	take := func(q *quantity.Quantity, limit Limit) {
		if q == nil {
			return
		}
		if n := lp.FromRat(q.Low); r.Strength == nil || n.Cmp(*r.Strength) < 0 {
			r.Strength, r.Limit = &n, limit
		}
	}
	take(v.Strength, Breaks)
	take(v.Slips, Slips)
	take(v.Damages, Damages)
	if r.Part.IsReeved() && r.Strength != nil {
		left, knot := retained(rig, r.Part)
		strength := r.Strength.Mul(left)
		r.Strength, r.Knot = &strength, knot
	}
}

// retained gives what the worst knot leaves of a line's strength as a fraction,
// the lower end of its range, and the knot's name; 1 if no knot says.
func retained(rig *model.Rig, line *model.Part) (left lp.Num, knot string) {
	left = lp.Int(1)
	take := func(q *quantity.Quantity, name string) {
		if q == nil {
			return
		}
		if n := lp.FromRat(q.Low); n.Cmp(left) < 0 {
			left, knot = n, name
		}
	}
	for _, rope := range rig.Ropes {
		if rope.Line != line {
			continue
		}
		for _, n := range rope.Nodes {
			take(n.Retains, n.Tie)
			if n.Part != nil && n.Part.Kind == model.Knot {
				take(n.Part.Values.Retains, n.Part.Name)
			}
		}
	}
	return left, knot
}

// PeopleNeeded gives how many of a haul's people it takes to pull, with friction
// where it is known: the pull, its upper end, over what each can pull, rounded up.
// ok is false if the pull in newtons or what each pulls is not known, and if it takes
// more than anybody can count.
func (r *Result) PeopleNeeded(ph *Phase) (people int64, ok bool) {
	pull := r.PullNewtons(ph)
	if pull == nil || ph.Hauler == nil || ph.Hauler.Values.Pull == nil {
		return 0, false
	}
	each := lp.FromRat(ph.Hauler.Values.Pull.Low)
	if each.Sign() <= 0 {
		return 0, false
	}
	return ceiling(pull.High.Quo(each))
}

// PullNewtons gives a haul's pull in newtons, with friction where it is known; nil
// if the rig has no masses or the haul no pull.
func (r *Result) PullNewtons(ph *Phase) *Force {
	if r.WeightNewtons == nil || ph == nil || ph.Pull == nil {
		return nil
	}
	pull := Force{Value: ph.Pull, Low: ph.Pull, High: ph.Pull}
	if ph.Actual.Known() {
		pull = ph.Actual.Pull
	}
	in := func(n *lp.Num) *lp.Num { m := n.Mul(*r.WeightNewtons); return &m }
	return &Force{Value: in(pull.Value), Low: in(pull.Low), High: in(pull.High)}
}

// mostCounted bounds whole numbers: up to it a float has every one of them.
const mostCounted = 1 << 53

// ceiling rounds up to a whole number, where there is one that can be counted; a float's
// noise does not count.
func ceiling(n lp.Num) (whole int64, ok bool) {
	if n.Cmp(lp.Int(mostCounted)) > 0 {
		return 0, false
	}
	whole = int64(n.Float())
	for lp.Int(whole).Cmp(n) < 0 {
		whole++
	}
	return whole, true
}
