package lint

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
)

// State is what became of a claim about findings.
type State string

const (
	// Met: something is found that the claim names.
	Met State = "met"
	// Unmet: nothing is found that it names, which is reported.
	Unmet State = "unmet"
	// NotAllowed: no claim can be made on what it names, which is reported.
	NotAllowed State = "not-allowed"
	// NotJudged: an error of the rig hides what it could name, or it names a rule or
	// a part that there is not.
	NotJudged State = "not-judged"
)

// Acceptance is one "accept", as it stands in one rig.
type Acceptance struct {
	*model.Accepted
	Rig   *model.Rig
	State State
	// Findings are those that it keeps quiet, in the order of their places. One that
	// several rigs share may be reported all the same, because of another rig.
	Findings []diag.Diagnostic
}

// Expectation is one "expect finding", as it stands in one rig.
type Expectation struct {
	*model.Claim
	Rig   *model.Rig
	State State
	// Findings are those that it expects, in the order of their places.
	Findings []diag.Diagnostic
}

// accepts notes what became of an acceptance.
func (s *settlement) accepts(rig *model.Rig, a *model.Accepted, state State, met ...*finding) {
	s.acceptances = append(s.acceptances, Acceptance{a, rig, state, s.sorted(met)})
}

// expects notes what became of an expectation.
func (s *settlement) expects(rig *model.Rig, c *model.Claim, state State, met ...*finding) {
	s.expectations = append(s.expectations, Expectation{c, rig, state, s.sorted(met)})
}

// sorted gives findings in the order of their places.
func (s *settlement) sorted(list []*finding) []diag.Diagnostic {
	var found []diag.Diagnostic
	for _, f := range list {
		found = append(found, f.Diagnostic)
	}
	diag.Sort(found, nil)
	return s.file.Fitted(found)
}
