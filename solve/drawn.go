package solve

import (
	"math"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// drawn finds the directions of the forces on a part.
type drawn struct {
	*layout
	phase   *Phase
	rig     *model.Rig
	strands []Strand
	weight  func(*model.Part) lp.Num
	// sides counts the forces of which it is not said to which side they lean.
	sides int
}

// drawnIn finds the directions of the forces in a phase.
func (r *Result) drawnIn(ph *Phase) *drawn {
	strands, _ := ph.Tensions()
	return &drawn{layout: r.system.held.layout, phase: ph, rig: r.Rig, strands: strands,
		weight: func(q *model.Part) lp.Num { return r.WeightOf(q, ph.hauling()) }}
}

// groups gives what draws a part, by line and by part clipped to it, but for what it is
// on. known is false if a direction is not known.
func (d *drawn) groups(p *model.Part) (groups []group, known bool) {
	for _, r := range d.rig.Ropes {
		if r.Broken {
			continue
		}
		for i, n := range r.Nodes {
			if n.Part != p {
				continue
			}
			leans, known := d.at(r, i)
			if !known {
				return nil, false
			}
			groups = append(groups, group{r.Line, leans})
		}
	}
	for _, child := range d.rig.Parts {
		if child.On != p {
			continue
		}
		below, known := d.groups(child)
		if !known {
			return nil, false
		}
		g := group{by: child}
		for _, b := range below {
			g.leans = append(g.leans, b.leans...)
		}
		if w := d.weight(child); w.Sign() != 0 {
			g.leans = append(g.leans, lean{w.Float(), math.Pi, -1, false})
		}
		groups = append(groups, g)
	}
	return groups, true
}

// at gives the force of a rope at one of its nodes, of the strands before and after it.
func (d *drawn) at(r *model.Rope, node int) (leans []lean, known bool) {
	n := r.Nodes[node]
	var legs []leg
	for _, l := range []leg{{rope: r, stroke: r.Before(node), far: -1}, {rope: r, stroke: node, far: +1}} {
		if l.stroke < 0 || l.stroke >= len(r.Strokes) || r.Strokes[l.stroke] == model.Slack {
			continue
		}
		l.force, l.open = d.tension(r, l.stroke)
		// a strand up the line draws its far end down and its near one up
		if l.angle = 0; int(r.Strokes[l.stroke])*l.far < 0 {
			l.angle = math.Pi
		}
		legs = append(legs, l)
	}
	switch {
	case carryNothing(legs):
		return nil, true
	case len(legs) == 2 && n.Angle != nil && n.Sideways && r.RunsOn(node):
		size := (legs[0].force + legs[1].force) * math.Cos(radians(n.Angle.Middle())/2)
		return d.leaning(size, math.Pi/2, legs[0].open || legs[1].open), true
	case len(legs) == 2 && n.Angle != nil && d.of(n.Part) == ground:
		return d.turned(r, node, legs)
	case len(legs) == 2 && n.Angle != nil:
		half := math.Cos(radians(n.Angle.Middle()) / 2)
		return []lean{{legs[0].force * half, legs[0].angle, -1, legs[0].open}, {legs[1].force * half, legs[1].angle, -1, legs[1].open}}, true
	}
	for _, l := range legs {
		if l.force == 0 { // it may lie where it will, such as a tail
			continue
		}
		off, known := d.off(r, node, l)
		if !known {
			return nil, false
		}
		if off == 0 {
			leans = append(leans, lean{l.force, l.angle, -1, l.open})
			continue
		}
		leans = append(leans, d.leaning(l.force, math.Abs(l.angle-off), l.open)...)
	}
	return leans, true
}

// leg is a strand beside a node. Far is +1 for the one after it, -1 for the one before;
// angle 0 up the haul line, π down.
type leg struct {
	rope         *model.Rope
	stroke, far  int
	force, angle float64
	open         bool
}

func carryNothing(legs []leg) bool {
	for _, l := range legs {
		if l.force > 0 {
			return false
		}
	}
	return true
}

// tension is that shown of a strand, and whether statics leaves it open.
func (d *drawn) tension(r *model.Rope, stroke int) (shown float64, open bool) {
	for i, s := range d.strands {
		if s.Rope == r && s.Index == stroke && s.Known() {
			return s.Value.Float(), d.phase.Strands[i].Ranges() // a range of efficiency opens nothing
		}
	}
	return 0, false
}

// leaning gives a force that leans to one side or the other.
func (d *drawn) leaning(force, angle float64, open bool) []lean {
	d.sides++
	return []lean{{force, angle, d.sides - 1, open}}
}

// turned gives the force of a rope that a fixed part turns by an angle: the strand to
// what moves lies in the haul line, and the other one leans. Not known where that is
// true of both or of none.
func (d *drawn) turned(r *model.Rope, node int, legs []leg) (leans []lean, known bool) {
	first, firstKnown := d.off(r, node, legs[0])
	second, secondKnown := d.off(r, node, legs[1])
	if firstKnown == secondKnown || firstKnown && first != 0 || secondKnown && second != 0 {
		return nil, false
	}
	line, other := legs[0], legs[1]
	if secondKnown {
		line, other = other, line
	}
	angle := radians(r.Nodes[node].Angle.Middle())
	return append(d.leaning(other.force, math.Abs(line.angle-angle), other.open), lean{line.force, line.angle, -1, line.open}), true
}

// off gives by how much a strand at a node leans from the haul line: by the angle that
// is written at its end; at a fixed part by what its far end says, if that moves.
func (d *drawn) off(r *model.Rope, node int, l leg) (angle float64, known bool) {
	n := r.Nodes[node]
	switch {
	case n.Role.Ends() && n.Angle != nil:
		return radians(n.Angle.Middle()), true
	case d.of(n.Part) >= 0:
		return 0, true
	}
	far := l.stroke
	if l.far > 0 {
		far = r.After(l.stroke)
	}
	end := r.Nodes[far]
	switch {
	case end.Part == nil:
		return 0, false
	case end.Part.Kind == model.Edge && r.RunsOn(far): // the haul line goes on beyond it
		return 0, true
	case d.of(end.Part) < 0:
		return 0, n.Angle == nil
	case end.Angle == nil:
		return 0, true
	case end.Role.Ends():
		return radians(end.Angle.Middle()), true
	}
	return radians(end.Angle.Middle()) / 2, true
}
