package show

import (
	"io"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/solve/report"
)

type claims struct {
	Version  int     `json:"version"`
	Accepted []claim `json:"accepted"`
	Expected []claim `json:"expected"`
}

// claim is one acceptance or expectation of one rig.
type claim struct {
	Rig string `json:"rig"`
	at
	Rule string `json:"rule"`
	// Part is nil where the claim names none.
	Part  *string    `json:"part"`
	State lint.State `json:"state"`
	// Because is nil in an expectation.
	Because  *string   `json:"because"`
	Findings []finding `json:"findings"`
}

// AcceptedJSON writes as machine output what the authors of rigs accept and expect.
func AcceptedJSON(w io.Writer, of lint.Outcome) error {
	out := claims{Version: Version, Accepted: []claim{}, Expected: []claim{}}
	for _, a := range of.Acceptances {
		c := claimOf(a.Rig.Name, a.Place, &a.Rule, a.Accept.At)
		c.State, c.Because, c.Findings = a.State, &a.Because.Value, findingsOf(a.Findings)
		out.Accepted = append(out.Accepted, c)
	}
	for _, e := range of.Expectations {
		c := claimOf(e.Rig.Name, e.Place, e.Rule, e.Expect.Of)
		c.State, c.Findings = e.State, findingsOf(e.Findings)
		out.Expected = append(out.Expected, c)
	}
	return report.Encode(w, out)
}

func claimOf(rig string, place source.Place, rule, part *syntax.Word) claim {
	c := claim{Rig: rig, at: at{report.FileName(place), report.RangeOf(place)}, Rule: rule.Text}
	if part != nil {
		c.Part = &part.Text
	}
	return c
}
