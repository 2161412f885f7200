package ide

import (
	"slices"
	"strings"
	"sync"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/syntax"
)

// form is the shape of a statement, or of a piece of one. Follow goes through it from
// the token at on: where the tokens end, it offers what may stand there; where the form
// ends first, it goes on with next. A form may have several ways; all are followed.
type form interface {
	follow(c *completion, at int, next func(at int))
}

// lit is one word.
type lit string

func (f lit) follow(c *completion, at int, next func(int)) {
	switch {
	case at == len(c.before):
		c.add(Item{Label: string(f), Sort: WordItem, Doc: clauseText(string(f))})
	case c.before[at].Text == string(f):
		next(at + 1)
	}
}

// name is a word that something has as its name; the function offers which.
type name func(c *completion)

func (f name) follow(c *completion, at int, next func(int)) {
	switch {
	case at == len(c.before):
		f(c)
	case c.before[at].Kind == syntax.WordToken && !syntax.Reserved(c.before[at].Text):
		next(at + 1)
	}
}

// kindForm is a kind of part.
type kindForm struct{}

func (kindForm) follow(c *completion, at int, next func(int)) {
	if at < len(c.before) {
		next(at + 1)
		return
	}
	for _, k := range syntax.Kinds() {
		c.add(Item{Label: k.Word, Sort: WordItem, Detail: k.Meaning})
	}
}

// text is a text in quotes, for which nothing is offered.
type text struct{}

func (text) follow(c *completion, at int, next func(int)) {
	if at < len(c.before) && c.before[at].Kind == syntax.StringToken {
		next(at + 1)
	}
}

// figure is a number, or a range, with a unit of some dimensions.
type figure []quantity.Dimension

func (f figure) follow(c *completion, at int, next func(int)) {
	if after, open := c.amount(at, f); !open && after > at {
		next(after)
	}
}

// ratio is "A:B" or a plain number.
type ratio struct{}

func (ratio) follow(c *completion, at int, next func(int)) {
	number := func(i int) bool { return i < len(c.before) && c.before[i].Kind == syntax.NumberToken }
	if !number(at) {
		return
	}
	if at++; at < len(c.before) && c.before[at].Text == ":" {
		if !number(at + 1) {
			return
		}
		at += 2
	}
	next(at)
}

// clausesForm are clauses of a part of any kind, as "with" changes them.
type clausesForm struct{}

func (clausesForm) follow(c *completion, at int, next func(int)) {
	var allowed []string
	for _, clause := range syntax.Clauses() {
		allowed = append(allowed, clause.Word)
	}
	for at < len(c.before) {
		clause, known := syntax.ClauseNamed(c.before[at].Text)
		if !known {
			break
		}
		after, open := c.clause(clause, at+1)
		if open {
			return
		}
		at = after
	}
	if at == len(c.before) {
		c.clauses(at, allowed, false)
	}
	next(at)
}

// seq is forms one after another, alt one of several, maybe one that may lack, some
// one that may stand again and again.
type (
	seq   []form
	alt   []form
	maybe struct{ form }
	some  struct{ form }
)

func (f seq) follow(c *completion, at int, next func(int)) {
	if len(f) == 0 {
		next(at)
		return
	}
	f[0].follow(c, at, func(at int) { f[1:].follow(c, at, next) })
}

func (f alt) follow(c *completion, at int, next func(int)) {
	for _, one := range f {
		one.follow(c, at, next)
	}
}

func (f maybe) follow(c *completion, at int, next func(int)) {
	f.form.follow(c, at, next)
	next(at)
}

func (f some) follow(c *completion, at int, next func(int)) {
	f.form.follow(c, at, func(after int) {
		if after > at {
			f.follow(c, after, next)
		}
	})
	next(at)
}

// ofIncluded is a form in which names are those of the rig that is included.
type ofIncluded struct{ form }

func (f ofIncluded) follow(c *completion, at int, next func(int)) {
	if r := c.doc.rigNamed(c.word(1)); r != nil {
		c.rigs = []*model.Rig{r}
	}
	f.form.follow(c, at, next)
}

