package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// contact is the force of one rope on a part at one node.
type contact struct {
	// along is the force along the haul line, up positive.
	along linear
	// size is the size of the whole force where it does not point along the line.
	size linear
	// oblique says that it does not.
	oblique bool
}

// contact gives the force of a rope on what it touches at a node: the tensions of
// the strands beside it, each toward its far end. With most, strands inside a
// group of grips count with the larger tension that they can carry.
func (t *tensions) contact(r *model.Rope, node int, most bool) contact {
	var c contact
	in, out := r.Before(node), node
	n := r.Nodes[node]
	factor := lp.Int(1)
	bends := n.Role == model.Bend || n.Role == model.Capture
	switch {
	case bends && n.Angle != nil:
		return t.angled(r, node, most)
	case bends && n.Sideways && r.RunsOn(node):
		return c // straight on without an angle presses nothing
	case n.Angle != nil && n.Role.Ends():
		factor = cosine(n.Angle.Middle())
		c.oblique = t.of(n.Part) == ground && n.Angle.Middle().Sign() != 0
	}
	if in >= 0 {
		column, s := t.strandColumn(r, in, most), int64(r.Strokes[in])
		c.along.add(column, lp.Int(-s).Mul(factor))
		c.size.add(column, lp.Int(s*s))
	}
	if out < len(r.Strokes) {
		column, s := t.strandColumn(r, out, most), int64(r.Strokes[out])
		c.along.add(column, lp.Int(s).Mul(factor))
		c.size.add(column, lp.Int(s*s))
	}
	return c
}

// angled gives the force on a bend with an included angle: 2·T·cos(θ/2) along
// the bisector, which is the haul line for a part that moves. With a capture the
// two tensions differ; cos(θ/2)·(T₁+T₂) is then their part along the bisector.
func (t *tensions) angled(r *model.Rope, node int, most bool) contact {
	c := contact{oblique: t.of(r.Nodes[node].Part) == ground && r.Nodes[node].Angle.Middle().Sign() != 0}
	half := included(r, node)
	sign := lp.Int(1)
	in, out := r.Before(node), node
	if in >= 0 && r.Strokes[in] == model.Up && r.Turns(node) {
		sign = lp.Int(-1)
	}
	for _, stroke := range []int{in, out} {
		if stroke < 0 || stroke >= len(r.Strokes) {
			continue
		}
		column := t.strandColumn(r, stroke, most)
		c.along.add(column, half.Mul(sign))
		c.size.add(column, half)
	}
	return c
}
