package lint

import (
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint/house"
)

// The rules about claims on findings. They have no Check: they need to know what
// all other rules found.
var (
	unmetFinding = &Rule{Name: "expectation-unmet-finding", Severity: diag.Error, Final: true,
		Summary: "an expected finding that is not there"}
	unusedAcceptance = &Rule{Name: "acceptance-unused", Severity: diag.Error, Final: true,
		Summary: "an accepted finding that is not there"}
	notAllowed = &Rule{Name: "claim-not-allowed", Severity: diag.Error, Final: true,
		Summary: "an accepted error of the text, or an expected or accepted finding about a claim"}
	unknownRule = &Rule{Name: "unknown-rule", Severity: diag.Error, Final: true,
		Summary: "a claim or house rule that names no rule"}
)

// ClaimRules lists the rules about claims on findings.
func ClaimRules() []*Rule { return []*Rule{unmetFinding, unusedAcceptance, notAllowed, unknownRule} }

// settlement holds the findings of one file while the claims about them are settled.
type settlement struct {
	file  *load.Loaded
	house *house.Rules
	rules []*Rule
	known []string
	found []finding
	// index finds the findings of a rule in a rig.
	index map[ruleInRig][]int
	// acceptances and expectations are the claims settled so far.
	acceptances  []Acceptance
	expectations []Expectation
}

type ruleInRig struct {
	rule string
	rig  int
}

func (s *settlement) add(f finding) {
	if s.index == nil {
		s.index = map[ruleInRig][]int{}
	}
	key := ruleInRig{f.Rule, f.rig}
	s.index[key] = append(s.index[key], len(s.found))
	s.found = append(s.found, f)
}

// settle takes out what a rig's author expected or accepted, and reports the
// claims that met nothing or cannot be made.
func (s *settlement) settle(index int, rig *model.Rig) {
	for _, c := range rig.Claims {
		if c.Subject == syntax.Finding && c.Rule != nil {
			s.settleExpected(index, rig, c)
		}
	}
	for _, a := range rig.Accepted {
		s.settleAccepted(index, rig, a)
	}
}

// settleExpected settles one "expect finding".
func (s *settlement) settleExpected(index int, rig *model.Rig, c *model.Claim) {
	if c.Broken || !s.isRule(c.Place, c.Rule) {
		s.expects(rig, c, NotJudged)
		return
	}
	met := s.named(index, c.Rule.Text, c.Of)
	for _, f := range met {
		f.expected = true
	}
	switch {
	case s.final(c.Rule.Text):
		s.expects(rig, c, NotAllowed)
		s.reportFinal(c.Place, c.Of, c.Rule.Text, "expected")
	case len(met) > 0:
		s.expects(rig, c, Met, met...)
	case s.canJudge(rig, c.Rule.Text):
		s.expects(rig, c, Unmet)
		s.report(unmetFinding, c.Place, c.Of, "%s is expected%s, but not found%s",
			c.Rule.Text, at(c.Of), inRig(s.file.Model, rig, c.Place))
	default:
		s.expects(rig, c, NotJudged)
	}
}

// settleAccepted settles one "accept". An error of the text or of names is none of a
// rig that could be judged: it stands, and the acceptance is reported too.
func (s *settlement) settleAccepted(index int, rig *model.Rig, a *model.Accepted) {
	if a.Broken || !s.isRule(a.Place, &a.Rule) {
		s.accepts(rig, a, NotJudged)
		return
	}
	met := s.named(index, a.Rule.Text, a.At)
	var taken []*finding
	for _, f := range met {
		if !f.ofText || f.Severity < diag.Error {
			f.accepted = true
			taken = append(taken, f)
		}
	}
	switch {
	case s.final(a.Rule.Text):
		s.accepts(rig, a, NotAllowed)
		s.reportFinal(a.Place, a.At, a.Rule.Text, "accepted")
	case len(taken) > 0:
		s.accepts(rig, a, Met, taken...)
		return
	case len(met) > 0:
		s.accepts(rig, a, NotAllowed)
		s.report(notAllowed, a.Place, a.At, "%s%s is an error of the text, which cannot be accepted", a.Rule.Text, at(a.At))
	case s.canJudge(rig, a.Rule.Text):
		s.accepts(rig, a, Unmet)
		s.report(unusedAcceptance, a.Place, a.At, "%s is accepted%s, but not found%s",
			a.Rule.Text, at(a.At), inRig(s.file.Model, rig, a.Place))
	default:
		s.accepts(rig, a, NotJudged)
		return
	}
	if s.final(a.Rule.Text) || inRig(s.file.Model, rig, a.Place) == "" { // else another rig may need it
		s.offerRemoval(a.Place)
	}
}

