package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// nodeTerm adds what a node contributes to a strand that ends at it with the
// given sign. A part that moves across the line shortens the strands on both
// its sides, whatever their direction, when it gives way to them.
func (l *layout) nodeTerm(f form, r *model.Rope, node int, sign lp.Num) form {
	n := r.Nodes[node]
	body := l.of(n.Part)
	if n.Sideways && r.RunsOn(node) {
		return f.plus(body, l.across(n.Part).Mul(lever(r, node)).Neg())
	}
	return f.plus(body, sign.Mul(lever(r, node)))
}

// across says which way the line draws a part that moves across it: up, unless
// another rope on its body draws it up, as in "reeve tag: middle / team"; then the
// line draws it down, so that the two are against each other either way of writing.
func (l *layout) across(part *model.Part) lp.Num {
	for _, r := range l.rig.Ropes {
		for i, n := range r.Nodes {
			if l.of(n.Part) != l.of(part) || n.Sideways && r.RunsOn(i) {
				continue
			}
			in, out := r.Before(i), i
			if out < len(r.Strokes) && r.Strokes[out] == model.Up || in >= 0 && r.Strokes[in] == model.Down {
				return lp.Int(-1)
			}
		}
	}
	return lp.Int(1)
}

// lever gives the factor with which a node's motion enters the strands beside
// it: cos(θ/2) at a bend with included angle θ, cos θ at an end that stands at an
// angle θ to the haul line, else 1.
func lever(r *model.Rope, node int) lp.Num {
	n := r.Nodes[node]
	switch {
	case n.Angle == nil && !(n.Sideways && r.RunsOn(node)):
		return lp.Int(1)
	case n.Role.Ends():
		return cosine(n.Angle.Middle())
	case n.Angle == nil: // sideways on a straight line
		return lp.Num{}
	case n.Role == model.Bend || n.Role == model.Capture:
		if r.Turns(node) || n.Sideways {
			return halfCosine(n.Angle.Middle())
		}
	}
	return lp.Int(1)
}

// included gives the cosine of half the included angle at a bend as the rope
// sees it: 1 where it turns back, 0 where it runs straight on, unless an angle
// is written.
func included(r *model.Rope, node int) lp.Num {
	switch {
	case r.Nodes[node].Angle != nil:
		return halfCosine(r.Nodes[node].Angle.Middle())
	case r.Turns(node):
		return lp.Int(1)
	}
	return lp.Num{}
}
