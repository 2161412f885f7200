package lint

import (
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// The rules about claims on findings. They have no Check: they need to know what
// all other rules found.
var (
	unmetFinding = &Rule{Name: "expectation-unmet-finding", Severity: diag.Error,
		Summary: "an expected finding that is not there"}
	unusedAcceptance = &Rule{Name: "acceptance-unused", Severity: diag.Error,
		Summary: "an accepted finding that is not there"}
	unknownRule = &Rule{Name: "unknown-rule", Severity: diag.Error,
		Summary: "a claim or house rule that names no rule"}
)

// ClaimRules lists the rules about claims on findings.
func ClaimRules() []*Rule { return []*Rule{unmetFinding, unusedAcceptance, unknownRule} }

// settlement holds the findings of one file while the claims about them are settled.
type settlement struct {
	file  *load.Loaded
	rules []*Rule
	known []string
	found []finding
	// index finds the findings of a rule in a rig.
	index map[ruleInRig][]int
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
// claims that met nothing.
func (s *settlement) settle(index int, rig *model.Rig) {
	for _, c := range rig.Claims {
		if c.Subject != syntax.Finding || c.Rule == nil || c.Broken || !s.isRule(c.Place, c.Rule) {
			continue
		}
		if !s.claim(index, c.Rule.Text, c.Of) && s.canJudge(rig, c.Rule.Text) {
			s.report(unmetFinding, c.Place, c.Of, "%s is expected%s, but not found%s",
				c.Rule.Text, at(c.Of), inRig(s.file.Model, rig, c.Place))
		}
	}
	for _, a := range rig.Accepted {
		if a.Broken || !s.isRule(a.Place, &a.Rule) {
			continue
		}
		if !s.claim(index, a.Rule.Text, a.At) && s.canJudge(rig, a.Rule.Text) {
			s.report(unusedAcceptance, a.Place, a.At, "%s is accepted%s, but not found%s",
				a.Rule.Text, at(a.At), inRig(s.file.Model, rig, a.Place))
			if inRig(s.file.Model, rig, a.Place) == "" { // another rig may need it
				s.offerRemoval(a.Place)
			}
		}
	}
}

// claim takes out every finding that a claim names; false if there is none.
func (s *settlement) claim(rig int, rule string, part *model.Part) bool {
	met := false
	for _, of := range []int{rig, ofAll} {
		for _, i := range s.index[ruleInRig{rule, of}] {
			if f := &s.found[i]; part == nil || f.Named(part.Name) {
				f.claimed, met = true, true
			}
		}
	}
	return met
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

// policies reports the house rules that set the severity of no rule.
func (s *settlement) policies() {
	for _, p := range s.file.Model.Policies {
		for _, set := range p.Rules {
			s.isRule(set.Place, &set.RuleSetting.Rule)
		}
	}
}

func (s *settlement) report(rule *Rule, place source.Place, part *model.Part, format string, args ...any) *diag.Diagnostic {
	d := diag.Diagnostic{Rule: rule.Name, Severity: rule.Severity, Place: place, Message: fmt.Sprintf(format, args...)}
	if part != nil {
		d.Subject = part.Name
	}
	s.found = append(s.found, finding{Diagnostic: d})
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
