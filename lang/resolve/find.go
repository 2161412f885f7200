package resolve

import (
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// find gives the part of a name. It reports one that is unknown, unless the name
// stands in a statement that could not be read or is not computed yet. fits says
// which parts can be meant; nil for any.
func (r *rigWork) find(name syntax.Word, fits func(*partWork) bool) *partWork {
	if p := r.parts[name.Text]; p != nil {
		return p
	}
	if r.explained(name.Text) {
		return nil
	}
	near := r.nearNames(name.Text, fits)
	d := r.report(unknownPart, name.Span, name.Text,
		"%s is not a part of this rig%s", name.Text, didYouMean(near))
	r.offerName(d, name, near)
	return nil
}

// explained says whether it is known why a name has no part.
func (r *rigWork) explained(name string) bool {
	copy, _, dotted := strings.Cut(name, ".")
	_, included := r.copies[copy]
	return r.short || r.ghosts[name] || dotted && included
}

// nearNames gives the names of fitting parts that are nearest to a word.
func (r *rigWork) nearNames(word string, fits func(*partWork) bool) []string {
	if !r.hint.afford(len(r.order)) {
		return nil
	}
	var names []string
	for _, p := range r.order {
		if fits == nil || fits(p) {
			names = append(names, p.Name)
		}
	}
	return r.hint.near(word, names)
}

// misfit reports a part named where its kind cannot be.
func (r *rigWork) misfit(name syntax.Word, format string, args ...any) *diag.Diagnostic {
	return r.report(wrongKind, name.Span, name.Text, format, args...)
}

// article gives a kind with its article, as one says it.
func article(kind model.Kind) phrase {
	if kind == model.Anchor || kind == model.Edge {
		return phrase("an " + kind)
	}
	return phrase("a " + kind)
}
