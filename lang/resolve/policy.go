package resolve

import (
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// readPolicies keeps what the policy statements of the file say.
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
			current.Requires = append(current.Requires, &model.Require{Require: body, Place: place, Source: sourceOf(s)})
		case *syntax.RuleSetting:
			current.Rules = append(current.Rules, &model.RuleSetting{RuleSetting: body, Place: place, Source: sourceOf(s)})
		default:
			continue
		}
		current.Place.Span = current.Place.Span.To(s.Span)
	}
}

func isPolicyLine(s *syntax.Statement) bool {
	switch s.Body.(type) {
	case *syntax.Policy, *syntax.Require, *syntax.RuleSetting:
		return true
	}
	return false
}
