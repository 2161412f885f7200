package rules

import (
	"cmp"
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var hitchOnWrongStrand = &lint.Rule{
	Name:     "hitch-on-wrong-strand",
	Severity: diag.Error,
	Summary:  "a hitch or clamp that grips the wrong strand: on another one, the rig does its job",
	Check:    checkHitchOnWrongStrand,
}

// move is a hitch, and a strand into which it may be moved.
type move struct {
	rope *model.Rope
	node int
	to   *model.Rope
	// stroke is the strand of to, away how far it is from where the hitch grips now.
	stroke, away int
}

// checkHitchOnWrongStrand moves every hitch, one at a time, to every other strand
// and reports the move with which the mended rig has the highest advantage; among
// equals the nearest to where the hitch is, then the first in the file.
func checkHitchOnWrongStrand(p *lint.Pass) {
	if f := p.Fault(); f != solve.RaisesNothing && f != solve.Falls {
		return
	}
	var best *lint.Trial
	var found diag.Diagnostic
	for _, m := range moves(p.Rig) {
		edits := append(lint.TakeOut(m.rope, m.node, m.rope.Before(m.node)),
			lint.SetIn(m.to, m.stroke, m.rope.Nodes[m.node].Place.Text()))
		if t, ok := p.Try(edits...); ok && t.Mends(p) && t.Better(best) {
			best, found = t, misplaced(p, m, t, edits)
		}
	}
	if best == nil {
		return
	}
	if !p.Proves(best, found) {
		found.Fixes = nil
	}
	p.Explain(found)
}

// moves lists every hitch or clamp through which the rope runs straight on, with
// every other strand that is not slack: the nearest first, then in file order.
func moves(rig *model.Rig) []move {
	var list []move
	beyond := 0 // farther than any strand of the same rope
	for _, r := range rig.Ropes {
		beyond += len(r.Strokes)
	}
	for _, r := range rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Grip || !r.RunsOn(i) {
				continue
			}
			for _, to := range rig.Ropes {
				for k, s := range to.Strokes {
					away := beyond
					if to == r {
						away = max(k-i, i-1-k)
					}
					if s != model.Slack && !(to == r && (k == i || k == r.Before(i))) {
						list = append(list, move{r, i, to, k, away})
					}
				}
			}
		}
	}
	slices.SortStableFunc(list, func(a, b move) int { return cmp.Compare(a.away, b.away) })
	return list
}

// misplaced makes the finding about a hitch and the trial in which it is moved.
func misplaced(p *lint.Pass, m move, t *lint.Trial, edits []diag.Edit) diag.Diagnostic {
	n := m.rope.Nodes[m.node]
	name, strand := lint.NameOf(n.Part), lint.StrandName(m.to, m.stroke)
	before, after := m.rope.Nodes[m.rope.Before(m.node)], m.rope.Nodes[m.rope.After(m.node)]
	return diag.Diagnostic{
		Place:   n.Place,
		Subject: n.Part.Name,
		Message: fmt.Sprintf("%s grips the rope between %s and %s: %s; on %s %s",
			name, lint.Clipped(before.Name()), lint.Clipped(after.Name()), p.Trouble(), strand, t.Rises()),
		Fixes: []diag.Fix{{Title: "set " + name + " on " + strand, Gives: t.Rises() + " there", Edits: edits}},
	}
}
