package resolve

import (
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// find gives the part of a name. It reports one that is unknown, unless it is known
// why. fits says which parts can be meant; nil for any.
func (r *rigWork) find(name syntax.Word, fits func(*partWork) bool) *partWork {
	if p := r.parts[r.made.now(name.Text)]; p != nil {
		return p
	}
	if r.explained(name.Text) {
		return nil
	}
	// What stands before the first rig comes again with each of them, so that the
	// places in it and those in the rig are apart.
	key := unknownName{name.Text, r.at.shared}
	if d := r.unknown[key]; d != nil {
		r.again(d, name)
		return nil
	}
	if r.made.leftOut[name.Text] {
		r.unknown[key] = r.report(unknownPart, name.Span, name.Text, "%s is left out of its copy", name.Text)
		return nil
	}
	near := r.nearNames(name.Text, fits)
	if r.excuses(name.Text, near) || len(near) == 0 && r.ofLacking(name.Text) {
		return nil
	}
	d := r.report(unknownPart, name.Span, name.Text,
		"%s is not a part of this rig%s", name.Text, didYouMean(near))
	r.offerName(d, name, near)
	r.unknown[key] = d
	return nil
}

// unknownName is a name that no part has.
type unknownName struct {
	name string
	// shared says that it stands before the first rig of the file.
	shared bool
}

// again adds a further place of an unknown name to what was said of the first: one
// part that is misspelt in its statement is one fault.
func (r *rigWork) again(d *diag.Diagnostic, name syntax.Word) {
	if len(d.Related) < maxRelated {
		related(d, r.file.At(name.Span), "%s is named here too", name.Text)
	}
	for i := range d.Fixes {
		fix := &d.Fixes[i]
		fix.Edits = append(fix.Edits, r.replace(name.Span, fix.Edits[0].NewText))
	}
}

// explained says whether it is known why a name has no part.
func (r *rigWork) explained(name string) bool {
	copy, rest, dotted := strings.Cut(name, ".")
	of, included := r.made.copies[copy]
	lost := included && of.Of == nil || r.ofLacking(name) && strings.Contains(rest, ".")
	return r.short || r.ghosts[name] || dotted && (r.lostInclude || lost)
}

// ofLacking says whether a name is of a copy of a rig in which something is missing.
func (r *rigWork) ofLacking(name string) bool {
	copy, _, dotted := strings.Cut(name, ".")
	of := r.made.copies[copy]
	return dotted && of != nil && of.Of != nil && of.Of.Incomplete
}

// excuses says whether an unknown name may be that of a statement which lacks its own.
// A name that is near to another is no less misspelt.
func (r *rigWork) excuses(name string, near []string) bool {
	if r.excused[name] {
		return true
	}
	if len(near) > 0 || len(r.excused) >= r.nameless {
		return false
	}
	r.excused[name] = true
	r.rig.Incomplete = true
	return true
}

// nearNames gives the names of fitting parts that are nearest to a word.
func (r *rigWork) nearNames(word string, fits func(*partWork) bool) []string {
	if !r.hint.afford(len(r.order)) {
		return nil
	}
	var names []string
	for _, p := range r.order {
		if !p.torn && (fits == nil || fits(p)) {
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
