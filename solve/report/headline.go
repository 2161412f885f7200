package report

import (
	"fmt"
	"strings"

	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// The columns of a result line: what friction leaves, and what must be pulled.
const (
	frictionColumn = 24
	pullColumn     = 54
)

// headline writes the result of a haul: "3 : 1 simple   2.77 with friction   pull
// 0.64 kN, 3 people" on one line if it fits, else the pull below.
func (t *text) headline(p *solve.Phase) {
	if p.Status != solve.OK {
		t.sentence(outcome(p))
		return
	}
	var l page.Line
	l.Put(0, head(p), page.Strong)
	column := max(frictionColumn, l.End()+3)
	friction, pull := actual(p), t.pull(p)
	if friction == "" {
		t.wrapped(l, column, pull)
		return
	}
	if at := max(pullColumn, column+page.Width(friction)+3); at+page.Width(pull) <= page.Columns {
		l.Put(column, friction, page.Plain)
		l.Put(at, pull, page.Plain)
		t.line(l)
		return
	}
	t.wrapped(l, column, friction)
	t.wrapped(page.Line{}, column, pull)
}

// wrapped writes a line with a text from a column on, which goes on below.
func (t *text) wrapped(l page.Line, column int, words string) {
	for _, part := range page.Wrap(words, page.Columns-column) {
		l.Put(column, part, page.Plain)
		t.line(l)
		l = page.Line{}
	}
}

// head gives the advantage of a haul and how it is made: "3 : 1 simple".
func head(p *solve.Phase) string {
	if p.Ideal == nil {
		return "raises; no single ratio"
	}
	return strings.TrimSpace(ratio(*p.Ideal) + " " + string(p.Class))
}

// pull says what the haulers must pull in a phase, and how many people that takes.
func (t *text) pull(p *solve.Phase) string {
	switch {
	case p.Pull == nil:
		return "pull unknown"
	case p.Pull.IsZero():
		return "no pull needed"
	}
	pull := pullOf(p)
	s := t.scale.in(p)
	words := "pull "
	if t.scale.weighs() && otherWeights(p) {
		words += s.shareForce(pull) + ", "
	}
	words += s.sayForce(pull)
	if idealOnly(p) {
		words += " (ideal)"
	}
	return words + t.people(p, pull)
}

// pullOf gives the pull in fractions of the load: with friction where that is known.
func pullOf(p *solve.Phase) solve.Force {
	if p.Actual.Known() {
		return p.Actual.Pull
	}
	return solve.Force{Value: p.Pull, Low: p.Pull, High: p.Pull}
}

// otherWeights says whether the pull is not what the advantage alone makes of the
// load: other weights take part.
func otherWeights(p *solve.Phase) bool {
	return p.Ideal == nil || p.Pull.Mul(*p.Ideal).Cmp(lp.Int(1)) != 0
}

// people says how many people the pull takes where the rig says what each pulls,
// else each one's part of it where their number is one number.
func (t *text) people(p *solve.Phase, pull solve.Force) string {
	stated := p.Hauler.Values.People
	if needed, ok := t.res.PeopleNeeded(p); ok {
		words := fmt.Sprintf(", %d people", needed)
		if needed == 1 {
			words = ", 1 person"
		}
		if idealOnly(p) {
			words = ", at least" + words[1:]
		}
		if stated != nil && lp.FromRat(stated.Low).Cmp(lp.Int(needed)) < 0 {
			words += "; " + page.Clean(p.Hauler.Name) + " has " + stated.Written
		}
		return words
	}
	if stated == nil || stated.IsRange() || !stated.Low.IsInt() || stated.Low.Num().Int64() < 2 || !t.scale.weighs() {
		return ""
	}
	n := lp.FromRat(stated.Low)
	most := ""
	if pull.Ranges() {
		most = "up to "
	}
	return ", " + most + t.scale.say(pull.Most().Quo(n)) + " for each of " + number(n)
}
