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
	mends := turnMends(p)
	if mends == nil {
		return
	}
	var best *lint.Trial
	var found diag.Diagnostic
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Grip && n.Role != model.Capture {
				continue
			}
			edit, says, ok := p.Turn(r, i)
			if !ok {
				continue
			}
			if t, ok := p.Try(edit); ok && mends(t) && t.Better(best) {
				best, found = t, backward(p, n, t, edit, says)
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

// turnMends gives the test that a trial must pass; nil if there is nothing that a
// turned grip could mend. A rig that raises its load but, hands off, does not hold
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
