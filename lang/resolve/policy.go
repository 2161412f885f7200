package resolve

import (
	"slices"
	"strings"

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
	w.reportDuplicates(tree)
}

// aboutSame is what two lines of one policy cannot both say: a figure, or how grave the
// findings of a rule are.
type aboutSame struct {
	figure, kind, rule string
	perPerson          bool
}

// reportDuplicates reports the lines of each policy that have no effect, since a later one
// says the same figure or rule anew.
func (w *fileWork) reportDuplicates(tree *syntax.Tree) {
	last := map[aboutSame]*syntax.Statement{}
	for _, s := range slices.Backward(tree.Statements) {
		var about aboutSame
		switch body := s.Body.(type) {
		case *syntax.Policy: // those of another one stand before it
			clear(last)
			continue
		case *syntax.Require:
			about = aboutSame{figure: body.Subject.Text, perPerson: body.PerPerson}
			if body.For != nil {
				about.kind = body.For.Text
			}
		case *syntax.RuleSetting:
			about.rule = body.Rule.Text
		default:
			continue
		}
		if last[about] == nil {
			last[about] = s
			continue
		}
		later := w.file.At(last[about].Span)
		d := w.report(duplicateHouseRule, s.Span, "", "%s has no effect: %s stands after it in the same house rules",
			oneLine(w.file.Slice(s.Span)), oneLine(later.Text()))
		related(d, later, "what counts")
		if len(docOf(s)) == 0 { // else the comment above would be the next line's
			offer(d, "take out the line that has no effect", w.replace(w.wholeLine(s.Span), ""))
		}
	}
}

// oneLine gives a statement with one blank between its words.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// wholeLine gives the line of a statement with its comment and line end.
func (f *findings) wholeLine(s source.Span) source.Span {
	line := f.file.LineSpan(f.file.Line(s.Start))
	if rest := f.file.Text[line.End:]; rest != "" {
		line.End += strings.Index(rest, "\n") + 1
	}
	return line
}

func isPolicyLine(s *syntax.Statement) bool {
	switch s.Body.(type) {
	case *syntax.Policy, *syntax.Require, *syntax.RuleSetting:
		return true
	}
	return false
}
