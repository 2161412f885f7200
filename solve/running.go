package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// running says how much rope passes each node of a solved phase: positive from the
// line's first node toward its last, 0 where it does not run or is slack.
type running map[*model.Rope][]lp.Num

// Runs says how much rope passes a node under tension for one unit of rope hauled, or
// given out when lowering: positive from the line's first node toward its last, 0 where
// it does not run or is slack.
func (p *Phase) Runs(r *model.Rope, node int) lp.Num {
	if passes := p.run[r]; node < len(passes) {
		return passes[node]
	}
	return lp.Num{}
}

// RunsPerMetre says how much rope runs over a node while the reference load moves by one
// metre, either of them either way; nil if it does not move.
func (r *Result) RunsPerMetre(ph *Phase, rope *model.Rope, node int) *lp.Num {
	for _, m := range ph.Motion {
		if m.Rise.Sign() != 0 && slices.Contains(m.Body.Parts, r.Reference) {
			per := ph.Runs(rope, node).Quo(m.Rise).Abs()
			return &per
		}
	}
	return nil
}

// way gives the direction in which rope passes a node: 1, -1, or 0 where it does not.
func (run running) way(r *model.Rope, node int) int { return run[r][node].Sign() }

// newRunning reads it off the exact motion. Rope that passes the start of a piece
// (none at a tie, the slip of a grip) less what a strand takes up as it grows
// passes the next node.
func newRunning(p *program, solved *lp.Solution, tension []lp.Num) running {
	run := running{}
	for _, r := range p.rig.Ropes {
		run[r] = make([]lp.Num, len(r.Nodes))
	}
	for i, piece := range p.pieces {
		if tension[i].Sign() <= 0 {
			continue
		}
		flow := p.slip(piece.start, solved)
		nodes := run[piece.rope]
		p.note(nodes, piece.start, flow)
		for j, k := range piece.links {
			for _, t := range k.form {
				flow = flow.Sub(t.factor.Mul(solved.Y[t.body]))
			}
			if j == 0 && piece.start.cut == hauled && piece.start.hauler == p.hands.hauler {
				flow = flow.Sub(p.hands.taken())
			}
			if j < len(piece.links)-1 {
				nodes[k.to] = flow
			}
		}
		p.note(nodes, piece.end, p.slip(piece.end, solved))
	}
	return run
}

// taken is how much rope people take in: one unit, given out when lowering.
func (h hands) taken() lp.Num {
	if h.lowering {
		return lp.Int(-1)
	}
	return lp.Int(1)
}

// slip is the rope that passes the grip at a boundary; none passes any other.
func (p *program) slip(b boundary, solved *lp.Solution) lp.Num {
	if b.cut != grip {
		return lp.Num{}
	}
	return solved.Y[p.gripRow(b.grip)].Neg()
}

// note writes the flow at all nodes of a boundary's grip.
func (p *program) note(nodes []lp.Num, b boundary, flow lp.Num) {
	if b.cut != grip {
		return
	}
	for _, node := range p.grips[b.grip].nodes {
		nodes[node] = flow
	}
}
