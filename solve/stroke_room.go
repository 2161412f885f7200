package solve

import (
	"slices"

	"fairlead/solve/lp"
)

// room is how far the stages can be drawn apart once the load has risen: as far as they
// were at the start, unless what rises from below takes the room. A tractor can be
// sent down no lower than the load, a block no lower than the one that hauls it.
type room struct {
	*placing
	stages []*Pair
	rules  []roomRule
	// first is how far the first stroke raises the load.
	first lp.Num
}

// roomRule is what the shifts of the parts in the stages must keep: the gaps that they
// close, and rate times the rise of the next stroke, are at most left, plus perHeight for
// each metre that the load has risen.
type roomRule struct {
	closes          form
	rate            lp.Num
	left, perHeight lp.Num
}

// newRoom gathers the rules; nil without stages.
func (c *closing) newRoom(stroke *Stroke) *room {
	if stroke.Stage == nil {
		return nil
	}
	stages := stroke.stages()
	r := &room{placing: c.newPlacing(stages), stages: stages, first: *stroke.Stage.Meets}
	for _, p := range stages {
		perHeight, known := c.drift(r.placing, p.lower, p.upper)
		if !known {
			continue
		}
		f := r.placing.closing(p.lower, p.upper)
		r.rules = append(r.rules,
			roomRule{f, p.Rate, p.Gap.Sub(p.slip), perHeight},
			roomRule{f.times(lp.Int(-1)), lp.Num{}, lp.Num{}, perHeight.Neg()}) // no farther than at the start
	}
	for _, k := range c.keptApart() {
		f := r.placing.closing(k.lower, k.upper)
		if perHeight, known := c.drift(r.placing, k.lower, k.upper); known && len(f) > 0 {
			r.rules = append(r.rules, roomRule{f, lp.Num{}, k.gap, perHeight})
		}
	}
	return r
}

// LongestStart gives the start positions from which the first stroke is the longest, with
// the parts that move to it and how far the load then rises; nil where nothing can be
// reset, or where the stroke is as long from where the parts are.
func (s *Stroke) LongestStart() *Together {
	if s.room == nil {
		return nil
	}
	p := s.room.blank()
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
	for _, start := range p.starts(s.stages(), solved.X) {
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

// drift gives how much the way between two bodies grows for each metre that the load
// rises, as far as they are in no stage.
func (c *closing) drift(p *placing, lower, upper int) (perHeight lp.Num, known bool) {
	for sign, body := range map[int64]int{1: upper, -1: lower} {
		if _, moves := p.shift[body]; moves || body < 0 {
			continue
		}
		if c.rise[body] == nil {
			return perHeight, false
		}
		perHeight = perHeight.Add(c.rise[body].Quo(c.load).Mul(lp.Int(sign)))
	}
	return perHeight, true
}

// lasting gives the height up to which there is room for a stroke that raises the load by
// so much, most if there is no limit below that.
func (r *room) lasting(stroke, most lp.Num) lp.Num {
	p := r.blank()
	p.row(most, nil, lp.Int(1), true)
	for _, k := range r.rules {
		p.row(k.left.Sub(k.rate.Mul(stroke)), k.closes, k.perHeight.Neg(), true)
	}
	solved := lp.Solve(p.lp)
	if solved.Status != lp.Optimal {
		return lp.Num{}
	}
	return solved.Value
}

// next gives how far the stroke raises the load that begins at a height, 0 if nothing can
// be drawn apart there.
func (r *room) next(height lp.Num) lp.Num {
	p := r.blank()
	p.row(r.first, nil, lp.Int(1), true)
	for _, k := range r.rules {
		p.row(k.left.Add(k.perHeight.Mul(height)), k.closes, k.rate, true)
	}
	solved := lp.Solve(p.lp)
	if solved.Status != lp.Optimal {
		return lp.Num{}
	}
	return solved.Value
}

// blank gives a placing of the same parts with no rows yet; rise is what is made large.
func (r *room) blank() *placing {
	return r.newPlacing(r.stages)
}

// times gives a multiple of a form.
func (f form) times(factor lp.Num) form { return form(nil).joinTimes(f, factor) }
