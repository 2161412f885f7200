package ide

import (
	"slices"
	"strings"

	"fairlead/lang/quantity"
	"fairlead/lang/syntax"
)

// part offers what goes on with "KIND NAME [MODEL] [on PART] {CLAUSE}".
func (c *completion) part(kind string) {
	if len(c.before) == 1 {
		c.newNames()
		return
	}
	at := 2
	if t := c.word(2); t != "" && !syntax.Reserved(t) && c.before[2].Kind == syntax.WordToken {
		at = 3 // the model
	}
	if len(c.before) == 2 {
		c.models(kind)
	}
	c.clauses(at, syntax.ClausesOf(kind), true)
}

// stock offers what goes on with "stock KIND MODEL {CLAUSE}".
func (c *completion) stock() {
	switch len(c.before) {
	case 1:
		for _, k := range syntax.Kinds() {
			c.add(Item{Label: k.Word, Sort: WordItem, Detail: k.Meaning, Doc: kindText(k.Word)})
		}
	case 2: // a new name
	default:
		c.clauses(3, syntax.ClausesOf(c.word(1)), false)
	}
}

// newNames offers the names that the rig uses and nothing has.
func (c *completion) newNames() {
	declared := map[string]bool{}
	for _, m := range c.doc.all() {
		if m.declares {
			declared[m.name] = true
		}
	}
	for _, m := range c.doc.all() {
		if m.sort == partName && !declared[m.name] && !m.vague && m.span != c.typed && c.ofHere(m.rig) {
			c.add(Item{Label: m.name, Sort: PartItem, Detail: "named here, without a statement"})
		}
	}
}

// ofHere says whether a rig, by its index or shared, is one that the place is of.
func (c *completion) ofHere(rig int) bool {
	return rig == shared || rig >= 0 && rig < len(c.doc.Model.Rigs) && slices.Contains(c.rigs, c.doc.Model.Rigs[rig])
}

// models offers the models of a kind: those of the file, then the built-in ones.
func (c *completion) models(kind string) {
	for _, s := range c.doc.models() {
		if s.Kind.Text != kind {
			continue
		}
		var values []string
		for _, use := range s.Clauses {
			values = append(values, s.Place.File.Slice(use.Span))
		}
		c.add(Item{Label: s.Model.Text, Sort: ModelItem, Detail: strings.Join(values, ", "), Doc: modelText(s), rank: 1})
	}
}

// clauses goes through the clauses that begin at a token, and offers what is missing of
// the last one, then those that are not there. With on, "on PART" may stand among them.
func (c *completion) clauses(at int, allowed []string, on bool) {
	used := map[string]bool{}
	for at < len(c.before) {
		word := c.before[at].Text
		used[word] = true
		clause, known := syntax.ClauseNamed(word)
		switch {
		case word == "on":
			if at+1 == len(c.before) {
				c.carriers()
				return
			}
			at += 2
		case !known:
			at++
		default:
			next, open := c.clause(clause, at+1)
			if open {
				return
			}
			at = next
		}
	}
	for _, word := range allowed {
		if used[word] {
			continue
		}
		clause, _ := syntax.ClauseNamed(word)
		c.add(Item{Label: word, Sort: ClauseItem, Detail: clause.Example, Doc: clauseText(word)})
	}
	if on && !used["on"] {
		c.words("on")
	}
}

// clause goes through what follows the word of a clause. It gives the token after it;
// open says that the clause ends in the middle, so that nothing else may follow.
func (c *completion) clause(clause syntax.Clause, at int) (next int, open bool) {
	end := at == len(c.before)
	switch clause.Shape {
	case syntax.Name, syntax.MaybeName:
		if end {
			c.named(clause.Word)
			return at, clause.Shape == syntax.Name
		}
		if clause.Shape == syntax.Name || !syntax.Reserved(c.before[at].Text) && c.before[at].Kind == syntax.WordToken {
			return at + 1, false
		}
		return at, false
	case syntax.FreeWord:
		return min(at+1, len(c.before)), end
	case syntax.Measure, syntax.Count:
		next, open = c.amount(at, clause.Dimensions)
		if !open && clause.Second != "" {
			if next == len(c.before) {
				c.words(clause.Second)
			} else if c.before[next].Text == clause.Second {
				return c.amount(next+1, clause.Dimensions)
			}
		}
		return next, open
	}
	return at, false
}

// amount goes through "NUMBER [to NUMBER] [UNIT]" and offers the units that fit.
func (c *completion) amount(at int, of []quantity.Dimension) (next int, open bool) {
	number := func(i int) bool { return i < len(c.before) && c.before[i].Kind == syntax.NumberToken }
	if !number(at) {
		return at, at >= len(c.before)
	}
	at++
	ranged := at < len(c.before) && c.before[at].Text == "to" && (number(at+1) || at+1 == len(c.before))
	if ranged {
		if at+1 == len(c.before) {
			return at + 1, true
		}
		at += 2
	}
	if at < len(c.before) {
		if unit, known := quantity.UnitNamed(c.before[at].Text); known && slices.Contains(of, unit.Dimension) {
			at++
		}
		return at, false
	}
	for _, u := range quantity.Units() {
		if slices.Contains(of, u.Dimension) {
			c.add(Item{Label: u.Word, Sort: UnitItem, Detail: unitText(u.Word), rank: -1})
		}
	}
	if !ranged {
		c.words("to")
	}
	return at, !slices.Contains(of, quantity.None)
}
