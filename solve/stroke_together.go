package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Together are start positions at which all stages run out at once. Fixed points
// and loads stay where they are, as do bodies that are in no stage; ropes are taken
// to be rigged anew to suit. The rise is as large as the strands leave room for, but
// no larger than that of the stage that now runs out last.
type Together struct {
	// Rise is how far the load rises until all meet, in metres.
	Rise lp.Num
	// Starts has the parts of the stages that move, in the order of Stroke.Pairs.
	Starts []Start
}

// Start is where a part would start, in metres along the haul line.
type Start struct {
	Part *model.Part
	At   lp.Num
}

// placing is the program of start positions: for each body that may be placed anew
// how far it is moved, up and down, and the common rise.
type placing struct {
	*system
	lp *lp.Program
	// shift is the column of each movable body's way up; that of its way down follows.
	shift map[int]int
	rise  int
}

// together finds the start positions; nil if there are none.
func (s *system) together(stroke *Stroke) *Together {
	stages := stroke.stages()
	if len(stages) < 2 {
		return nil
	}
	last := *stages[len(stages)-1].Meets
	p := s.newPlacing(stages)
	p.row(last, nil, lp.Int(1), true)
	// A stage's gap is what closes over the common rise, that of any other pair at
	// least that.
	for _, pair := range stroke.Pairs {
		p.row(pair.apart.Sub(pair.slip), p.closing(pair.lower, pair.upper), pair.Rate, !pair.Resettable)
	}
	p.keepStrands()
	solved := lp.Solve(p.lp)
	if solved.Status != lp.Optimal || solved.Value.Sign() <= 0 {
		return nil
	}
	return &Together{Rise: solved.Value, Starts: p.starts(stages, solved.X)}
}

func (s *system) newPlacing(stages []*Pair) *placing {
	p := &placing{system: s, lp: &lp.Program{}, shift: map[int]int{}}
	p.rise = p.lp.Add(lp.Int(1))
	for _, pair := range stages {
		for _, body := range []int{pair.lower, pair.upper} {
			if _, known := p.shift[body]; !known && body >= 0 && len(s.bodies[body].Loads) == 0 {
				p.shift[body] = p.lp.Add(lp.Num{})
				p.lp.Add(lp.Num{})
			}
		}
	}
	return p
}

// row adds the row f(shifts) + factor·rise = rhs, or at most rhs with room.
func (p *placing) row(rhs lp.Num, f form, factor lp.Num, room bool) {
	row := p.lp.Row(rhs)
	put := func(column int, value lp.Num) {
		if value.Sign() != 0 {
			c := &p.lp.Columns[column]
			c.Entries = append(c.Entries, lp.Entry{Row: row, Value: value})
		}
	}
	put(p.rise, factor)
	for _, t := range f {
		put(p.shift[t.body], t.factor)
		put(p.shift[t.body]+1, t.factor.Neg())
	}
	if room {
		p.lp.Add(lp.Num{}, lp.Entry{Row: row, Value: lp.Int(1)})
	}
}

// closing is how much a gap is made smaller by the shifts.
func (p *placing) closing(lower, upper int) form {
	var f form
	if _, moves := p.shift[lower]; moves {
		f = f.plus(lower, lp.Int(1))
	}
	if _, moves := p.shift[upper]; moves {
		f = f.plus(upper, lp.Int(-1))
	}
	return f
}

// keepStrands asks that every strand still leads the way that it is drawn: the
// parts at its ends do not overlap more than they do now.
func (p *placing) keepStrands() {
	for _, k := range p.keptApart() {
		if f := p.closing(k.lower, k.upper); len(f) > 0 {
			p.row(k.gap, f, lp.Num{}, true)
		}
	}
}

// keptApart is the way between two bodies that their strands leave, 0 where they overlap.
type keptApart struct {
	lower, upper int
	gap          lp.Num
}

// keptApart lists the bodies that strands join with the least way between each two.
func (s *system) keptApart() []keptApart {
	at := map[[2]int]int{}
	var list []keptApart
	for _, r := range s.rig.Ropes {
		for i, stroke := range r.Strokes {
			length, known := s.place.strand(r, i)
			if r.Broken || stroke == model.Slack || !known {
				continue
			}
			lower, upper := r.Nodes[i].Part, r.Nodes[r.After(i)].Part
			if stroke == model.Down {
				lower, upper = upper, lower
			}
			key := [2]int{s.pulled.of(lower), s.pulled.of(upper)}
			gap := lp.Max(lp.Num{}, length.Sub(lengthOf(lower)).Sub(lengthOf(upper)))
			if old, seen := at[key]; seen {
				if gap.Cmp(list[old].gap) < 0 {
					list[old].gap = gap
				}
				continue
			}
			at[key] = len(list)
			list = append(list, keptApart{key[0], key[1], gap})
		}
	}
	return list
}

// starts gives the positions of the movable parts of the stages.
func (p *placing) starts(stages []*Pair, x []lp.Num) []Start {
	var list []Start
	done := map[int]bool{}
	for _, pair := range stages {
		for i, body := range []int{pair.lower, pair.upper} {
			column, moves := p.shift[body]
			if !moves || done[body] {
				continue
			}
			done[body] = true
			part := [2]*model.Part{pair.Lower, pair.Upper}[i]
			at, _ := p.place.of(part)
			list = append(list, Start{Part: part, At: at.Add(x[column]).Sub(x[column+1])})
		}
	}
	return list
}
