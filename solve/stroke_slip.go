package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// biting is what happens at the start of each stroke, until the grips that pull have
// taken hold: each slips its set-back along the rope.
type biting struct {
	// moves is how far each body moves besides what the rope hauled moves it; nil if
	// nothing slips.
	moves []lp.Num
	// grips are those that slip, in file order.
	grips []*model.Part
}

// biting gives what the pulling grips of a haul slip: those on moving bodies that hold
// in the haul and let go hands off. A grip that never lets go takes hold once for all.
//
// The motion is that of the haul with so much slip. Far enough into the haul it grows as
// without slip, so that two lengths of rope tell the difference.
func (s *system) biting(ph, hold *Phase) biting {
	slips := s.slips(ph, hold)
	if slips == nil {
		return biting{}
	}
	once, far := s.hauledWith(ph, slips, 1), s.hauledWith(ph, slips, 2)
	if once == nil || far == nil {
		return biting{}
	}
	b := biting{moves: make([]lp.Num, len(s.bodies)), grips: ph.program.partsOf(func(i int) bool { return slips[i].Sign() > 0 })}
	for i := range b.moves {
		b.moves[i] = once[i].Add(once[i]).Sub(far[i])
	}
	return b
}

// slips gives the set-back of each group of grips that pulls; nil if none has any.
func (s *system) slips(ph, hold *Phase) []lp.Num {
	type at struct {
		rope *model.Rope
		node int
	}
	held := map[at]bool{}
	if hold.program != nil && hold.holds != nil {
		for i, g := range hold.program.grips {
			held[at{g.rope, g.nodes[0]}] = holdsShown(hold.holds[i])
		}
	}
	var slips []lp.Num
	for i, g := range ph.program.grips {
		first := g.nodes[0]
		pulls := s.pulled.of(g.rope.Nodes[first].Part) >= 0 && holdsShown(ph.holds[i])
		if back := g.setBack(); pulls && !held[at{g.rope, first}] && back.Sign() > 0 {
			if slips == nil {
				slips = make([]lp.Num, len(ph.program.grips))
			}
			slips[i] = back
		}
	}
	return slips
}

func holdsShown(f Force) bool { return f.Known() && f.Value.Sign() > 0 }

// partsOf lists the parts of the groups of grips for which yes says so, in file order.
func (n *network) partsOf(yes func(group int) bool) []*model.Part {
	var list []*model.Part
	for i, g := range n.grips {
		if !yes(i) {
			continue
		}
		for _, node := range g.nodes {
			if part := g.rope.Nodes[node].Part; !slices.Contains(list, part) {
				list = append(list, part)
			}
		}
	}
	slices.SortFunc(list, func(a, b *model.Part) int { return a.Index - b.Index })
	return list
}

// hauledFar is a length of rope, in metres, beside which no set-back matters.
const hauledFar = 1000

// hauledWith gives the motion of the bodies for a long way hauled; nil if there is none.
func (s *system) hauledWith(ph *Phase, slips []lp.Num, times int64) []lp.Num {
	p := newProgram(ph.program.network, ph.program.lp.RHS[:len(s.bodies)], ph.program.hands, nil)
	for i := range p.lp.Columns {
		p.lp.Columns[i].Cost = p.lp.Columns[i].Cost.Mul(lp.Int(times * hauledFar))
	}
	for i, back := range slips {
		if column := p.grip[i]; column >= 0 {
			p.lp.Columns[column].Cost = back.Neg()
		}
	}
	solved := lp.Solve(p.lp)
	if solved.Status != lp.Optimal {
		return nil
	}
	return solved.Y[:len(s.bodies)]
}

// rope is what the haulers take in until the grips hold, for one metre hauled raising
// the load by so much.
func (b biting) rope(load *Motion) lp.Num {
	if b.moves == nil {
		return lp.Num{}
	}
	return lp.Max(lp.Num{}, b.moves[load.Body.Index].Neg().Quo(load.Rise))
}

// closes is how much of the gap between two bodies the slip takes, the load not having
// risen yet.
func (b biting) closes(p *Pair, load *Motion) lp.Num {
	if b.moves == nil {
		return lp.Num{}
	}
	of := func(body int) lp.Num {
		if body < 0 {
			return lp.Num{}
		}
		return b.moves[body]
	}
	sum := of(p.lower).Sub(of(p.upper)).Sub(p.Rate.Mul(of(load.Body.Index)))
	return lp.Max(lp.Num{}, sum)
}
