package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Piece is rope between two cuts, with one tension all along: what a count walks.
type Piece struct {
	Rope *model.Rope
	// Strokes are the indices of its strokes in the order of the line.
	Strokes []int
	// Touches are the nodes of the piece from its start to its end.
	Touches []Touch
	Tension lp.Num
	// Pulled counts the ends that the phase's hauler pulls.
	Pulled int
	// StartGrip and EndGrip are indices into Grips, -1 where no grip ends it.
	StartGrip, EndGrip int
}

// Touch is one node of a piece.
type Touch struct {
	Node int
	Part *model.Part
	// Body is the moving body of the part; nil on the ground.
	Body *Body
	// Factor is the upward force on the body for each unit of the piece's tension:
	// 2 for a moving bend that the rope pulls up from both sides.
	Factor lp.Num
}

// Grip is a one-way grip, or several that count as one.
type Grip struct {
	Rope  *model.Rope
	Nodes []int
	// Before and After are indices into Pieces, -1 where the rope ends.
	Before, After int
	Body          *Body
	// Force is what it holds in the shown solution: 0 while it slides. Hold is the
	// same with its range.
	Force lp.Num
	Hold  Force
}

// Pieces gives the pieces of the phase; empty if it has no tensions.
func (p *Phase) Pieces() []Piece {
	if !p.Solved() {
		return nil
	}
	list := make([]Piece, len(p.program.pieces))
	for i, piece := range p.program.pieces {
		list[i] = Piece{Rope: piece.rope, Tension: p.tension[i], StartGrip: -1, EndGrip: -1,
			Pulled: piece.pulledBy(p.Hauler), Touches: p.touches(piece)}
		for _, k := range piece.links {
			list[i].Strokes = append(list[i].Strokes, k.strokes...)
		}
		if piece.start.cut == grip {
			list[i].StartGrip = piece.start.grip
		}
		if piece.end.cut == grip {
			list[i].EndGrip = piece.end.grip
		}
	}
	return list
}

// touches gives the nodes of a piece with the force of each unit of its tension.
func (p *Phase) touches(piece *piece) []Touch {
	var list []Touch
	for i, k := range piece.links {
		if i == 0 {
			list = append(list, p.touch(piece.rope, k.from))
		}
		list = append(list, p.touch(piece.rope, k.to))
		for end, node := range []int{k.from, k.to} {
			t := &list[len(list)-2+end]
			if t.Body == nil {
				continue
			}
			sign := lp.Int(int64(k.stroke))
			if end == 0 {
				sign = sign.Neg()
			}
			for _, term := range p.program.nodeTerm(nil, piece.rope, node, sign) {
				t.Factor = t.Factor.Sub(term.factor)
			}
		}
	}
	return list
}

func (p *Phase) touch(r *model.Rope, node int) Touch {
	t := Touch{Node: node, Part: r.Nodes[node].Part}
	if body := p.program.of(t.Part); body >= 0 {
		t.Body = p.program.bodies[body]
	}
	return t
}

// Grips gives the one-way grips of the phase; empty if it has no tensions.
func (p *Phase) Grips() []Grip {
	if !p.Solved() {
		return nil
	}
	list := make([]Grip, len(p.program.grips))
	for i, g := range p.program.grips {
		list[i] = Grip{Rope: g.rope, Nodes: g.nodes, Before: g.before, After: g.after,
			Body: p.touch(g.rope, g.nodes[0]).Body, Hold: p.holds[i]}
		if p.holds[i].Known() {
			list[i].Force = *p.holds[i].Value
		}
	}
	return list
}

// GripsWith gives the hitches and clamps that count as one grip with a part, itself among
// them: those that follow one another on a rope, on one body, and hold the same way. In
// the order of the rope.
func (r *Result) GripsWith(part *model.Part) []*model.Part {
	list := []*model.Part{part}
	if r.system == nil {
		return list
	}
	for _, g := range r.system.pulled.grips {
		if parts := g.parts(); len(parts) > len(list) && slices.Contains(parts, part) {
			list = parts
		}
	}
	return list
}
