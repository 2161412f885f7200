package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve/lp"
)

var tiedBetweenFixed = &lint.Rule{
	Name:     "tied-between-fixed",
	Severity: diag.Error,
	Summary:  "a line all of whose nodes are fixed, so that it can never carry anything",
	Check:    checkTiedBetweenFixed,
}

// checkTiedBetweenFixed passes by a line that catches something once a part is lost, such
// as a tie-back from one anchor to another.
func checkTiedBetweenFixed(p *lint.Pass) {
	for _, r := range p.Rig.Ropes {
		if r.Broken || !fixedAll(r) || carries(p.Result, r) || backsUp(p, r) {
			continue
		}
		first, last := r.Nodes[0], r.Nodes[len(r.Nodes)-1]
		d := diag.Diagnostic{
			Place: r.Place, Subject: r.Line.Name,
			Message: fmt.Sprintf("%s is tied between %s and %s, which are both fixed: it never carries anything",
				lint.NameOf(r.Line), lint.Clipped(first.Name()), lint.Clipped(last.Name())),
		}
		if len(r.Nodes) > 2 || r.Loop {
			d.Message = fmt.Sprintf("%s touches only what is fixed, from %s to %s: it never carries anything",
				lint.NameOf(r.Line), lint.Clipped(first.Name()), lint.Clipped(last.Name()))
		}
		for _, n := range r.Nodes {
			if n.Part.Name != r.Line.Name {
				d.Also = append(d.Also, n.Part.Name)
			}
		}
		d.Fixes = hangOn(p, r, &d)
		p.Report(d)
	}
}

// fixedAll says whether every node of a rope is a fixed part.
func fixedAll(r *model.Rope) bool {
	for _, n := range r.Nodes {
		if n.Part == nil || !n.Part.Fixed() {
			return false
		}
	}
	return len(r.Nodes) > 0
}

// hangOn offers to let an end of the line hang on the line alone, where that end is said
// to be on something fixed as well, and then the line carries it.
func hangOn(p *lint.Pass, r *model.Rope, d *diag.Diagnostic) []diag.Fix {
	for _, n := range []model.Node{r.Nodes[len(r.Nodes)-1], r.Nodes[0]} {
		edit, ok := p.Unclip(n.Part)
		if !ok {
			continue
		}
		t, ok := p.Try(edit)
		if !ok || t.Status != p.Result.Status || t.Compare(p) != 0 || lint.Weaker(t.Released(), p.Result.Released.Answer) {
			continue
		}
		most := lp.Num{}
		for _, ph := range t.Result.Phases {
			most = lp.Max(most, ph.Parts[t.Rig.Part(r.Line.Name).Index].Most())
		}
		if most.IsZero() || !p.Proves(t, *d) {
			continue
		}
		name := lint.NameOf(n.Part)
		d.Message += fmt.Sprintf("; without \"on %s\" %s hangs on it", lint.NameOf(n.Part.On), name)
		return []diag.Fix{{Title: "let " + name + " hang on " + lint.NameOf(r.Line) + ": take out on " + lint.NameOf(n.Part.On),
			Gives: lint.NameOf(r.Line) + " carries " + p.Force(most) + p.WithoutFriction(), Edits: []diag.Edit{edit}}}
	}
	return nil
}
