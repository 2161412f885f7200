package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var looseEnd = &lint.Rule{
	Name:     "loose-end",
	Severity: diag.Advice,
	Summary:  "a rope that runs out through its last bend during the raise, with no stopper and nothing tied; a warning where people hang on the load or stand below it",
	Check:    checkLooseEnd,
	Latent:   true,
}

// checkLooseEnd compares what a tender or a loose end has to give with the rope that lies
// beyond its last bend.
func checkLooseEnd(p *lint.Pass) {
	for _, need := range p.Result.Rope {
		if !need.Short || need.PaidOut == nil || need.PaidOut.Sign() <= 0 || need.Length.Cmp(*need.Strands) < 0 {
			continue // it lacks nothing, nothing runs out, or it is too short as it lies
		}
		end, bend, runs := looseAt(need.Rope)
		if !runs {
			continue
		}
		line := need.Rope.Line
		beyond := need.Length.Sub(*need.Strands)
		d := diag.Diagnostic{
			Place: need.Rope.Nodes[end].Place, Subject: line.Name,
			Also: []string{need.Rope.Nodes[bend].Part.Name},
			Message: lint.NameOf(line) + " runs out through " + lint.NameOf(need.Rope.Nodes[bend].Part) + ": " + p.Length(beyond) +
				" lie beyond it, and the raise takes " + p.Length(*need.PaidOut) + "; its end has no stopper and nothing is tied there",
		}
		if part := need.Rope.Nodes[end].Part; part != nil {
			d.Also = append(d.Also, part.Name)
		}
		without := p.Result.AfterWhileHauling(solve.LostOf(p.Rig, line))
		p.ReportAs(hazard(p, without.Sinking), d)
	}
}

// looseAt gives the end of a line that is tended or loose and the bend or grip next to it,
// through which it can run out; runs is false if there is none.
func looseAt(r *model.Rope) (end, bend int, runs bool) {
	last := len(r.Nodes) - 1
	if r.Loop || last < 1 {
		return 0, 0, false
	}
	for _, at := range [][3]int{{0, 1, 0}, {last, last - 1, last - 1}} {
		role := r.Nodes[at[0]].Role
		next := r.Nodes[at[1]]
		if (role == model.Tended || role == model.Loose) && next.Part != nil && !next.Role.Ends() && r.Strokes[at[2]] != model.Slack {
			return at[0], at[1], true
		}
	}
	return 0, 0, false
}
