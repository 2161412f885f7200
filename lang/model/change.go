package model

import "slices"

// Reeved gives the rig with another reeving of one of its ropes, all else shared; nil
// instead of a rope takes the rope away.
func (r *Rig) Reeved(old, instead *Rope) *Rig {
	rig := *r
	rig.Ropes = slices.Clone(r.Ropes)
	i := slices.Index(rig.Ropes, old)
	switch {
	case i >= 0 && instead == nil:
		rig.Ropes = slices.Delete(rig.Ropes, i, i+1)
	case i >= 0:
		rig.Ropes[i] = instead
	}
	return &rig
}

// With gives the rope with a node set into a stroke: it runs to the node and on from it
// as the stroke did.
func (r *Rope) With(stroke int, n Node) *Rope {
	rope := *r
	rope.Nodes = slices.Insert(slices.Clone(r.Nodes), stroke+1, n)
	rope.Strokes = slices.Insert(slices.Clone(r.Strokes), stroke, r.Strokes[stroke])
	rope.StrokePlaces = slices.Insert(slices.Clone(r.StrokePlaces), stroke, r.StrokePlaces[stroke])
	return &rope
}

// Without gives the rope without a node and without a stroke beside it.
func (r *Rope) Without(node, stroke int) *Rope {
	rope := *r
	rope.Nodes = slices.Delete(slices.Clone(r.Nodes), node, node+1)
	rope.Strokes = slices.Delete(slices.Clone(r.Strokes), stroke, stroke+1)
	rope.StrokePlaces = slices.Delete(slices.Clone(r.StrokePlaces), stroke, stroke+1)
	return &rope
}

// Instead gives the rope with another node in the place of one.
func (r *Rope) Instead(node int, n Node) *Rope {
	rope := *r
	rope.Nodes = slices.Clone(r.Nodes)
	rope.Nodes[node] = n
	return &rope
}

// Run gives the first and the last node of the run that a node is in; open is false in
// a line closed without slack, which has no ends.
func (r *Rope) Run(node int) (first, last int, open bool) {
	first, last = node, node
	for steps := 0; ; steps++ {
		s := r.Before(first)
		if s < 0 || r.Strokes[s] == Slack {
			break
		}
		if steps > len(r.Strokes) {
			return 0, 0, false
		}
		first = s
	}
	for last < len(r.Strokes) && r.Strokes[last] != Slack {
		last = r.After(last)
	}
	return first, last, true
}

// EndAt says at which end of a node's run a part is: NoSide if at none or at both.
func (r *Rope) EndAt(node int, part *Part) Side {
	first, last, open := r.Run(node)
	if !open || part == nil {
		return NoSide
	}
	switch atFirst, atLast := r.Nodes[first].Part == part, r.Nodes[last].Part == part; {
	case atFirst == atLast:
		return NoSide
	case atFirst:
		return FirstSide
	}
	return LastSide
}