// lits is one of some words.
func lits(words ...string) alt {
	var f alt
	for _, w := range words {
		f = append(f, lit(w))
	}
	return f
}

// phrase is words one after another.
func phrase(words string) seq {
	var f seq
	for _, w := range strings.Fields(words) {
		f = append(f, lit(w))
	}
	return f
}

// formOf gives the form of a statement that is no part, after its keyword; nil for one
// that has none.
func formOf(keyword string) form { return forms()[keyword] }

var forms = sync.OnceValue(func() map[string]form {
	newName := name(func(*completion) {})
	part := name(func(c *completion) { c.parts(only(anyPart)) })
	claimRule := name(func(c *completion) { c.rules(true) })
	return map[string]form{
		"rig":    seq{newName, maybe{text{}}},
		"policy": seq{newName, maybe{text{}}},
		"use":    text{},
		"include": seq{name((*completion).rigNames), lit("as"), newName,
			ofIncluded{some{alt{seq{lit("with"), part, clausesForm{}}, seq{lit("without"), part}}}}},
		"join":    seq{part, lit("to"), part},
		"expect":  claims(part, claimRule),
		"accept":  seq{claimRule, maybe{seq{lit("at"), part}}, lit("because"), text{}},
		"units":   units(),
		"require": requirements(),
		"rule":    seq{name(func(c *completion) { c.rules(false) }), lits("error", "warning", "advice", "off")},
	}
})

// claims is what may follow "expect".
func claims(part, rule name) form {
	compare := maybe{lits("over", "under")}
	by := maybe{seq{lit("by"), name(func(c *completion) { c.parts(only(ofKind(model.Hauler))) })}}
	mayFail := name(func(c *completion) {
		c.parts(only(func(p *model.Part) bool { return !p.Kind.IsWeight() && !p.Kind.IsPerson() }))
	})
	force, length := figure{quantity.Force}, figure{quantity.Length}
	held := some{alt{phrase("when released"), phrase("while hauling"), seq{lit("without"), mayFail}}}
	return alt{
		seq{maybe{lit("actual")}, lit("advantage"), compare, ratio{}, by},
		seq{lit("pull"), compare, force, maybe{phrase("per person")}, by},
		seq{phrase("load on"), part, compare, alt{ratio{}, figure{quantity.Force, quantity.None}}, by},
		seq{lit("factor"), maybe{seq{lit("of"), part}}, compare, figure{quantity.None}, by},
		seq{lit("travel"), compare, length, lit("per"), length, by},
		seq{lit("class"), lits("simple", "compound", "complex"), by},
		seq{lit("stroke"), compare, length, by},
		seq{phrase("lower hand"), compare, force},
		seq{lit("finding"), rule, maybe{seq{lit("at"), part}}},
		seq{maybe{lit("not")}, lit("held"), held},
	}
}

// units is a unit of force, one of length, or both.
func units() form {
	offer := func(of ...quantity.Dimension) name {
		return func(c *completion) {
			for _, u := range quantity.Units() {
				if slices.Contains(of, u.Dimension) {
					c.add(Item{Label: u.Word, Sort: UnitItem, Detail: unitText(u.Word)})
				}
			}
		}
	}
	either := offer(quantity.Force, quantity.Length)
	return seq{either, maybe{either}}
}

// requirements is what may follow "require".
func requirements() form {
	var f alt
	for _, fig := range syntax.Figures() {
		compare := "under"
		if fig.Bound == syntax.Floor {
			compare = "over"
		}
		one := phrase(fig.Name)
		if fig.Bound != syntax.Band {
			one = append(one, maybe{lit(compare)})
		}
		one = append(one, figure(fig.Dimensions))
		if fig.ForKind {
			one = append(one, maybe{seq{lit("for"), kindForm{}}})
		}
		if fig.PerPerson {
			one = append(one, maybe{phrase("per person")})
		}
		f = append(f, one)
	}
	return f
}
