package resolve

import (
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// readRopes resolves every reeving line.
func (r *rigWork) readRopes() {
	first := map[string]*ropeWork{}
	var lines []*ropeWork
	for _, of := range r.all {
		body := of.reeve()
		if body == nil {
			continue
		}
		r.read(of)
		l := &ropeWork{rigWork: r, of: of, body: body}
		keep := r.carries(l, first)
		l.readNodes()
		if keep {
			r.rig.Ropes = append(r.rig.Ropes, l.rope)
		}
		lines = append(lines, l)
	}
	for _, l := range lines { // roles ask how often a part is touched in all
		r.read(l.of)
		l.cutRuns()
		l.readRoles()
		l.checkPasses()
		l.readClauses()
		l.checkPositions()
		l.checkDirection()
	}
	r.checkHeldEnds()
}

// carries says whether the line that a reeving line names is one that it can be
// of, and reports where not.
func (r *rigWork) carries(l *ropeWork, first map[string]*ropeWork) bool {
	name := l.body.Rope
	line := r.parts[name.Text]
	switch {
	case line == nil: // the statement of a double, or left out for size
		r.rig.Incomplete = true
		l.line = &model.Part{Name: name.Text, Kind: model.RopeLine}
		return false
	case first[name.Text] != nil:
		d := r.report(duplicateReeve, name.Span, name.Text, "%s has a reeving line already", name.Text)
		old := first[name.Text]
		related(d, old.of.file.At(old.body.Rope.Span), "the first one of %s", name.Text)
	case !line.Kind.IsLine():
		r.misfit(name, "%s is %s; only a rope, cord or sling has a reeving line", name.Text, article(line.Kind))
	case line.saysOn():
		r.misfit(name, "%s is on a part, so that ropes run over it and it has no reeving line", name.Text)
	default:
		first[name.Text] = l
		l.line = line.Part
		return true
	}
	l.line = line.Part
	r.rig.Incomplete = true
	return false
}

// ropeWork is one reeving line while it is resolved.
type ropeWork struct {
	*rigWork
	of    *entry
	body  *syntax.Reeve
	line  *model.Part
	rope  *model.Rope
	runs  []run
	runOf []int // by node
}

// readNodes makes the rope with its nodes' parts and its strokes, without roles.
func (l *ropeWork) readNodes() {
	l.rope = &model.Rope{Line: l.line, Loop: l.body.Loop != nil, Place: l.file.At(l.of.Span)}
	for _, s := range l.body.Strokes {
		l.rope.Strokes = append(l.rope.Strokes, strokeOf(s.Kind))
		l.rope.StrokePlaces = append(l.rope.StrokePlaces, l.file.At(s.Span))
	}
	for _, n := range l.body.Nodes {
		node := model.Node{Place: l.file.At(n.Span), NamePlace: l.file.At(n.Name.Span)}
		if n.Knot != nil {
			node.Tie = n.Knot.Text
		}
		if !n.IsTail() {
			node.Part = l.nodePart(n.Name)
		}
		l.rope.Nodes = append(l.rope.Nodes, node)
	}
	if l.of.Faulty && l.of.copy == "" { // a clause of a node is lost
		l.rig.Incomplete = true
	}
	want := len(l.rope.Nodes) - 1
	if l.rope.Loop {
		want++
	}
	if want < 1 || len(l.rope.Strokes) != want {
		l.spoil()
	}
}

// strokeOf gives the way a stroke leads.
func strokeOf(kind syntax.StrokeKind) model.Stroke {
	switch kind {
	case syntax.Up:
		return model.Up
	case syntax.Down:
		return model.Down
	}
	return model.Slack
}

// nodePart finds the part of a node; the rope is broken if there is none that a
// rope can touch.
func (l *ropeWork) nodePart(name syntax.Word) *model.Part {
	p := l.find(name, canEnd)
	if p == nil {
		l.spoil()
		return nil
	}
	p.nodes++
	switch {
	case p.Kind == model.Leg:
		l.misfit(name, "%s is a leg of a focal point, which no rope touches; write the focal point", name.Text)
	case !p.Kind.IsLine() || p.saysOn():
		return p.Part
	case p.Part == l.line:
		l.misfit(name, "%s cannot be a node of its own reeving line", name.Text)
	case l.reeves[name.Text] != nil:
		l.misfit(name, "%s has a reeving line of its own, and no rope touches it", name.Text)
	}
	l.spoil()
	return p.Part
}

// spoil notes that the rope is not the one that the author means.
func (l *ropeWork) spoil() {
	if l.rope != nil {
		l.rope.Broken = true
	}
	l.rig.Incomplete = true
}
