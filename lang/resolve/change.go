package resolve

import (
	"slices"

	"fairlead/lang/syntax"
)

// change gives the parts what "with" says in place of what their rig says.
func (c *copying) change() {
	said := map[string]map[string]bool{} // by part and clause word
	for _, with := range c.include.With {
		name := with.Part.Text
		l := c.parts[name]
		if slices.ContainsFunc(c.include.Without, func(w syntax.Word) bool { return w.Text == name }) {
			c.report(misplacedClause, with.Part.Span, name, "%s is left out, so that with changes nothing of it", name)
			continue
		}
		switch {
		case l == nil && c.ropes[name] != nil:
			c.report(misplacedClause, with.Part.Span, name,
				"%s has a reeving line but no statement in %s that with could change", name, c.include.Rig.Text)
			continue
		case l == nil:
			c.unknownInBase(with.Part)
			continue
		}
		if said[name] == nil {
			said[name] = map[string]bool{}
		}
		c.apply(l, with, said[name])
	}
}

// apply gives one part the clauses of one "with"; said are the words of those that it
// was given before.
func (c *copying) apply(l *entry, with syntax.Change, said map[string]bool) {
	var taken []syntax.ClauseUse
	kind := l.part().Kind.Text
	for _, use := range with.Clauses {
		word := use.Word.Text
		switch {
		case !slices.Contains(syntax.ClausesOf(kind), word):
			c.report(misplacedClause, use.Span, with.Part.Text, "%s is a %s, which takes no %s", with.Part.Text, kind, word)
		case said[word]:
			c.report(repeatedClause, use.Span, with.Part.Text, "%s: %s stands twice", with.Part.Text, word)
		default:
			said[word] = true
			taken = append(taken, use)
		}
	}
	if len(taken) == 0 {
		return
	}
	replaced := func(word string) bool {
		return slices.ContainsFunc(taken, func(use syntax.ClauseUse) bool {
			return use.Word.Text == word || weighs(use.Word.Text) && weighs(word)
		})
	}
	l.drop(replaced)
	l.changes = append(l.changes, change{c.file, taken})
}

// weighs says whether a clause is one of the two ways to say what a part weighs.
func weighs(word string) bool { return word == "mass" || word == "weight" }
