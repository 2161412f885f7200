package resolve

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
)

// readRoles gives every node what it does to the rope, from the kind of its part
// and from where it stands.
func (l *ropeWork) readRoles() {
	if l.rope.Broken && len(l.rope.Strokes) < len(l.rope.Nodes)-1 {
		return
	}
	for i := range l.rope.Nodes {
		node := &l.rope.Nodes[i]
		switch {
		case l.body.Nodes[i].IsTail():
			node.Role = model.Loose
			l.checkTail(i)
		case node.Part == nil:
			node.Role = model.Tied
		case l.runEnd(i):
			node.Role = l.endRole(i, node.Part)
		default:
			node.Role = l.roleBetween(i, node.Part)
		}
		l.readHold(i)
	}
}

// fault reports an error of the reeving line at the name of a node.
func (l *ropeWork) fault(rule Rule, i int, format string, args ...any) *diag.Diagnostic {
	name := l.body.Nodes[i].Name
	l.spoilt = true
	return l.report(rule, name.Span, name.Text, format, args...)
}

// checkTail reports a loose end that is none of the line's two ends.
func (l *ropeWork) checkTail(i int) {
	if !l.lineEnd(i) {
		l.fault(nodeNeedsEnd, i, "tail is a loose end; it can only be the first or last of a line")
		l.spoil()
	}
}

// endRole gives the role of a part at an end of a run.
func (l *ropeWork) endRole(i int, p *model.Part) model.Role {
	switch {
	case p.Kind == model.Hauler:
		return model.Hauled
	case p.Kind == model.Tender:
		return model.Tended
	case p.Kind == model.Edge:
		l.fault(bendCannotTie, i, "%s is an edge, where no rope can be tied; tie it to an anchor", p.Name)
	case l.isStopper(i, p):
		return model.Stopper
	case isBend(p) && !l.lineEnd(i) && !l.holdsAt(i):
		l.fault(looseBesideSlack, i,
			"%s lies beside slack rope and does not hold, so that the rope would run; write a knot on %s, or holds", p.Name, p.Name)
	}
	return model.Tied
}

// isStopper says whether a node is a knot that only ends its line: it is on
// nothing, nothing is on it, and no other node ties a rope to it.
func (l *ropeWork) isStopper(i int, p *model.Part) bool {
	last := !l.rope.Loop && i == len(l.rope.Nodes)-1
	w := l.work(p)
	return last && p.Kind == model.Knot && !w.saysOn() && w.carries == 0 && w.nodes == 1
}

// isBend says whether a rope bends round the part and can run over it.
func isBend(p *model.Part) bool {
	switch p.Kind {
	case model.Pulley, model.Carabiner, model.Ring, model.Device, model.Edge, model.Anchor:
		return true
	}
	return p.Kind.IsLine()
}

// roleBetween gives the role of a part between two strokes that carry.
func (l *ropeWork) roleBetween(i int, p *model.Part) model.Role {
	switch {
	case p.Kind.IsPerson():
		l.fault(nodeNeedsEnd, i, "%s stands in mid rope, where nobody can pull both ways; end the run with ~ beside it", p.Name)
		l.spoil()
		return model.KnotTie
	case p.Kind.IsWeight() || p.Kind == model.Focal:
		l.fault(nodeNeedsEnd, i,
			"%s stands in mid rope, where nothing ties it; write a knot on %s, or end the run with ~", p.Name, p.Name)
		return model.KnotTie
	case p.Kind == model.Knot:
		return model.KnotTie
	case p.Kind.IsGrip():
		if l.rope.Turns(i) {
			l.fault(hitchTurnsRope, i, "%s grips the rope, which cannot turn back there; both strokes beside it must be the same", p.Name)
		}
		return model.Grip
	case isBend(p) && l.holdsAt(i):
		return model.Capture
	case isBend(p):
		return model.Bend
	}
	l.spoil() // a leg, which was reported
	return model.Tied
}
