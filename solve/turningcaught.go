package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// losses gives the states in which slack rope tied to the point has caught the load once
// something is lost.
func (c *compass) losses(r *Result) []state {
	var list []state
	for _, loss := range r.Losses() {
		if loss.Answer != Caught || !c.catches(loss.Catching) {
			continue
		}
		if up := r.caughtAt(loss.Lost, c.point); up.Sign() != 0 {
			list = append(list, state{Pulled: Pulled{After: loss.Lost}, groups: []group{{leans: []lean{{up.Float(), 0, -1, false}}}}})
		}
	}
	return list
}

// catches says whether one of the strands that caught the load is tied to the point.
func (c *compass) catches(catching []Strand) bool {
	for _, s := range catching {
		for _, node := range []int{s.Index, s.Rope.After(s.Index)} {
			if p := s.Rope.Nodes[node].Part; p != nil && p.Root() == c.point {
				return true
			}
		}
	}
	return false
}

// caughtAt gives the force along the haul line, up positive, with which slack rope that has
// drawn tight pulls on a point once something is lost, in one balance of forces. Zero if it is not known:
// the point is lost itself, or other rope pulls on it the other way or at an angle.
func (r *Result) caughtAt(lost Lost, point *model.Part) lp.Num {
	s := r.system
	network := newNetwork(newLayout(s.rig, lost, s.weights), true)
	weight, _ := exactly(s.bodyWeights(network.layout, false))
	program := newStayProgram(network, weight, pulledTight)
	solved := program.solve()
	if solved.Status != lp.Optimal || network.of(point) != ground {
		return lp.Num{}
	}
	at := func(r *model.Rope, node int) bool {
		p := r.Nodes[node].Part
		return p != nil && p.Root() == point
	}
	var up lp.Num
	for _, d := range program.distances {
		rope, k := program.pieces[d.piece].rope, d.link
		force := solved.X[d.with].Sub(solved.X[d.against])
		if at(rope, k.from) {
			up = up.Add(force)
		}
		if at(rope, k.to) {
			up = up.Sub(force)
		}
	}
	for i, p := range program.pieces {
		if program.column[i] < 0 || solved.X[program.column[i]].Sign() <= 0 {
			continue
		}
		for _, k := range p.links {
			for _, node := range []int{k.from, k.to} {
				if k.fresh || !at(p.rope, node) {
					continue
				}
				way := lp.Int(int64(k.stroke))
				if node == k.to {
					way = way.Neg()
				}
				if p.rope.Nodes[node].Angle != nil || way.Sign() != up.Sign() {
					return lp.Num{}
				}
				up = up.Add(way.Mul(solved.X[program.column[i]]))
			}
		}
	}
	return up
}
