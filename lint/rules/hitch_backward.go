package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var hitchBackward = &lint.Rule{
	Name:     "hitch-backward",
	Severity: diag.Error,
	Summary:  "a one-way grip that holds the wrong way: turned round, the rig does its job",
	Check:    checkHitchBackward,
}

// checkHitchBackward turns every grip and capture, one at a time, and reports the
// one with which the mended rig has the highest advantage.
func checkHitchBackward(p *lint.Pass) {
	mends, open := turnMends(p), preloaded(p)
	var best *lint.Trial
	var found diag.Diagnostic
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Grip && n.Role != model.Capture {
				continue
			}
			against := beside(open, r, i)
			if mends == nil && against == "" {
				continue
			}
			edit, says, ok := p.Turn(r, i)
			if !ok {
				continue
			}
			t, ok := p.Try(edit)
			switch {
			case !ok:
			case mends != nil && mends(t) && t.Better(best):
				best, found = t, backward(p, n, t, edit, says)
			case against != "" && t.Mends(p) && t.Compare(p) > 0 && t.Better(best):
				best, found = t, hindering(p, n, t, edit, says, against)
			}
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

// turnMends gives the test that a trial must pass; nil if the rig does its job. A rig that raises its load but, hands off, does not hold
// it is mended if it raises it as well as before and then holds it.
func turnMends(p *lint.Pass) func(*lint.Trial) bool {
	switch p.Fault() {
	case solve.RaisesNothing, solve.Falls, solve.Jammed:
		return func(t *lint.Trial) bool { return t.Mends(p) }
	}
	if p.Result.Status != solve.OK || p.Explained() || p.Result.Released.Answer == solve.Held {
		return nil
	}
	return func(t *lint.Trial) bool {
		return t.Mends(p) && t.Result.Released.Answer == solve.Held && t.Compare(p) >= 0
	}
}

// strandOf is a strand of a rope, by the place of its stroke.
type strandOf struct {
	rope   *model.Rope
	stroke int
}

// preloaded gives the strands that can be pulled as tight as one likes while the load is
// hauled; none in a rig that raises nothing.
func preloaded(p *lint.Pass) map[strandOf]bool {
	if p.Result.Status != solve.OK || p.Explained() {
		return nil
	}
	open := map[strandOf]bool{}
	for _, s := range p.Result.Main().Strands {
		if s.Known() && s.High == nil {
			open[strandOf{s.Rope, s.Index}] = true
		}
	}
	return open
}

// beside names such a strand beside a grip, which may hold against the haul; empty if
// there is none.
func beside(open map[strandOf]bool, r *model.Rope, node int) string {
	for _, stroke := range []int{r.Before(node), node} {
		if open[strandOf{r, stroke}] {
			return lint.StrandName(r, stroke)
		}
	}
	return ""
}

// hindering makes the finding about a grip that holds against the haul, which raises
// the load all the same.
func hindering(p *lint.Pass, n model.Node, t *lint.Trial, edit diag.Edit, says, strand string) diag.Diagnostic {
	d := backward(p, n, t, edit, says)
	d.Message = fmt.Sprintf("%s grips the wrong way: %s holds against the haul, and %s; turned round, %s",
		lint.NameOf(n.Part), strand, p.Rises(), t.Rises())
	d.Fixes[0].Gives = t.Rises()
	return d
}

// backward makes the finding about a grip and the trial in which it is turned.
func backward(p *lint.Pass, n model.Node, t *lint.Trial, edit diag.Edit, says string) diag.Diagnostic {
	name := lint.NameOf(n.Part)
	message := fmt.Sprintf("%s grips the wrong way: %s; turned round, %s", name, p.Trouble(), t.Rises())
	gives := t.Rises()
	if p.Result.Status == solve.OK {
		message = fmt.Sprintf("%s grips the wrong way: hands off, %s; turned round, it holds",
			name, lint.Fall(p.Rig, p.Result.Released, ""))
		gives = "hands off, the load is held"
	}
	return diag.Diagnostic{
		Place: n.Place, Message: message, Subject: n.Part.Name,
		Fixes: []diag.Fix{{Title: "turn " + name + " round: " + says, Gives: gives, Edits: []diag.Edit{edit}}},
	}
}
