package lint

import (
	"cmp"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/solve"
)

// Bend is a node that a rope runs over, with the stroke beside it that goes with it when
// it is taken out.
type Bend struct {
	Rope         *model.Rope
	Node, Stroke int
}

// TryWithout solves the rig as it would be without some bends. In the rig's own text they
// are taken out as an edit would; in a copy, whose text is another rig's, only the
// ropes are made without them, and no fix can come of it.
func (p *Pass) TryWithout(bends []Bend) (trial *Trial, ok bool) {
	if slices.ContainsFunc(bends, func(b Bend) bool { return b.Rope.Place.IsCopy() }) {
		return p.tryRopes(bends)
	}
	var edits []diag.Edit
	for _, b := range bends {
		edits = append(edits, TakeOut(b.Rope, b.Node, b.Stroke)...)
	}
	return p.Try(edits...)
}

// tryRopes solves the rig with ropes that do not run over some bends.
func (p *Pass) tryRopes(bends []Bend) (trial *Trial, ok bool) {
	if p.inTrial || !p.Afford(1) {
		return nil, false
	}
	bends = slices.Clone(bends)
	slices.SortFunc(bends, func(a, b Bend) int { return cmp.Compare(b.Node, a.Node) })
	rig := *p.Rig
	rig.Ropes = slices.Clone(p.Rig.Ropes)
	for i, r := range rig.Ropes {
		for _, b := range bends { // the last first, so that the indices hold
			if b.Rope != r {
				continue
			}
			if r.Loop {
				return nil, false
			}
			rig.Ropes[i] = without(rig.Ropes[i], b)
		}
	}
	return &Trial{Rig: &rig, Result: solve.Ideal(&rig)}, true
}

// without gives a rope without one node and one of the strokes beside it.
func without(r *model.Rope, b Bend) *model.Rope {
	rope := *r
	rope.Nodes = slices.Delete(slices.Clone(r.Nodes), b.Node, b.Node+1)
	rope.Strokes = slices.Delete(slices.Clone(r.Strokes), b.Stroke, b.Stroke+1)
	rope.StrokePlaces = slices.Delete(slices.Clone(r.StrokePlaces), b.Stroke, b.Stroke+1)
	return &rope
}
