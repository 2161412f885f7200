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
	for _, side := range []struct{ stroke, sign int }{{in, -1}, {out, +1}} {
		if side.stroke < 0 || side.stroke >= len(r.Strokes) {
			continue
		}
		column, k := t.strandTerm(r, side.stroke, most)
		up := lp.Int(int64(side.sign * int(r.Strokes[side.stroke])))
		c.along.add(column, k.Mul(up).Mul(factor))
		c.size.add(column, k.Mul(up.Abs()))
	}
	return c
}

// angled gives the force on a bend with an included angle θ, √(T₁²+T₂²+2·T₁·T₂·cos θ),
// which is 2·T·cos(θ/2) while both tensions are the same. It points along the
// bisector, which is the haul line for a part that moves; there the forces enter
// the balance with cos(θ/2).
func (t *tensions) angled(r *model.Rope, node int, most bool) contact {
	angle := r.Nodes[node].Angle.Middle()
	c := contact{oblique: t.of(r.Nodes[node].Part) == ground && angle.Sign() != 0}
	half, sign := halfCosine(angle), lp.Int(1)
	in, out := r.Before(node), node
	if in >= 0 && r.Strokes[in] == model.Up && r.Turns(node) {
		sign = lp.Int(-1)
	}
	if r.Nodes[node].Sideways && r.RunsOn(node) {
		sign = t.across(r.Nodes[node].Part)
	}
	if in < 0 || out >= len(r.Strokes) {
		return c
	}
	before, after := t.tension(r, in, most), t.tension(r, out, most)
	c.along.plus(before, half.Mul(sign))
	c.along.plus(after, half.Mul(sign))
	first, second := slopes(before.at(t.shown), after.at(t.shown), cosine(angle), half)
	c.size.plus(before, first)
	c.size.plus(after, second)
	return c
}

// slopes gives how the resultant of two tensions grows with each of them. The
// resultant is their sum with these factors (it is homogeneous of degree one).
func slopes(first, second, cos, half lp.Num) (byFirst, bySecond lp.Num) {
	if first.Cmp(second) == 0 {
		return half, half
	}
	square := first.Mul(first).Add(second.Mul(second)).Add(lp.Int(2).Mul(first).Mul(second).Mul(cos))
	size := lp.Sqrt(square)
	if size.Sign() == 0 {
		return half, half
	}
	return first.Add(second.Mul(cos)).Quo(size), second.Add(first.Mul(cos)).Quo(size)
}

// BendForce gives the force with which a rope presses on what it bends round at a node, in
// fractions of the reference weight and with friction where that is known; nil if the
// phase has no forces, or if nothing bends there.
func (p *Phase) BendForce(r *model.Rope, node int) *lp.Num {
	if !p.Solved() || p.usual == nil || r.Broken || !isBend(r.Nodes[node]) {
		return nil
	}
	c := p.usual.contact(r, node, true)
	if c.oblique {
		return p.marked(p.usual.force(c.size)).Value
	}
	return p.marked(p.usual.size(c.along)).Value
}
