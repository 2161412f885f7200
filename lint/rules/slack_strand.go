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
	Summary:  "a line that carries nothing, whether hauled or held, and that no loss makes carry",
	Check:    checkSlackStrand,
}

func checkSlackStrand(p *lint.Pass) {
	for _, r := range p.Rig.Ropes {
		if r.Broken || p.Reported(tiedBetweenFixed, r.Line.Name) || isLoose(r) || carries(p.Result, r) || onIdleHitch(p, r) || backsUp(p, r) {
			continue
		}
		p.Report(diag.Diagnostic{
			Place: r.Place, Subject: r.Line.Name,
			Message: lint.NameOf(r.Line) + " carries nothing, hauled or held, and whatever part is lost, it catches nothing",
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
	for _, ph := range res.Phases {
		for _, s := range ph.Strands {
			if s.Rope == r && !s.Slack {
				return true
			}
		}
	}
	return len(res.Phases) == 0
}

// backsUp says whether the rig stays up worse without a rope, hands off or when
// any single part is lost. Where that cannot be afforded it may.
func backsUp(p *lint.Pass, r *model.Rope) bool {
	without, ok := p.WithoutRope(r)
	if !ok || without.Status != p.Result.Status || lint.Weaker(without.Released.Answer, p.Result.Released.Answer) {
		return true
	}
	for _, part := range p.Rig.Parts {
		if part == r.Line || part.Kind.IsPerson() {
			continue
		}
		if !p.AffordLosses(2) {
			return true
		}
		then := without.Without(part).Answer
		if then != solve.Held && lint.Weaker(then, p.Result.Without(part).Answer) {
			return true
		}
	}
	return false
}
