package solve

import (
	"slices"

	"fairlead/solve/lp"
)

// room is how far the stages can be drawn apart once the load has risen: far enough for a
// stroke as long as the first, unless what rises from below takes the room. A tractor can
// be sent down no lower than the load; a block that is tied to the end of a rope no lower
// than the rope lets it that has come through the capture since.
//
// Its unknowns are the motions of all resets together, of bodies and through grips. They
// add to what the hauls have moved: each reset keeps the ropes, and so does their sum.
type room struct {
	*closing
	stages []*Pair
	rules  []roomRule
	// first is how far the first stroke raises the load.
	first lp.Num
}

// roomRule is a row: the form over the unknowns, and rate times the rise of the next
// stroke, are at most left, plus perHeight for each metre that the load has risen; or
// just that much.
type roomRule struct {
	form            form
	rate            lp.Num
	left, perHeight lp.Num
	exact           bool
}

// newRoom gathers the rules; nil without stages.
func (c *closing) newRoom(stroke *Stroke) *room {
	if stroke.Stage == nil {
		return nil
	}
	r := &room{closing: c, stages: stroke.stages(), first: *stroke.Stage.Meets}
	r.keepRopes()
	for _, p := range r.stages {
		nearer, known := r.between(p.lower, p.upper)
		if !known {
			continue
		}
		nearer.rate, nearer.left = p.Rate, p.Gap.Sub(p.slip)
		r.rules = append(r.rules, nearer)
	}
	for _, k := range c.keptApart() {
		if nearer, known := r.between(k.lower, k.upper); known && len(nearer.form) > 0 {
			nearer.left = k.gap
			r.rules = append(r.rules, nearer)
		}
	}
	return r
}

// keepRopes adds a rule for each piece of rope, hands off, and for each grip, out of the
// program that asks what can be reset: loads do not move in it.
func (r *room) keepRopes() {
	p := newProgram(r.held, make([]lp.Num, len(r.bodies)), hands{}, nil)
	taut := map[int]bool{}
	for i, piece := range p.pieces {
		if p.column[i] >= 0 {
			taut[p.column[i]] = r.ph.keepsTaut(piece, r.tight)
		}
	}
	for i, column := range p.lp.Columns {
		rule := roomRule{exact: taut[i]}
		for _, e := range column.Entries {
			if !r.bearsLoad(e.Row) {
				rule.form = rule.form.plus(e.Row, e.Value.Neg())
			}
		}
		r.rules = append(r.rules, rule)
	}
}

func (r *room) bearsLoad(unknown int) bool {
	return unknown < len(r.bodies) && len(r.bodies[unknown].Loads) > 0
}

// between gives the rule that a lower body comes no nearer to an upper one; known is
// false if the haul moves one of them in an unknown way.
func (r *room) between(lower, upper int) (rule roomRule, known bool) {
	for _, end := range []term{{lower, lp.Int(1)}, {upper, lp.Int(-1)}} {
		if end.body < 0 {
			continue
		}
		rise := r.rise[end.body]
		if rise == nil {
			return rule, false
		}
		rule.perHeight = rule.perHeight.Sub(end.factor.Mul(*rise).Quo(r.load))
		if !r.bearsLoad(end.body) {
			rule.form = rule.form.plus(end.body, end.factor)
		}
	}
	return rule, true
}

// lasting gives the height up to which there is room for a stroke that raises the load by
// so much, most if there is no limit below that.
func (r *room) lasting(stroke, most lp.Num) lp.Num {
	return r.largest(most, func(k roomRule) (left, factor lp.Num) {
		return k.left.Sub(k.rate.Mul(stroke)), k.perHeight.Neg()
	})
}

// next gives how far the stroke raises the load that begins at a height, 0 if nothing can
// be drawn apart there.
func (r *room) next(height lp.Num) lp.Num {
	return r.largest(r.first, func(k roomRule) (left, factor lp.Num) {
		return k.left.Add(k.perHeight.Mul(height)), k.rate
	})
}

// largest makes one figure as large as the rules allow, at most so large: each says what
// is left for its form and for factor times that figure. 0 if they allow none.
func (r *room) largest(most lp.Num, says func(roomRule) (left, factor lp.Num)) lp.Num {
	p := &lp.Program{}
	p.Add(lp.Int(1), lp.Entry{Row: p.Row(most), Value: lp.Int(1)})
	p.Add(lp.Num{}, lp.Entry{Row: 0, Value: lp.Int(1)})
	for range len(r.bodies) + len(r.held.grips) {
		p.Add(lp.Num{}) // up
		p.Add(lp.Num{}) // down
	}
	for _, k := range r.rules {
		left, factor := says(k)
		row := p.Row(left)
		put := func(column int, value lp.Num) {
			p.Columns[column].Entries = append(p.Columns[column].Entries, lp.Entry{Row: row, Value: value})
		}
		if factor.Sign() != 0 {
			put(0, factor)
		}
		for _, t := range k.form {
			put(2+2*t.body, t.factor)
			put(3+2*t.body, t.factor.Neg())
		}
		if !k.exact {
			p.Add(lp.Num{}, lp.Entry{Row: row, Value: lp.Int(1)})
		}
	}
	solved := lp.Solve(p)
	if solved.Status != lp.Optimal {
		return lp.Num{}
	}
	return solved.Value
}

// LongestStart gives the start positions from which the first stroke is the longest, with
// the parts that move to it and how far the load then rises; nil where nothing can be
// reset, or where the stroke is as long from where the parts are.
func (s *Stroke) LongestStart() *Together {
	if s.room == nil {
		return nil
	}
	p := s.room.newPlacing(s.room.stages)
	for _, pair := range s.Pairs {
		p.row(pair.apart.Sub(pair.slip), p.closing(pair.lower, pair.upper), pair.Rate, true)
	}
	p.keepStrands()
	solved := lp.Solve(p.lp)
	if solved.Status != lp.Optimal || solved.Value.Cmp(*s.Rise) <= 0 {
		return nil
	}
	var moved []lp.Term // no part is moved without need
	for _, column := range p.shift {
		moved = append(moved, lp.Term{Column: column, Value: lp.Int(1)}, lp.Term{Column: column + 1, Value: lp.Int(1)})
	}
	slices.SortFunc(moved, func(a, b lp.Term) int { return a.Column - b.Column })
	solved.Least(moved)
	t := &Together{Rise: solved.Value}
	for _, start := range p.starts(s.room.stages, solved.X) {
		if now, _ := p.place.of(start.Part); now.Cmp(start.At) != 0 {
			t.Starts = append(t.Starts, start)
		}
	}
	return t
}

// stages lists the pairs that can be reset.
func (s *Stroke) stages() []*Pair {
	return slices.DeleteFunc(slices.Clone(s.Pairs), func(p *Pair) bool { return !p.Resettable })
}
