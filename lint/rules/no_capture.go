package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/solve"
)

var noCapture = &lint.Rule{
	Name:     "no-capture",
	Severity: diag.Advice,
	Summary:  "hands off, the load falls or jams; a warning where people hang on it",
	Check:    checkNoCapture,
}

// checkNoCapture asks the whistle test: everyone lets go.
func checkNoCapture(p *lint.Pass) {
	res := p.Result
	if p.Explained() || res.Released.LoadsStay() || res.Status != solve.OK && res.Status != solve.NoHaul {
		return
	}
	sinking := res.Released.Sinking
	d := diag.Diagnostic{Place: p.Rig.NamePlace, Also: lint.NamesIn(sinking)}
	if len(d.Also) > 0 {
		d.Subject = d.Also[0]
		d.Place = p.OnRope(p.Rig.Part(d.Subject))
	}
	if main := res.Main(); main != nil {
		d.Place = p.OnRope(main.Hauler)
		d.Message = released(p)
	} else {
		d.Message = lint.Fall(p.Rig, res.Released, "") + ": nothing holds the rope"
	}
	d.Severity = diag.Advice
	if peopleOn(sinking) {
		d.Severity = diag.Warning
	}
	if c := capture(p, d); c != nil {
		end := c.node.Place.Span.End
		d.Place = c.node.Place.File.At(source.Span{Start: end, End: end})
		d.Also = append(d.Also, c.node.Part.Name)
		if c.proved {
			name := lint.NameOf(c.node.Part)
			d.Fixes = []diag.Fix{{Title: "let " + name + " hold: write " + name + " (holds)",
				Gives: "hands off, the load is held", Edits: []diag.Edit{c.edit}}}
		}
	}
	p.ReportAs(d.Severity, d)
}

// released says what happens when everybody who hauls lets go.
func released(p *lint.Pass) string {
	hauls := p.Result.Hauls()
	if len(hauls) > 3 { // more names than a sentence bears
		return "hands off, " + lint.Fall(p.Rig, p.Result.Released, "")
	}
	var names []string
	for _, ph := range hauls {
		names = append(names, lint.NameOf(ph.Hauler))
	}
	let := " let go"
	if len(names) == 1 {
		let = " lets go"
	}
	return lint.Fall(p.Rig, p.Result.Released, "when "+lint.List(names)+let)
}

// peopleOn says whether people hang on bodies: a load with people, or a hauler
// who hangs from what is raised.
func peopleOn(list []*solve.Body) bool {
	for _, b := range list {
		for _, part := range b.Parts {
			if part.Kind == model.Hauler {
				return true
			}
			if n := part.Values.People; n != nil && n.High.Sign() > 0 {
				return true
			}
		}
	}
	return false
}

// candidate is a bend that can be made a capture.
type candidate struct {
	node model.Node
	edit diag.Edit
	// proved says that nothing else stands against it, a claim of the author's
	// least of all.
	proved bool
}

// capture finds the bend at which a capture holds the load, hands off, with the
// least between the two; nil if there is none.
func capture(p *lint.Pass, d diag.Diagnostic) *candidate {
	var first *candidate
	for _, c := range bends(p.Rig) {
		t, ok := p.Try(c.edit)
		if !ok || t.Result.Status != p.Result.Status || t.Result.Released.Answer != solve.Held || t.Compare(p) != 0 {
			continue
		}
		if c.proved = p.Proves(t, d); c.proved {
			return &c
		}
		if first == nil {
			first = &c
		}
	}
	return first
}

// bends lists the bends of a rig whose hardware can hold: fixed ones before moving
// ones, and along each rope from its loaded end on.
func bends(rig *model.Rig) []candidate {
	var fixed, moving []candidate
	for _, r := range rig.Ropes {
		for i, n := range r.Nodes {
			switch {
			case n.Role != model.Bend || n.Part == nil || !slices.Contains(syntax.ClausesOf(string(n.Part.Kind)), "holds"):
			case n.Part.Fixed():
				fixed = append(fixed, candidate{node: n, edit: lint.LetHold(r, i)})
			default:
				moving = append(moving, candidate{node: n, edit: lint.LetHold(r, i)})
			}
		}
	}
	return append(fixed, moving...)
}
