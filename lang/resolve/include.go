package resolve

import (
	"slices"
	"strings"

	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// readInclude keeps an "include", checks the rig that it names where that is of
// this file, and reports that no copy is made yet.
func (r *rigWork) readInclude(s *syntax.Statement, body *syntax.Include) {
	r.rig.Includes = append(r.rig.Includes, &model.Include{Include: body, Place: r.file.At(s.Span)})
	r.rig.Incomplete = true
	r.reportNotComputed(s.Span, "include", "the parts of "+body.As.Text+" are missing here")
	if first, taken := r.copies[body.As.Text]; taken {
		r.reportTwice(body.As, r.file.At(first), "copy")
	} else {
		r.copies[body.As.Text] = body.As.Span
	}
	if of := r.rigs[body.Rig.Text]; of != nil {
		r.checkChanges(of, body)
		return
	}
	if len(r.out.Uses) > 0 { // the rig may come from there
		return
	}
	near := r.hint.near(body.Rig.Text, r.rigNames)
	d := r.report(unknownRig, body.Rig.Span, body.Rig.Text,
		"%s is not a rig of this file%s", body.Rig.Text, didYouMean(near))
	r.offerName(d, body.Rig, near)
}

// checkChanges checks the parts that an "include" of a rig of this file changes
// or leaves out. Parts that the rig includes itself are not looked into.
func (r *rigWork) checkChanges(of *section, body *syntax.Include) {
	var changed []syntax.Word
	for _, c := range body.With {
		changed = append(changed, c.Part)
	}
	for _, name := range append(changed, body.Without...) {
		if strings.Contains(name.Text, ".") || of.has(name.Text) {
			continue
		}
		near := r.hint.near(name.Text, of.names)
		d := r.report(unknownPart, name.Span, name.Text,
			"%s is not a part of %s%s", name.Text, body.Rig.Text, didYouMean(near))
		r.offerName(d, name, near)
	}
}

// has says whether a rig names a part, be it in a statement that could not be read.
func (s *section) has(name string) bool {
	if s.named == nil {
		s.named = map[string]bool{}
		for _, st := range slices.Concat(s.shared, s.own) {
			s.note(st)
		}
	}
	return s.named[name]
}

// note takes the names of parts in a statement.
func (s *section) note(st *syntax.Statement) {
	var words []syntax.Word
	switch body := st.Body.(type) {
	case *syntax.Part:
		words = []syntax.Word{body.Name}
	case *syntax.Reeve:
		words = []syntax.Word{body.Rope}
	case *syntax.Bad:
		words = body.Names
	}
	for _, word := range words {
		if !s.named[word.Text] {
			s.named[word.Text] = true
			s.names = append(s.names, word.Text)
		}
	}
}

// checkJoins checks the two ends that each "join" names, as far as they are of
// this rig.
func (r *rigWork) checkJoins() {
	for _, j := range r.rig.Joins {
		for _, end := range []syntax.Word{j.A, j.B} {
			if p := r.find(end, func(p *partWork) bool { return p.Kind.IsPerson() || p.Kind.IsWeight() }); p != nil {
				p.joined = true
			}
		}
	}
}
