package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var slackStrand = &lint.Rule{
	Name:     "slack-strand",
	Severity: diag.Advice,
	Summary:  "a line that carries nothing, hauled, held or lowered, and that no loss makes carry",
	Check:    checkSlackStrand,
}

func checkSlackStrand(p *lint.Pass) {
	for _, r := range p.Rig.Ropes {
		if r.Broken || p.Reported(tiedBetweenFixed, r.Line.Name) || isLoose(r) || carries(p.Result, r) || onIdleHitch(p, r) || backsUp(p, r) {
			continue
		}
		p.Report(diag.Diagnostic{
			Place: r.Place, Subject: r.Line.Name,
			Message: lint.NameOf(r.Line) + " carries nothing, hauled, held or lowered, and whatever part is lost, it catches nothing",
		})
	}
}

// onIdleHitch says whether a rope pulls on a hitch of which it is known that it holds
// nothing: then that is why the rope carries nothing.
func onIdleHitch(p *lint.Pass, r *model.Rope) bool {
	for _, n := range r.Nodes {
		for part := n.Part; part != nil; part = part.On {
			if part.Kind.IsGrip() && p.Reported(idleHitch, part.Name) {
				return true
			}
		}
	}
	return false
}

// isLoose says whether a line is meant to be slack somewhere: it has a tender, a
// loose end or slack rope.
func isLoose(r *model.Rope) bool {
	for _, s := range r.Strokes {
		if s == model.Slack {
			return true
		}
	}
	for _, n := range r.Nodes {
		if n.Role == model.Tended || n.Role == model.Loose || n.Role == model.Stopper {
			return true
		}
	}
	return false
}

// carries says whether a strand of a rope carries something in some phase, or may.
func carries(res *solve.Result, r *model.Rope) bool {
	for _, ph := range res.Every() {
		for _, s := range ph.Strands {
			if s.Rope == r && !s.Slack {
				return true
			}
		}
	}
	return len(res.Phases) == 0
}

// backsUp says whether the rig stays up worse without a rope, hands off or when
// any single thing is lost: a part, a clip, a tie, a hold. Where that cannot be afforded
// it may.
func backsUp(p *lint.Pass, r *model.Rope) bool {
	without, ok := p.WithoutRope(r)
	if !ok || without.Status != p.Result.Status || weaker(without.Released, p.Result.Released) {
		return true
	}
	for _, now := range p.Losses() {
		if !p.AffordLosses(1) {
			return true
		}
		if now.Part != r.Line && now.Rope != r && weaker(without.After(now.Lost), now.Stay) {
			return true
		}
	}
	return p.LossesCut()
}

// weaker says whether one outcome of a loss is worse than another: a weaker answer, or
// the same one after a longer drop.
func weaker(a, b solve.Stay) bool {
	switch {
	case a.Answer != b.Answer:
		return lint.Weaker(a.Answer, b.Answer)
	case a.Answer == solve.Held || a.Answer == solve.Down:
		return false
	}
	far, near := a.Drop.Most(), b.Drop.Most()
	return far != nil && near != nil && far.Cmp(*near) > 0
}
