package lint

import (
	"fairlead/lang/model"
)

// Turned gives the rig with a grip or capture turned round.
func (p *Pass) Turned(r *model.Rope, node int) *model.Rig {
	n := r.Nodes[node]
	n.Holds = map[model.Side]model.Side{model.FirstSide: model.LastSide, model.LastSide: model.FirstSide}[n.Holds]
	return p.Rig.Reeved(r, r.Instead(node, n))
}

// Holding gives the rig with a bend that lets rope run one way only, not back toward the
// first node of its run.
func (p *Pass) Holding(r *model.Rope, node int) *model.Rig {
	n := r.Nodes[node]
	n.Role, n.Holds = model.Capture, model.FirstSide
	return p.Rig.Reeved(r, r.Instead(node, n))
}

// Moved gives the rig with a grip set into a strand, and taken out of its place with the
// stroke before it; from is nil for one that grips no rope yet. ok is false if it holds
// an end that the strand's run does not have.
func (p *Pass) Moved(grip *model.Part, from *model.Rope, node int, to *model.Rope, stroke int) (rig *model.Rig, ok bool) {
	n := model.Node{Part: grip, Role: model.Grip}
	end := grip.Values.HoldsEnd
	rig, without := p.Rig, to
	if from != nil {
		n = from.Nodes[node]
		end = p.heldEnd(from, node)
		before := from.Before(node)
		if from.Loop && node == 0 {
			return nil, false // the text would lose its first node
		}
		without = from.Without(node, before)
		rig = rig.Reeved(from, without)
		switch {
		case to != from:
			without = to
		case stroke > before:
			stroke--
		}
	}
	with := without.With(stroke, n)
	side := model.FirstSide
	if end != nil {
		side = with.EndAt(stroke+1, end)
	}
	with.Nodes[stroke+1].Holds = side // of a rope of its own
	return rig.Reeved(without, with), side != model.NoSide
}

// heldEnd gives the end that a grip is said to hold, at its node or in its statement;
// nil for the first one.
func (p *Pass) heldEnd(r *model.Rope, node int) *model.Part {
	written := p.clause(r, node, "holds")
	switch {
	case written == nil:
		return r.Nodes[node].Part.Values.HoldsEnd
	case written.Name == nil:
		return nil
	}
	return p.Rig.Part(written.Name.Text)
}
