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

// unheld makes the finding about a rig that nothing holds, hands off: its places and
// names, and the capture that mends it; ok is false where it is held, where the house
// allows its drop, or where it is said already why the rig does not do its job. The rule
// gives it its message.
func unheld(p *lint.Pass) (d diag.Diagnostic, severity diag.Severity, ok bool) {
	res := p.Result
	if p.Explained() || p.Keeps(res.Released) || res.Status != solve.OK && res.Status != solve.NoHaul {
		return d, 0, false
	}
	d = diag.Diagnostic{Place: p.Rig.NamePlace, Also: lint.NamesIn(res.Released.Sinking)}
	if len(d.Also) > 0 {
		d.Subject = d.Also[0]
		d.Place = p.OnRope(p.Rig.Part(d.Subject))
	}
	if main := res.Main(); main != nil {
		d.Place = p.OnRope(main.Hauler)
	}
	if limit := p.DropLimit(); p.Allowed(res.Released) != "" {
		d.Related = limit.Related()
	}
	return d, hazard(p, res.Released.Sinking), true
}

// offerCapture adds the fix that makes a bend hold, proved for the running rule, and
// places the finding there.
func offerCapture(p *lint.Pass, d *diag.Diagnostic) {
	c := capture(p, *d)
	if c == nil {
		return
	}
	end := c.node.Place.Span.End
	d.Place = c.node.Place.File.At(source.Span{Start: end, End: end})
	d.Also = append(d.Also, c.node.Part.Name)
	if c.proved {
		name := lint.NameOf(c.node.Part)
		d.Fixes = []diag.Fix{{Title: "let " + name + " hold: write " + name + " (holds)",
			Gives: "hands off, the load is held", Edits: []diag.Edit{c.edit}}}
	}
}

// released says what happens when everybody who hauls lets go; where nobody does, as the
// rig is.
func released(p *lint.Pass) string {
	stay := p.Result.Released
	hauls := p.Result.Hauls()
	if len(hauls) == 0 {
		return lint.Fall(p.Rig, stay, "")
	}
	if len(hauls) > 3 { // more names than a sentence bears
		return "hands off, " + lint.Fall(p.Rig, stay, "")
	}
	var names []string
	for _, ph := range hauls {
		names = append(names, lint.NameOf(ph.Hauler))
	}
	let := " let go"
	if len(names) == 1 {
		let = " lets go"
	}
	return lint.Fall(p.Rig, stay, "when "+lint.List(names)+let)
}

// ofHouse ends a sentence about a drop with what the house allows, if it allows any.
func ofHouse(p *lint.Pass) string {
	if p.DropLimit() == nil {
		return ""
	}
	return p.Allowed(p.Result.Released)
}

// candidate is a bend that can be made a capture.
type candidate struct {
	rope *model.Rope
	at   int
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
		if o, ok := p.Look(p.Holding(c.rope, c.at)); ok && !holdsAsWell(p, o) {
			continue
		}
		t, ok := p.Try(c.edit)
		if !ok || !holdsAsWell(p, t.Outlook) {
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

// holdsAsWell says whether a rig holds the load, hands off, and is otherwise as it is.
func holdsAsWell(p *lint.Pass, o *lint.Outlook) bool {
	return o.Status == p.Result.Status && o.Compare(p) == 0 && o.Released() == solve.Held
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
				fixed = append(fixed, candidate{r, i, n, lint.LetHold(r, i), false})
			default:
				moving = append(moving, candidate{r, i, n, lint.LetHold(r, i), false})
			}
		}
	}
	return append(fixed, moving...)
}
