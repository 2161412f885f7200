package ide

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/lint/rules"
)

// parts offers the parts of the rigs here for which rank gives no negative number, the
// lowest first.
func (c *completion) parts(rank func(*model.Part) int) {
	for _, r := range c.rigs {
		for _, p := range r.Parts {
			if n := rank(p); n >= 0 && (p.NamePlace.File != c.doc.File || p.NamePlace.Span != c.typed) {
				detail := string(p.Kind)
				if p.On != nil {
					detail += " on " + p.On.Name
				}
				c.add(Item{Label: p.Name, Sort: PartItem, Detail: detail, Doc: escape(strings.Join(p.Doc, " ")), rank: n})
			}
		}
	}
}

// ranked gives a rank for parts: 0 for those that are meant first, 1 for others that
// may stand, -1 for the rest.
func ranked(first, may func(*model.Part) bool) func(*model.Part) int {
	return func(p *model.Part) int {
		switch {
		case first(p):
			return 0
		case may(p):
			return 1
		}
		return -1
	}
}

func only(which func(*model.Part) bool) func(*model.Part) int {
	return ranked(which, func(*model.Part) bool { return false })
}

func anyPart(*model.Part) bool { return true }

func ofKind(kinds ...model.Kind) func(*model.Part) bool {
	return func(p *model.Part) bool {
		for _, k := range kinds {
			if p.Kind == k {
				return true
			}
		}
		return false
	}
}

// carriers offers what the part being written may be on: no people, no line of its own,
// not itself and nothing that hangs on it.
func (c *completion) carriers() {
	self := c.word(1)
	c.parts(only(func(p *model.Part) bool {
		for on := p; on != nil; on = on.On {
			if on.Name == self {
				return false
			}
		}
		return !(p.Kind.IsPerson() && p.On == nil) && !(p.Kind.IsLine() && p.On == nil) && p.Kind != model.Leg
	}))
}

// named offers the parts that a clause may name.
func (c *completion) named(clause string) {
	switch clause {
	case "from":
		c.parts(only(ofKind(model.Anchor)))
	case "to":
		c.parts(only(ofKind(model.Focal)))
	default:
		c.parts(ranked(c.endsRun(), anyPart))
	}
}

// endsRun says which parts stand at an end of a run of a rope.
func (c *completion) endsRun() func(*model.Part) bool {
	ends := map[*model.Part]bool{}
	for _, r := range c.rigs {
		for _, rope := range r.Ropes {
			for _, n := range rope.Nodes {
				ends[n.Part] = ends[n.Part] || n.Role.Ends()
			}
		}
	}
	return func(p *model.Part) bool { return ends[p] }
}

// rules offers the names of rules; claims says that they stand in a claim, which no rule
// about claims can be named in.
func (c *completion) rules(claims bool) {
	final := map[string]bool{}
	summary := map[string]string{}
	for _, r := range rules.All() {
		summary[r.Name] = r.Summary
		final[r.Name] = r.Final
	}
	for _, r := range lint.ClaimRules() {
		final[r.Name] = r.Final
	}
	for _, name := range lint.Names(rules.All()) {
		if claims && final[name] {
			continue
		}
		page, _ := rules.Page(name)
		c.add(Item{Label: name, Sort: RuleItem, Detail: summary[name], Doc: page})
	}
}

// rigNames offers the rigs of the file and of those that it uses.
func (c *completion) rigNames() {
	for _, r := range c.doc.rigs() {
		c.add(Item{Label: r.Name, Sort: RigItem, Detail: r.Title})
	}
}

// reeve offers what goes on with a reeving line.
func (c *completion) reeve() {
	switch {
	case len(c.before) == 1:
		reeved := map[string]bool{}
		for _, st := range c.doc.Tree.Statements {
			if b, ok := st.Body.(*syntax.Reeve); ok && b.Rope.Span != c.typed && c.ofHere(c.doc.rigAt(st.Span.Start)) {
				reeved[b.Rope.Text] = true
			}
		}
		isLine := func(p *model.Part) bool { return p.Kind.IsLine() && p.On == nil }
		c.parts(ranked(func(p *model.Part) bool { return isLine(p) && !reeved[p.Name] }, isLine))
		return
	case len(c.before) == 2:
		c.add(Item{Label: ":", Sort: WordItem})
		return
	}
	open := -1 // the parenthesis that is open
	for i, t := range c.before {
		switch t.Text {
		case "(":
			open = i
		case ")":
			open = -1
		}
	}
	if open >= 0 {
		c.atNode(open + 1)
		return
	}
	switch last := c.before[len(c.before)-1]; {
	case last.Text == ":" || last.Kind == syntax.StrokeToken:
		c.node(last.Text == ":")
	default:
		c.strokes(last.Text != ")")
	}
}

// node offers what a rope may touch, as its first node or a later one.
func (c *completion) node(first bool) {
	ends := ofKind(model.Load, model.Anchor, model.Counterweight, model.Focal, model.Knot)
	mayBe := func(p *model.Part) bool {
		return !(p.Kind.IsLine() && p.On == nil) && p.Kind != model.Leg
	}
	if first {
		c.parts(ranked(ends, mayBe))
		c.words("tail")
		return
	}
	bends := func(p *model.Part) bool { return mayBe(p) && !p.Kind.IsWeight() && p.Kind != model.Edge }
	c.parts(ranked(bends, mayBe))
	c.words("tail", "loop")
}

// strokes offers what follows a node.
func (c *completion) strokes(parenthesis bool) {
	for _, s := range []struct{ stroke, says string }{
		{"/", "up the line, toward the head"}, {`\`, "down the line, toward the load"}, {"~", "slack"},
	} {
		c.add(Item{Label: s.stroke, Sort: StrokeItem, Detail: s.says})
	}
	if parenthesis {
		c.add(Item{Label: "(", Sort: WordItem, Detail: "clauses of this node, or its knot", rank: 1})
	}
}

// atNode offers what stands in the parentheses of a node.
func (c *completion) atNode(at int) {
	if at == len(c.before) {
		c.models("knot")
	} else if t := c.before[at]; t.Kind == syntax.WordToken && !syntax.Reserved(t.Text) {
		at++ // the knot
	}
	c.clauses(at, syntax.NodeClauses(), false)
	if at < len(c.before) || at > 0 && c.before[at-1].Text != "(" {
		c.add(Item{Label: ")", Sort: WordItem, rank: 1})
	}
}
