package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// resetting asks which pairs can be drawn apart with every load at rest, captures
// holding and hauled ends free. The ropes that were taut in the haul stay so: a
// reset that only leaves slack rope wins nothing, as the next pull takes it in first.
//
// It asks it of the forces. Two parts that are pushed apart cannot move if tensions
// exist that hold them; ropes kept taut may then push as well as pull, and loads
// bear any force. Where no such tensions exist, the proof of it is the motion.
type resetting struct {
	*system
	lp *lp.Program
}

// resets sets which of the pairs, sorted, can be reset. Tight are pieces of rope that
// stay taut though they carry nothing.
func (s *system) resets(ph *Phase, tight map[*piece]bool, pairs []*Pair) {
	r := &resetting{system: s}
	left := slices.DeleteFunc(slices.Clone(pairs), r.bothAtRest)
	if len(left) == 0 {
		return
	}
	r.build(ph, tight)
	for len(left) > 0 {
		count := len(left)
		left = slices.DeleteFunc(left, r.opened(r.apart(left)))
		if len(left) == count {
			break
		}
	}
	if len(left) < 2 {
		return
	}
	// No motion opens what is left in sum, though one may open a single pair. Once a
	// pair ends the raise, nobody comes to ask for those that would meet later.
	for _, p := range pairs {
		if p.Resettable {
			continue
		}
		if r.bothAtRest(p) || !r.opened(r.apart([]*Pair{p}))(p) {
			return
		}
	}
}

// bothAtRest says whether neither part of a pair moves in a reset.
func (r *resetting) bothAtRest(p *Pair) bool { return r.atRest(p.lower) && r.atRest(p.upper) }

func (r *resetting) atRest(body int) bool { return body < 0 || len(r.bodies[body].Loads) > 0 }

// build makes the program of the rig with hands off: a supported row for each load,
// and for each piece that stays taut a second column that pushes.
func (r *resetting) build(ph *Phase, tight map[*piece]bool) {
	p := newProgram(r.held, make([]lp.Num, len(r.bodies)), hands{}, nil)
	r.lp = p.lp
	for i, piece := range p.pieces {
		if p.column[i] >= 0 && ph.keepsTaut(piece, tight) {
			r.lp.Add(lp.Num{}, negated(r.lp.Columns[p.column[i]].Entries)...)
		}
	}
	for i := range r.bodies {
		if r.atRest(i) {
			r.lp.Add(lp.Num{}, lp.Entry{Row: i, Value: lp.Int(1)})
			r.lp.Add(lp.Num{}, lp.Entry{Row: i, Value: lp.Int(-1)})
		}
	}
}

// keepsTaut says whether a piece of the rig with hands off is taut in the haul.
func (p *Phase) keepsTaut(piece *piece, tight map[*piece]bool) bool {
	for _, k := range piece.links {
		for _, stroke := range k.strokes {
			at := p.program.strands[piece.rope][stroke].piece
			if at >= 0 && (p.tension[at].Sign() > 0 || tight[p.program.pieces[at]]) {
				return true
			}
		}
	}
	return false
}

func negated(entries []lp.Entry) []lp.Entry {
	out := make([]lp.Entry, len(entries))
	for i, e := range entries {
		out[i] = lp.Entry{Row: e.Row, Value: e.Value.Neg()}
	}
	return out
}

// apart gives a motion that opens the gaps of some pairs in sum; nil if there is
// none.
func (r *resetting) apart(pairs []*Pair) []lp.Num {
	push := make([]lp.Num, len(r.lp.RHS))
	for _, p := range pairs {
		if p.lower >= 0 {
			push[p.lower] = push[p.lower].Add(lp.Int(1))
		}
		if p.upper >= 0 {
			push[p.upper] = push[p.upper].Sub(lp.Int(1))
		}
	}
	solved := lp.Solve(&lp.Program{RHS: push, Columns: r.lp.Columns})
	if solved.Status != lp.Infeasible {
		return nil
	}
	return solved.Y
}

// opened says of a pair whether a motion opens it, and notes it there.
func (r *resetting) opened(motion []lp.Num) func(*Pair) bool {
	of := func(body int) lp.Num {
		if body < 0 || motion == nil {
			return lp.Num{}
		}
		return motion[body]
	}
	return func(p *Pair) bool {
		if of(p.upper).Cmp(of(p.lower)) <= 0 {
			return false
		}
		p.Resettable = true
		return true
	}
}

// setBack is how far a load sinks, hands off, until what holds it bites: each grip
// lets its set-back of rope run back first. It is the lowest place that the ropes
// allow with that much slip, found as the multipliers of the least work that the
// slips cost.
func (s *system) setBack(load *Body) (sinks lp.Num, by []*model.Part) {
	weight, _ := exactly(s.bodyWeights(s.held.layout, false))
	slips := func(g *gripGroup) bool { return g.setBack().Sign() > 0 }
	if weight[load.Index].Sign() == 0 || !slices.ContainsFunc(s.held.grips, slips) {
		return lp.Num{}, nil
	}
	p := newProgram(s.held, weight, hands{}, nil)
	for i, g := range p.grips {
		p.lp.Columns[p.grip[i]].Cost = g.setBack().Neg()
	}
	solved := lp.Solve(p.lp)
	if solved.Status != lp.Optimal {
		return lp.Num{}, nil
	}
	lowest, _, limited, _ := solved.MultiplierRange(load.Index)
	if !limited {
		lowest = solved.Y[load.Index]
	}
	if lowest.Sign() >= 0 {
		return lp.Num{}, nil
	}
	return lowest.Neg(), p.partsOf(func(i int) bool {
		return slips(p.grips[i]) && p.grip[i] >= 0 && solved.X[p.grip[i]].Sign() > 0
	})
}

// setBack is the rope that runs back before a group of grips bites: the least of
// its grips, as each of them holds.
func (g *gripGroup) setBack() lp.Num {
	var least lp.Num
	for i, node := range g.nodes {
		var own lp.Num
		if back := g.rope.Nodes[node].Part.Values.SetBack; back != nil {
			own = lp.FromRat(back.Middle())
		}
		if i == 0 || own.Cmp(least) < 0 {
			least = own
		}
	}
	return least
}
