package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Carries says whether a stroke carries something where the rig stays up, or once it
// has been caught: in one state of balance, where statics leaves several open.
func (s Stay) Carries(r *model.Rope, stroke int) bool { return s.tension(r, stroke).Sign() > 0 }

// tension gives what a stroke carries, 0 where it is in no piece.
func (s Stay) tension(r *model.Rope, stroke int) lp.Num {
	list := s.forces[r]
	if stroke < 0 || stroke >= len(list) || list[stroke] == nil || s.lost.takes(r.Line) {
		return lp.Num{}
	}
	return *list[stroke]
}

// Holding lists the parts whose grips hold something in that state of balance, in file
// order.
func (s Stay) Holding() []*model.Part {
	return s.holding(func(*model.Rope, int) bool { return true })
}

// HoldingUp is Holding of those grips alone on which a load hangs: taut rope and the parts
// that move lead from it to them.
func (s Stay) HoldingUp(load *model.Part) []*model.Part {
	var all []Stretch
	for r := range s.forces {
		all = append(all, s.stretchesOf(r)...)
	}
	return s.holding(func(r *model.Rope, node int) bool {
		for _, at := range all {
			if at.Rope == r && at.has(node) && hangsTogether(all, at, load) {
				return true
			}
		}
		return false
	})
}

func (s Stay) holding(counts func(*model.Rope, int) bool) []*model.Part {
	var list []*model.Part
	for r := range s.forces {
		for i, n := range r.Nodes {
			if n.Part != nil && s.holdsAt(r, i) && !slices.Contains(list, n.Part) && counts(r, i) {
				list = append(list, n.Part)
			}
		}
	}
	slices.SortFunc(list, func(a, b *model.Part) int { return a.Index - b.Index })
	return list
}

// holdsAt says whether a node grips a rope and the tensions on its two sides differ.
// Between grips that count as one lies no piece: the strokes beyond them tell.
func (s Stay) holdsAt(r *model.Rope, node int) bool {
	n := r.Nodes[node]
	if n.Role != model.Grip && !holdsRope(r, node) || s.lost.takes(n.Part) || s.lost.slips(r, node) {
		return false
	}
	before, after := r.Before(node), node
	for range r.Strokes {
		if before < 0 || !s.between(r, before) {
			break
		}
		before = r.Before(before)
	}
	for range r.Strokes {
		if after >= len(r.Strokes) || !s.between(r, after) {
			break
		}
		after = r.After(after)
	}
	return s.tension(r, before).Cmp(s.tension(r, after)) != 0
}

// between says whether a stroke is in no piece: it lies between two grips that count as
// one.
func (s Stay) between(r *model.Rope, stroke int) bool {
	list := s.forces[r]
	return stroke < len(list) && list[stroke] == nil
}
