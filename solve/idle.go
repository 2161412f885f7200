package solve

import "fairlead/lang/model"

// busyness says what carries something while the rig is held, hands off. What carries
// nothing can be lost, and the forces are still in balance: nobody need ask.
type busyness struct {
	// known is false where that is no proof: the rig is not held, a weight was left out,
	// or a load lies on a slope, where the ground may keep it.
	known bool
	// parts marks by Part.Index what touches taut rope or has a weight, and all that
	// such a part is on; lines the taut lines.
	parts, lines []bool
	strokes      map[*model.Rope][]bool
}

// newBusyness looks at the phase with hands off.
func newBusyness(s *system, hold *Phase) *busyness {
	b := &busyness{strokes: map[*model.Rope][]bool{}}
	if hold == nil || hold.Status != OK || len(hold.Sagging) > 0 {
		return b
	}
	b.parts, b.lines = make([]bool, len(s.rig.Parts)), make([]bool, len(s.rig.Parts))
	for _, p := range s.rig.Parts {
		switch {
		case p.Values.Slope != nil:
			return b
		case p.Kind == model.Leg: // what legs do to a focal point is no matter of rope
			b.mark(p)
			b.mark(p.Values.From)
		case s.weights.of(p, false).Sign() != 0:
			b.mark(p)
		}
	}
	for r, places := range hold.program.strands {
		taut := make([]bool, len(places))
		for i, at := range places {
			// between grips that count as one no piece tells
			taut[i] = at.group >= 0 || at.piece >= 0 && hold.tension[at.piece].Sign() > 0
			if taut[i] {
				b.lines[r.Line.Index] = true
				b.mark(r.Nodes[i].Part)
				b.mark(r.Nodes[r.After(i)].Part)
			}
		}
		b.strokes[r] = taut
	}
	b.known = true
	return b
}

// mark notes a part and all that it is on.
func (b *busyness) mark(p *model.Part) {
	for ; p != nil && !b.parts[p.Index]; p = p.On {
		b.parts[p.Index] = true
	}
}

// idle says whether nothing that is lost carries anything.
func (b *busyness) idle(l Lost) bool {
	switch {
	case !b.known || l.Part == nil:
		return false
	case l.Kind == LostTie:
		return !b.taut(l.Rope, l.Node) && !b.taut(l.Rope, l.Rope.Before(l.Node))
	case l.Kind == LostLine:
		return !b.lines[l.Part.Index] && !b.parts[l.Part.Index]
	}
	return !b.parts[l.Part.Index]
}

func (b *busyness) taut(r *model.Rope, stroke int) bool {
	return stroke >= 0 && stroke < len(b.strokes[r]) && b.strokes[r][stroke]
}
