package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var opposedTeams = &lint.Rule{
	Name:     "opposed-teams",
	Severity: diag.Error,
	Summary:  "a team that raises the load only if another one gives rope meanwhile",
	Check:    checkOpposedTeams,
}

func checkOpposedTeams(p *lint.Pass) {
	if p.Explained() {
		return
	}
	for _, o := range p.Result.Opposed() {
		d := against(p, o)
		d.Fixes = minded(p, o, d)
		if p.Fault() != "" {
			p.Explain(d)
			return // the others are of the same fault
		}
		p.Report(d)
	}
}

// against makes the finding about a haul that others oppose.
func against(p *lint.Pass, o solve.Opposed) diag.Diagnostic {
	who, load := lint.NameOf(o.Haul.Hauler), "the load"
	if p.Result.Reference != nil {
		load = lint.NameOf(p.Result.Reference)
	}
	var names []string
	d := diag.Diagnostic{Place: p.OnRope(o.By[0]), Subject: o.By[0].Name}
	for _, by := range o.By {
		names = append(names, lint.NameOf(by))
		if by != o.By[0] {
			d.Also = append(d.Also, by.Name)
		}
	}
	d.Also = append(d.Also, o.Haul.Hauler.Name)
	give, hold := "gives", "holds"
	if len(names) > 1 {
		give, hold = "give", "hold"
	}
	stuck := who + " raises nothing"
	if jam := o.Haul.Jam; jam != nil && jam.From >= 0 && jam.To >= 0 {
		stuck = fmt.Sprintf("%s is fast between %s and %s", lint.NameOf(jam.Rope.Line),
			lint.Clipped(jam.Rope.Nodes[jam.From].Name()), lint.Clipped(jam.Rope.Nodes[jam.To].Name()))
		d.Also = append(d.Also, jam.Rope.Line.Name)
	}
	how := ""
	if o.Ideal != nil {
		how = " at " + lint.Ratio(*o.Ideal)
	}
	d.Message = fmt.Sprintf("%s raises %s%s only if %s %s rope: while %s %s still, %s",
		who, load, how, lint.List(names), give, lint.List(names), hold, stuck)
	d.Related = []diag.Related{{Place: p.OnRope(o.Haul.Hauler), Message: who + " hauls here"}}
	return d
}

// minded offers to make those who must give rope tenders, who mind it and hold nothing.
func minded(p *lint.Pass, o solve.Opposed, d diag.Diagnostic) []diag.Fix {
	var edits []diag.Edit
	var names, written []string
	for _, by := range o.By {
		of, ok := p.Become(by, model.Tender)
		if !ok {
			return nil
		}
		edits = append(edits, of...)
		names = append(names, lint.NameOf(by))
		written = append(written, "tender "+lint.NameOf(by))
	}
	t, ok := p.Try(edits...)
	if !ok || !t.Mends(p) || !p.Proves(t, d) {
		return nil
	}
	return []diag.Fix{{Title: "let " + lint.List(names) + " mind the rope: write " + lint.List(written),
		Gives: t.Rises(), Edits: edits}}
}
