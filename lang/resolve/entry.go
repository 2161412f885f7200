package resolve

import (
	"slices"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// entry is one statement of a rig as the rig has it: written there, or brought in by
// an "include", with the names that its parts have then.
type entry struct {
	*syntax.Statement
	// file is where its spans lie; of what is brought in, a copy of the file.
	file *source.File
	// work is the file whose models its words mean.
	work *fileWork
	// shared says that it stands before the first rig of its file.
	shared bool
	// copy is the name after "as" that brought it in; empty for the rig's own.
	copy string
	// stranded says that it is a part which something used that the copy leaves out.
	stranded bool
	// changes are the clauses that "with" gave it, each in place of an older one.
	changes []change
}

// change are clauses of one "with", and the file in which they are written.
type change struct {
	file    *source.File
	clauses []syntax.ClauseUse
}

// part gives what the line says of a part; nil if it is of another kind.
func (l *entry) part() *syntax.Part {
	p, _ := l.Body.(*syntax.Part)
	return p
}

// reeve gives what the line says of a rope; nil if it is of another kind.
func (l *entry) reeve() *syntax.Reeve {
	r, _ := l.Body.(*syntax.Reeve)
	return r
}

// clauses gives the clauses of a part, those of its statement first, each with the
// file that it is written in.
func (l *entry) clauses() []change {
	return append([]change{{l.file, l.part().Clauses}}, l.changes...)
}

// clause finds a clause of a part; nil if it has none of that word.
func (l *entry) clause(word string) *syntax.ClauseUse {
	for _, of := range l.clauses() {
		for i := range of.clauses {
			if of.clauses[i].Word.Text == word {
				return &of.clauses[i]
			}
		}
	}
	return nil
}

// drop takes clauses out that a test picks.
func (l *entry) drop(picked func(word string) bool) {
	is := func(c syntax.ClauseUse) bool { return picked(c.Word.Text) }
	body := *l.part()
	body.Clauses = slices.DeleteFunc(slices.Clone(body.Clauses), is)
	l.setBody(&body)
	changes := slices.Clone(l.changes)
	for i := range changes {
		changes[i].clauses = slices.DeleteFunc(slices.Clone(changes[i].clauses), is)
	}
	l.changes = changes
}

// setBody gives the line another body; the statement that was read stays as it is.
func (l *entry) setBody(body syntax.Body) {
	changed := *l.Statement
	changed.Body = body
	l.Statement = &changed
}

// rename writes every name of a part in the line anew: the part's own, what
// it is on, the nodes of a rope and what clauses name. It changes nothing that was
// read.
func (l *entry) rename(name func(string) string) {
	word := func(w syntax.Word) syntax.Word { return syntax.Word{Text: name(w.Text), Span: w.Span} }
	switch body := l.Body.(type) {
	case *syntax.Part:
		l.setBody(renamedPart(body, word))
		l.changes = slices.Clone(l.changes)
		for i := range l.changes {
			l.changes[i].clauses = renamedClauses(l.changes[i].clauses, word)
		}
	case *syntax.Reeve:
		l.setBody(renamedReeve(body, word))
	case *syntax.Bad:
		names := slices.Clone(body.Names)
		for i := range names {
			names[i] = word(names[i])
		}
		l.setBody(&syntax.Bad{Names: names})
	}
}

func renamedPart(p *syntax.Part, word func(syntax.Word) syntax.Word) *syntax.Part {
	renamed := *p
	renamed.Name = word(p.Name)
	if p.On != nil {
		on := word(*p.On)
		renamed.On = &on
	}
	renamed.Clauses = renamedClauses(p.Clauses, word)
	return &renamed
}

// renamedClauses renames the parts that clauses name; the word after "material" is
// none.
func renamedClauses(clauses []syntax.ClauseUse, word func(syntax.Word) syntax.Word) []syntax.ClauseUse {
	renamed := slices.Clone(clauses)
	for i, c := range renamed {
		if namesPart(c) {
			name := word(*c.Name)
			renamed[i].Name = &name
		}
	}
	return renamed
}

// namesPart says whether a clause names a part.
func namesPart(c syntax.ClauseUse) bool {
	table, _ := syntax.ClauseNamed(c.Word.Text)
	return c.Name != nil && table.Shape != syntax.FreeWord
}

func renamedReeve(r *syntax.Reeve, word func(syntax.Word) syntax.Word) *syntax.Reeve {
	renamed := *r
	renamed.Rope = word(r.Rope)
	renamed.Nodes = slices.Clone(r.Nodes)
	for i, n := range renamed.Nodes {
		if !n.IsTail() {
			renamed.Nodes[i].Name = word(n.Name)
		}
		renamed.Nodes[i].Clauses = renamedClauses(n.Clauses, word)
	}
	return &renamed
}

// mentions gives every name in the line but the part's or rope's own.
func (l *entry) mentions() []syntax.Word {
	var list []syntax.Word
	named := func(clauses []syntax.ClauseUse) {
		for _, c := range clauses {
			if namesPart(c) {
				list = append(list, *c.Name)
			}
		}
	}
	switch body := l.Body.(type) {
	case *syntax.Part:
		if body.On != nil {
			list = append(list, *body.On)
		}
		for _, of := range l.clauses() {
			named(of.clauses)
		}
	case *syntax.Reeve:
		for _, n := range body.Nodes {
			if !n.IsTail() {
				list = append(list, n.Name)
			}
			named(n.Clauses)
		}
	}
	return list
}