// reportFinal reports a claim on a finding that is itself about a claim.
func (s *settlement) reportFinal(place source.Place, part *model.Part, rule, how string) {
	s.report(notAllowed, place, part, "%s is about what the file claims itself and cannot be %s", rule, how)
}

// named gives the findings that a claim names; none of a rule whose findings no claim
// can name.
func (s *settlement) named(rig int, rule string, part *model.Part) []*finding {
	if s.final(rule) {
		return nil
	}
	var met []*finding
	for _, of := range []int{rig, ofAll} {
		for _, i := range s.index[ruleInRig{rule, of}] {
			if f := &s.found[i]; part == nil || f.Named(part.Name) {
				met = append(met, f)
			}
		}
	}
	return met
}

// final says whether no claim can be made on the findings of a rule.
func (s *settlement) final(rule string) bool {
	is := func(r *Rule) bool { return r.Name == rule && r.Final }
	return slices.ContainsFunc(s.rules, is) || slices.ContainsFunc(ClaimRules(), is)
}

// canJudge says whether a rule could have found something: rules that look at a rig
// are silent while it is not legible.
func (s *settlement) canJudge(rig *model.Rig, rule string) bool {
	if legible(s.file.Problems, rig) {
		return true
	}
	return !slices.ContainsFunc(s.rules, func(r *Rule) bool { return r.Name == rule && r.Check != nil })
}

// isRule says whether a claim names a rule, and reports it if not.
func (s *settlement) isRule(place source.Place, rule *syntax.Word) bool {
	if slices.Contains(s.known, rule.Text) {
		return true
	}
	near := nearest(rule.Text, s.known)
	hint := ""
	if near != "" {
		hint = ", did you mean " + near + "?"
	}
	d := s.report(unknownRule, place.File.At(rule.Span), nil, "%s is not a rule%s", Clipped(rule.Text), hint)
	if near != "" {
		d.Fixes = []diag.Fix{{Title: "write " + near, Edits: []diag.Edit{{Place: d.Place, NewText: near}}}}
	}
	return false
}

// policies reports the house rules that set the severity of no rule, or of an error of
// the text, which stands whatever a house says.
func (s *settlement) policies() {
	for _, p := range s.file.Model.Policies {
		for _, set := range p.Rules {
			if s.isRule(set.Place, &set.RuleSetting.Rule) && s.textError(set.Rule.Text) {
				s.report(notAllowed, set.Place, nil, "%s is an error of the text, which no house rule can change", set.Rule.Text)
			}
		}
	}
}

// textError says whether the findings of a rule are errors of the text.
func (s *settlement) textError(rule string) bool {
	return slices.ContainsFunc(TextRules(), func(r *Rule) bool { return r.Name == rule && r.Severity == diag.Error }) &&
		!slices.ContainsFunc(s.rules, func(r *Rule) bool { return r.Name == rule && r.Check != nil })
}

func (s *settlement) report(rule *Rule, place source.Place, part *model.Part, format string, args ...any) *diag.Diagnostic {
	severity, on := s.house.Severity(rule.Name, rule.Severity)
	d := diag.Diagnostic{Rule: rule.Name, Severity: severity, Place: place, Message: fmt.Sprintf(format, args...)}
	if part != nil {
		d.Subject = part.Name
	}
	s.found = append(s.found, finding{Diagnostic: d, silent: !on})
	return &s.found[len(s.found)-1].Diagnostic
}

// offerRemoval offers to take out the statement that the last finding is about.
func (s *settlement) offerRemoval(place source.Place) {
	d := &s.found[len(s.found)-1]
	d.Fixes = []diag.Fix{{Title: "take the line out", Edits: takeOutStatement(place.File, place.Span)}}
}

func at(part *model.Part) string {
	if part == nil {
		return ""
	}
	return " at " + NameOf(part)
}
