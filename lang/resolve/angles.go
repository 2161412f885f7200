package resolve

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/source"
)

var (
	between = bounds{least: "0", most: "180", text: "from 0 deg to 180 deg between the two legs"}
	atEnd   = bounds{least: "0", most: "90", text: "from 0 deg to 90 deg to the haul line"}
)

// readAngle gives a node its angle: its own, else that of an edge. One that
// cannot be is reported and left out.
func (l *ropeWork) readAngle(i int, own *quantity.Quantity) {
	node := &l.rope.Nodes[i]
	if own == nil {
		if node.Part != nil && node.Part.Kind == model.Edge {
			node.Angle = node.Part.Values.Angle
		}
		return
	}
	at := l.nodeClause(i, "angle").Span
	limits := between
	if node.Role.Ends() {
		limits = atEnd
	}
	switch {
	case !l.angleFits(i, at):
	case !limits.accepts(own.Low) || !limits.accepts(own.High):
		l.report(wrongAngle, at, l.word(i), "%s has angle %s; it must be %s", l.word(i), own.String(), limits.text)
		l.rig.Incomplete = true
	default:
		q := *own
		if q.Low.Cmp(q.High) > 0 {
			l.reportBackward(l.word(i), "angle", l.nodeClause(i, "angle").Amount)
			q.Low, q.High = q.High, q.Low
		}
		node.Angle = &q
	}
}

// angleFits says whether there is an angle at a node at all, and reports where not.
func (l *ropeWork) angleFits(i int, at source.Span) bool {
	node := &l.rope.Nodes[i]
	name := l.word(i)
	report := func(format string, args ...any) *diag.Diagnostic {
		return l.report(wrongAngle, at, name, format, args...)
	}
	if node.Part == nil { // tail, or a name that is reported
		if l.body.Nodes[i].IsTail() {
			report("%s is a loose end and has no angle", name)
		}
		return false
	}
	switch node.Role {
	case model.Stopper:
		report("%s is a stopper on a loose end and has no angle", name)
		return false
	case model.Tied, model.Hauled, model.Tended:
		return true
	}
	switch {
	case node.Part.Fixed() || node.Sideways:
		return true
	case node.Role == model.KnotTie || node.Role == model.Grip:
		report("%s is made fast on the rope, which runs straight through and has no angle there", name)
		return false
	case l.rope.RunsOn(i):
		report("%s moves and the rope runs straight through it, so that there is no angle; it may move sideways", name)
		return false
	}
	return true
}

// checkFixedEnds reports an angle at an end that is tied to a fixed part where the moving
// part at the other end of the stroke has none. The rope leaves that one at the same
// slant, and only there an angle counts for motions and forces.
func (l *ropeWork) checkFixedEnds() {
	for i, n := range l.rope.Nodes {
		if n.Role != model.Tied || n.Part == nil || n.Angle == nil || n.Angle.High.Sign() == 0 || !n.Part.Fixed() {
			continue
		}
		other, ok := l.beside(i)
		if !ok || !l.slants(other) {
			continue
		}
		kind := "the included angle of its two legs"
		if l.rope.Nodes[other].Role.Ends() {
			kind = "the angle to the haul line"
		}
		d := l.report(wrongAngle, l.nodeClause(i, "angle").Span, l.word(i),
			"%s is fixed, so that its angle alone changes no motion and no tension: write at %s %s", l.word(i), l.word(other), kind)
		d.Severity = diag.Warning // which way the part is pulled is known by it all the same
	}
}

// beside gives the node at the other end of the one stroke of a tied end.
func (l *ropeWork) beside(i int) (other int, ok bool) {
	r := l.runAt(i)
	switch {
	case r.closed || len(r.nodes) < 2:
		return 0, false
	case i == r.first():
		return r.nodes[1], true
	case i == r.last():
		return r.nodes[len(r.nodes)-2], true
	}
	return 0, false
}

// slants says whether a node is on a moving part, could have an angle and has none.
func (l *ropeWork) slants(i int) bool {
	n := l.rope.Nodes[i]
	if n.Part == nil || !n.Part.Moves() || n.Angle != nil || n.Sideways {
		return false
	}
	return n.Role == model.Tied || (n.Role == model.Bend || n.Role == model.Capture) && l.rope.Turns(i)
}
