package house

import (
	_ "embed"
	"sync"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// UsualName is what the usual rules are called where a place in them is shown. No file
// of a user has this name.
const UsualName = "built-in/usual.rig"

//go:embed usual.rig
var usualText string

// usual reads the usual rules once.
var usual = sync.OnceValue(func() []*model.Policy {
	file, _ := resolve.File(syntax.Parse(source.New(UsualName, usualText)))
	return file.Policies
})

// Usual gives the policies that hold where nobody says otherwise. They are shared:
// nobody may change them.
func Usual() []*model.Policy { return usual() }

// Rules are the house rules in force for a file.
type Rules struct {
	lines []*Line
	// limits has the line in force for each figure, severities for each rule.
	limits     map[Figure]*Line
	severities map[string]*Line
}

// Figure is what one line requires: a figure of lang/syntax, of a kind of part or of all,
// of a team or of each person.
type Figure struct {
	Name string
	// Kind is the kind of part that it is asked of; empty for all.
	Kind      model.Kind
	PerPerson bool
}

// Line is one line of a policy.
type Line struct {
	// Policy is the policy that it stands in.
	Policy *model.Policy
	// Require or Rule is what it says; the other is nil.
	Require *model.Require
	Rule    *model.RuleSetting
	Place   source.Place
	// Over is the line that took its place; nil while it is in force.
	Over *Line
}

// Of puts policies together: of two lines about the same, the later one is in force.
func Of(layers ...[]*model.Policy) *Rules {
	r := &Rules{limits: map[Figure]*Line{}, severities: map[string]*Line{}}
	for _, policies := range layers {
		for _, p := range policies {
			r.add(p)
		}
	}
	return r
}

func (r *Rules) add(p *model.Policy) {
	for _, q := range p.Requires {
		line := &Line{Policy: p, Require: q, Place: q.Place}
		f := FigureOf(q)
		if before := r.limits[f]; before != nil {
			before.Over = line
		}
		r.limits[f] = line
		r.lines = append(r.lines, line)
	}
	for _, q := range p.Rules {
		line := &Line{Policy: p, Rule: q, Place: q.Place}
		if before := r.severities[q.Rule.Text]; before != nil {
			before.Over = line
		}
		r.severities[q.Rule.Text] = line
		r.lines = append(r.lines, line)
	}
}

// FigureOf gives what a line requires.
func FigureOf(q *model.Require) Figure {
	f := Figure{Name: q.Subject.Text, PerPerson: q.PerPerson}
	if q.For != nil {
		f.Kind = model.Kind(q.For.Text)
	}
	return f
}

// Lines gives every line of every policy in their order, those that another took the
// place of included.
func (r *Rules) Lines() []*Line { return r.lines }

// Usual says whether the line is one of the usual rules.
func (l *Line) Usual() bool { return l.Place.File != nil && l.Place.File.Name == UsualName }

// Source says where the line's figure comes from, or why the rule is set so; empty if
// nothing says.
func (l *Line) Source() string {
	if l.Require != nil {
		return l.Require.Source
	}
	return l.Rule.Source
}

// Severity gives how grave a finding of a rule is, given how grave it is without a
// house rule; ok is false where the rule is off.
func (r *Rules) Severity(rule string, without diag.Severity) (severity diag.Severity, ok bool) {
	line := r.severities[rule]
	if line == nil {
		return without, true
	}
	return diag.SeverityNamed(line.Rule.Severity.Text)
}
