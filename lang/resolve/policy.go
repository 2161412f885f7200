package resolve

import (
	"fairlead/lang/model"
	"fairlead/lang/source"
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

// readUses keeps the "use" statements and reports that they bring in nothing yet.
func (w *fileWork) readUses(tree *syntax.Tree) {
	for _, s := range tree.Statements {
		body, ok := s.Body.(*syntax.Use)
		if !ok {
			continue
		}
		w.out.Uses = append(w.out.Uses, &model.Use{Use: body, Place: w.file.At(s.Span)})
		w.reportNotComputed(s.Span, "use", "what "+body.Path.Value+" defines is missing here")
	}
}

// reportNotComputed reports a statement without which the rig is not the one
// that the author means.
func (w *fileWork) reportNotComputed(at source.Span, word, lack string) {
	w.report(notComputedYet, at, "", "%s is not computed yet: %s", word, lack)
}
