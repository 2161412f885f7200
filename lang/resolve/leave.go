package resolve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// leaveOut takes the parts after "without" out of the lines.
func (c *copying) leaveOut(lines []*entry) []*entry {
	gone := map[string]syntax.Word{}
	for _, name := range c.include.Without {
		_, twice := gone[name.Text]
		switch {
		case twice:
			c.report(repeatedClause, name.Span, name.Text, "%s is left out twice", name.Text)
		case c.parts[name.Text] == nil && c.ropes[name.Text] == nil:
			c.unknownInBase(name)
		default:
			gone[name.Text] = name
		}
	}
	if len(gone) == 0 {
		return lines
	}
	before := mentioned(lines)
	lines = c.withoutNodes(lines, gone)
	c.checkNeeds(lines, gone)
	after := mentioned(lines)
	for _, l := range lines {
		if p := l.part(); p != nil && before[p.Name.Text] && !after[p.Name.Text] {
			l.stranded = true
		}
	}
	for name := range gone {
		c.leftOut[c.include.As.Text+"."+name] = true
	}
	return lines
}

// mentioned notes the names that lines mention.
func mentioned(lines []*entry) map[string]bool {
	names := map[string]bool{}
	for _, l := range lines {
		for _, word := range l.mentions() {
			names[word.Text] = true
		}
	}
	return names
}

// withoutNodes takes the parts themselves out, their nodes, and the ropes that touch
// fewer than two parts then.
func (c *copying) withoutNodes(lines []*entry, gone map[string]syntax.Word) []*entry {
	for _, l := range lines {
		r := l.reeve()
		if r == nil || !slices.ContainsFunc(r.Nodes, func(n syntax.Node) bool { return has(gone, n.Name.Text) }) {
			continue
		}
		if _, already := gone[r.Rope.Text]; already {
			continue
		}
		r = c.unreeved(r, gone)
		l.setBody(r)
		if touched(r) < 2 {
			gone[r.Rope.Text] = syntax.Word{Text: r.Rope.Text, Span: c.include.Without[0].Span}
		}
	}
	return slices.DeleteFunc(lines, func(l *entry) bool {
		switch body := l.Body.(type) {
		case *syntax.Part:
			return has(gone, body.Name.Text)
		case *syntax.Reeve:
			return has(gone, body.Rope.Text)
		}
		return false
	})
}

func has(names map[string]syntax.Word, name string) bool {
	_, there := names[name]
	return there
}

// touched counts the nodes of a rope that are no loose ends.
func touched(r *syntax.Reeve) int {
	n := 0
	for _, node := range r.Nodes {
		if !node.IsTail() {
			n++
		}
	}
	return n
}

// unreeved gives a reeving line without the parts that are left out. An end that was
// tied to one is loose; in mid rope the two strands beside one become one.
func (c *copying) unreeved(r *syntax.Reeve, gone map[string]syntax.Word) *syntax.Reeve {
	left := *r
	left.Nodes, left.Strokes = slices.Clone(r.Nodes), slices.Clone(r.Strokes)
	for i := 0; i < len(left.Nodes); {
		n := left.Nodes[i]
		name, out := gone[n.Name.Text]
		last := len(left.Nodes) - 1
		switch {
		case !out || n.IsTail():
			i++
		case left.Loop == nil && (i == 0 || i == last):
			left.Nodes[i] = syntax.Node{Name: syntax.Word{Text: "tail", Span: n.Name.Span}, Span: n.Span}
			i++
		case last == 0: // of a closed line
			return &left
		default:
			c.bridge(&left, i, name)
		}
	}
	return &left
}

// bridge takes node i out of a reeving line and makes one stroke of the two beside it.
func (c *copying) bridge(r *syntax.Reeve, i int, name syntax.Word) {
	count := len(r.Nodes)
	before := (i + count - 1) % count // the stroke that leads to node i has the index of the node before it
	in, out := r.Strokes[before], r.Strokes[i]
	kind := in.Kind
	switch {
	case in.Kind == out.Kind:
	case in.Kind == syntax.Slack || out.Kind == syntax.Slack:
		kind = syntax.Slack
	case r.Loop == nil && i == count-2 && c.isPulled(r.Nodes[count-1]): // the hands take the rope where it comes from
	case r.Loop == nil && i == 1 && c.isPulled(r.Nodes[0]):
		kind = out.Kind
	default:
		kind = syntax.Slack
	}
	for _, beside := range []struct {
		node int
		was  syntax.StrokeKind
	}{{before, in.Kind}, {(i + 1) % count, out.Kind}} {
		if kind == syntax.Slack && beside.was != syntax.Slack && c.wouldRun(r, beside.node) {
			node := r.Nodes[beside.node].Name.Text
			c.needs(name, "%s is left out, so that %s is slack there and would run over %s; leave %s out too",
				name.Text, r.Rope.Text, node, node)
			break
		}
	}
	r.Strokes[before].Kind = kind
	r.Strokes = slices.Delete(r.Strokes, i, i+1)
	r.Nodes = slices.Delete(r.Nodes, i, i+1)
}

// isPulled says whether a node is people or a loose end, who take the rope from where
// it comes.
func (c *copying) isPulled(n syntax.Node) bool {
	l := c.parts[n.Name.Text]
	return n.IsTail() || l != nil && model.Kind(l.part().Kind.Text).IsPerson()
}

// wouldRun says whether rope can run over node n if it is slack on one side.
func (c *copying) wouldRun(r *syntax.Reeve, n int) bool {
	if r.Loop == nil && (n == 0 || n == len(r.Nodes)-1) {
		return false
	}
	node := r.Nodes[n]
	l := c.parts[node.Name.Text]
	if l == nil || slices.ContainsFunc(node.Clauses, func(u syntax.ClauseUse) bool { return u.Word.Text == "holds" }) {
		return false
	}
	p := l.part()
	if !isBend(&model.Part{Kind: model.Kind(p.Kind.Text)}) || l.clause("holds") != nil {
		return false
	}
	if p.Model == nil {
		return true
	}
	of := l.work.modelNamed(p.Kind.Text, p.Model.Text)
	return of == nil || !of.Values.Holds
}

// checkNeeds reports what stays in the copy but needs a part that is left out.
func (c *copying) checkNeeds(lines []*entry, gone map[string]syntax.Word) {
	for _, l := range lines {
		p := l.part()
		if r := l.reeve(); r != nil {
			for _, n := range r.Nodes {
				c.checkNames(n.Name.Text, n.Clauses, gone)
			}
			continue
		}
		if p == nil {
			continue
		}
		if p.On != nil && has(gone, p.On.Text) {
			c.needs(gone[p.On.Text], "%s is left out, but %s is on it; leave %s out too", p.On.Text, p.Name.Text, p.Name.Text)
		}
		for _, of := range l.clauses() {
			c.checkNames(p.Name.Text, of.clauses, gone)
		}
	}
}

// checkNames reports clauses that name what is left out.
func (c *copying) checkNames(owner string, clauses []syntax.ClauseUse, gone map[string]syntax.Word) {
	for _, use := range clauses {
		if namesPart(use) && has(gone, use.Name.Text) {
			c.needs(gone[use.Name.Text], "%s is left out, but %s says %s %s", use.Name.Text, owner, use.Word.Text, use.Name.Text)
		}
	}
}

// needs reports that something left out is needed.
func (c *copying) needs(name syntax.Word, format string, args ...any) {
	c.faulty = true
	if c.base.unsound {
		return
	}
	c.report(leftOutNeeded, name.Span, name.Text, format, args...)
}
