package rules

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// redirect is a fixed bend between the last moving part and a hauler.
type redirect struct {
	rope *model.Rope
	// index is the rope's place in Rig.Ropes.
	index, node int
	// stroke is the one on the hauler's side, end that at the hauler.
	stroke, end int
}

// redirects walks from a hauled end to the first thing that is no fixed bend. An
// edge is passed by: it is the ground's, and cannot be taken out. A capture ends
// the walk: without it the load would not be held.
func redirects(r *model.Rope, index, hauler int) []redirect {
	back := r.Before(hauler) >= 0 && r.Strokes[r.Before(hauler)] != model.Slack
	end := hauler
	if back {
		end = r.Before(hauler)
	}
	var found []redirect
	node := hauler
	for range r.Nodes {
		stroke := node // the strand toward the hauler, once node is the next one
		if back {
			if r.Before(node) < 0 {
				return nil
			}
			node = r.Before(node)
			stroke = node
		} else {
			if node >= len(r.Strokes) {
				return nil
			}
			node = r.After(node)
		}
		n := r.Nodes[node]
		switch bends := n.Role == model.Bend; {
		case bends && n.Part.Kind == model.Edge:
		case bends && n.Part.Fixed():
			found = append(found, redirect{r, index, node, stroke, end})
		case n.Role == model.Tied && n.Part.Fixed():
			return nil // nothing between the hauler and the ground moves
		default:
			return found
		}
	}
	return nil
}

// turn is a part at which one hauler's ropes are turned, with all their bends there:
// the first comes first.
type turn struct {
	part  *model.Part
	bends []redirect
}

// turnedAt adds a bend to those of its part.
func turnedAt(all []turn, b redirect) []turn {
	part := b.rope.Nodes[b.node].Part
	for i := range all {
		if all[i].part == part {
			all[i].bends = append(all[i].bends, b)
			return all
		}
	}
	return append(all, turn{part, []redirect{b}})
}

// pull adds up the tension of the hauled ends whose ropes run over the turn; nil if it
// is not known.
func (b turn) pull(ph *solve.Phase) *lp.Num {
	type end struct {
		rope   *model.Rope
		stroke int
	}
	sum, counted := lp.Num{}, map[end]bool{}
	for _, of := range b.bends {
		e := end{of.rope, of.end}
		if counted[e] { // it is turned here more than once
			continue
		}
		counted[e] = true
		tension := strand(ph, of.rope, of.end)
		if tension == nil {
			return nil
		}
		sum = sum.Add(*tension)
	}
	return &sum
}

// force adds up what the bends put on the part; nil if it is not known. In is the rig that
// the phase is of where it is another one with the same ropes.
func (b turn) force(ph *solve.Phase, in *model.Rig) *lp.Num {
	sum := lp.Num{}
	for _, of := range b.bends {
		rope := of.rope
		if in != nil {
			rope = in.Ropes[of.index]
		}
		force := ph.BendForce(rope, of.node)
		if force == nil {
			return nil
		}
		sum = sum.Add(*force)
	}
	return &sum
}

// strand gives the tension of a strand in a phase, with friction where that is known.
func strand(ph *solve.Phase, r *model.Rope, stroke int) *lp.Num {
	strands := ph.Strands
	if ph.Actual.Known() {
		strands = ph.Actual.Strands
	}
	for _, s := range strands {
		if s.Rope == r && s.Index == stroke {
			return s.Value
		}
	}
	return nil
}
