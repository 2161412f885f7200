package ide

import (
	"slices"
	"strings"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// sort says what a name is the name of.
type sort int

const (
	partName   sort = iota // a part of a rig, lines and people included
	rigName                // a rig of the file
	copyName               // what an "include" calls its copy
	modelName              // a model of a kind of part
	ruleName               // a rule of the linter
	policyName             // house rules
	fileName               // a file that is used
)

// mention is one place where a name is written.
type mention struct {
	span source.Span
	sort sort
	name string
	// kind is that of the parts that a model is for.
	kind string
	// rig is the rig whose part is meant, or shared: of what stands before the first
	// rig; elsewhere for a part of another file.
	rig int
	// whole is the name of a part in the rig that it is written in, with those of the
	// copies that it is of: "low.litter"; in is that rig, or shared.
	whole string
	in    int
	// declares says that the name is given here.
	declares bool
	// vague says that the statement could not be read, so that the word may be no name.
	vague bool
}

const elsewhere = -2

// all gives every mention of the document, in file order.
func (d *Document) all() []mention {
	d.names.Do(func() {
		c := &collector{doc: d, rigs: map[string]int{}, copies: map[copyIn]int{}}
		c.includes()
		for _, st := range d.Tree.Statements {
			c.rig = d.rigAt(st.Span.Start)
			c.statement(st.Body)
		}
		slices.SortStableFunc(c.list, func(a, b mention) int { return a.span.Start - b.span.Start })
		d.mentions = c.list
	})
	return d.mentions
}

// mentionAt gives the name that a place touches.
func (d *Document) mentionAt(offset int) (m mention, ok bool) {
	for _, m := range d.all() {
		if m.span.Start <= offset && offset <= m.span.End {
			return m, true
		}
	}
	return mention{}, false
}

// collector gathers the mentions of a document.
type collector struct {
	doc *Document
	// rig is the one whose statements are read.
	rig  int
	list []mention
	// rigs are the rigs by their names, copies what each "include" copies.
	rigs   map[string]int
	copies map[copyIn]int
	// copied is the copy whose "include" is read, after its name.
	copied *copyIn
}

type copyIn struct {
	rig  int
	name string
}

// includes notes what the copies of the document are copies of.
func (c *collector) includes() {
	for i, r := range c.doc.Model.Rigs {
		if _, taken := c.rigs[r.Name]; !taken {
			c.rigs[r.Name] = i
		}
	}
	for _, st := range c.doc.Tree.Statements {
		if body, ok := st.Body.(*syntax.Include); ok {
			of, known := c.rigs[body.Rig.Text]
			if !known {
				of = elsewhere
			}
			c.copies[copyIn{c.doc.rigAt(st.Span.Start), body.As.Text}] = of
		}
	}
}

func (c *collector) add(m mention) {
	if m.name != "" {
		c.list = append(c.list, m)
	}
}

func (c *collector) statement(body syntax.Body) {
	switch b := body.(type) {
	case *syntax.Use:
		c.add(mention{span: b.Path.Span, sort: fileName, name: b.Path.Value, rig: shared})
	case *syntax.Rig:
		c.add(mention{span: b.Name.Span, sort: rigName, name: b.Name.Text, rig: shared, declares: true})
	case *syntax.Include:
		c.include(b)
	case *syntax.Join:
		c.part(&b.A, false)
		c.part(&b.B, false)
	case *syntax.Part:
		c.part(&b.Name, true)
		c.model(b.Model, b.Kind.Text, false)
		c.part(b.On, false)
		c.clauses(b.Clauses)
	case *syntax.Stock:
		c.model(&b.Model, b.Kind.Text, true)
	case *syntax.Reeve:
		c.reeve(b)
	case *syntax.Expect:
		c.part(b.Of, false)
		c.part(b.By, false)
		c.rule(b.Rule)
	case *syntax.Accept:
		c.rule(&b.Rule)
		c.part(b.At, false)
	case *syntax.RuleSetting:
		c.rule(&b.Rule)
	case *syntax.Policy:
		c.add(mention{span: b.Name.Span, sort: policyName, name: b.Name.Text, rig: shared, declares: true})
	case *syntax.Bad:
		for _, w := range b.Names {
			c.add(mention{span: w.Span, sort: partName, name: w.Text, rig: c.rig, whole: w.Text, in: c.rig, vague: true})
		}
	}
}

func (c *collector) include(b *syntax.Include) {
	of, known := c.rigs[b.Rig.Text]
	if !known {
		of = elsewhere
	}
	c.add(mention{span: b.Rig.Span, sort: rigName, name: b.Rig.Text, rig: shared})
	c.add(mention{span: b.As.Span, sort: copyName, name: b.As.Text, rig: c.rig, declares: true})
	here := c.rig
	c.rig, c.copied = of, &copyIn{here, b.As.Text}
	for i := range b.With {
		c.part(&b.With[i].Part, false)
		c.clauses(b.With[i].Clauses)
	}
	for i := range b.Without {
		c.part(&b.Without[i], false)
	}
	c.rig, c.copied = here, nil
}

func (c *collector) reeve(b *syntax.Reeve) {
	c.part(&b.Rope, false)
	for i, n := range b.Nodes {
		if !n.IsTail() {
			c.part(&b.Nodes[i].Name, false)
		}
		c.clauses(n.Clauses)
		c.model(n.Knot, "knot", false)
	}
}

// clauses takes the parts that clauses name.
func (c *collector) clauses(list []syntax.ClauseUse) {
	for _, use := range list {
		clause, _ := syntax.ClauseNamed(use.Word.Text)
		if clause.Shape == syntax.Name || clause.Shape == syntax.MaybeName {
			c.part(use.Name, false)
		}
	}
}

// part takes the name of a part. Of "low.litter" each word is a name of its own: the
// copy's, and that of the part in the rig that it is a copy of.
func (c *collector) part(w *syntax.Word, declares bool) {
	if w == nil {
		return
	}
	words := strings.Split(w.Text, ".")
	written := strings.Split(c.doc.File.Slice(w.Span), ".")
	if len(words) != len(written) {
		words, written = []string{w.Text}, []string{c.doc.File.Slice(w.Span)}
	}
	rig, at := c.rig, w.Span.Start
	in, whole := c.rig, w.Text
	if c.copied != nil {
		in, whole = c.copied.rig, c.copied.name+"."+whole
	}
	for i, word := range words {
		span := source.Span{Start: at, End: at + len(written[i])}
		at = span.End + 1
		if i == len(words)-1 {
			c.add(mention{span: span, sort: partName, name: word, rig: rig, whole: whole, in: in, declares: declares})
			return
		}
		of, known := c.copies[copyIn{rig, word}]
		if !known {
			of, known = c.copies[copyIn{shared, word}]
		}
		if !known {
			of = elsewhere
		}
		c.add(mention{span: span, sort: copyName, name: word, rig: rig})
		rig = of
	}
}

func (c *collector) model(w *syntax.Word, kind string, declares bool) {
	if w != nil {
		c.add(mention{span: w.Span, sort: modelName, name: w.Text, kind: kind, rig: shared, declares: declares})
	}
}

func (c *collector) rule(w *syntax.Word) {
	if w != nil {
		c.add(mention{span: w.Span, sort: ruleName, name: w.Text, rig: shared})
	}
}
