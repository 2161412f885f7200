package resolve

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// readPolicies keeps what the policy statements of the file say, and says once
// that it is not applied yet.
func (w *fileWork) readPolicies(tree *syntax.Tree) {
	var current *model.Policy
	for _, s := range tree.Statements {
		place := w.file.At(s.Span)
		_, begins := s.Body.(*syntax.Policy)
		if begins || current == nil && isPolicyLine(s) {
			current = &model.Policy{Place: place}
			w.out.Policies = append(w.out.Policies, current)
		}
		switch body := s.Body.(type) {
		case *syntax.Policy:
			current.Name = body.Name.Text
			if body.Title != nil {
				current.Title = body.Title.Value
			}
		case *syntax.Require:
			current.Requires = append(current.Requires, &model.Require{Require: body, Place: place})
		case *syntax.RuleSetting:
			current.Rules = append(current.Rules, &model.RuleSetting{RuleSetting: body, Place: place})
		default:
			continue
		}
		current.Place.Span = current.Place.Span.To(s.Span)
	}
	w.reportPolicies(tree)
}

func isPolicyLine(s *syntax.Statement) bool {
	switch s.Body.(type) {
	case *syntax.Policy, *syntax.Require, *syntax.RuleSetting:
		return true
	}
	return false
}

// reportPolicies gives one advice for all policy lines of a file.
func (w *fileWork) reportPolicies(tree *syntax.Tree) {
	for _, s := range tree.Statements {
		if isPolicyLine(s) {
			d := w.report(notComputedYet, s.Span, "", "house rules are read, but not applied yet")
			d.Severity = diag.Advice
			return
		}
	}
}
