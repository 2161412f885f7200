package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// busyness says what carries something in tensions that keep a rig, hands off. What
// carries nothing can be lost, and the tensions are still in balance: nobody need ask.
type busyness struct {
	// parts marks by Part.Index what touches taut rope or has a weight, and all that
	// such a part is on; lines the taut lines.
	parts, lines []bool
	strokes      map[*model.Rope][]bool
}

// newBusyness looks at tensions; nil where they are no proof, since a load lies on a
// slope, where the ground may keep it.
func newBusyness(l *layout, forces strandForces) *busyness {
	n := len(l.rig.Parts)
	b := &busyness{parts: make([]bool, n), lines: make([]bool, n), strokes: map[*model.Rope][]bool{}}
	for _, p := range l.rig.Parts {
		switch v := p.Values; {
		case v.Slope != nil:
			return nil
		case p.Kind == model.Leg: // what legs do to a focal point is no matter of rope
			b.mark(p)
			b.mark(v.From)
		case v.Mass != nil || v.Weight != nil || p.Kind.IsWeight():
			b.mark(p)
		}
	}
	for r, tensions := range forces {
		taut := make([]bool, len(tensions))
		b.strokes[r] = taut
		if !pulls(tensions) {
			continue
		}
		b.lines[r.Line.Index] = true
		for i, t := range tensions {
			// a stroke between grips that count as one is in no piece, and may carry
			if taut[i] = t == nil || t.Sign() != 0; taut[i] {
				b.mark(r.Nodes[i].Part)
				b.mark(r.Nodes[r.After(i)].Part)
			}
		}
	}
	return b
}

// pulls says whether any stroke of a rope carries something.
func pulls(tensions []*lp.Num) bool {
	for _, t := range tensions {
		if t != nil && t.Sign() != 0 {
			return true
		}
	}
	return false
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
	case b == nil || l.Part == nil:
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
