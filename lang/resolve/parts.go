package resolve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// readParts makes the parts of the rig, without their clips and values. A rope
// that only a reeving line names is made too.
func (r *rigWork) readParts() {
	declared := map[string]bool{}
	for _, s := range r.all {
		if body, ok := s.Body.(*syntax.Part); ok {
			declared[body.Name.Text] = true
		}
	}
	var unstated []*syntax.Statement
	for i, s := range r.all {
		shared := i < len(r.section.shared)
		switch body := s.Body.(type) {
		case *syntax.Part:
			r.addPart(s, body, shared)
		case *syntax.Reeve:
			if r.reeves[body.Rope.Text] == nil {
				r.reeves[body.Rope.Text] = s
			}
			if !declared[body.Rope.Text] {
				declared[body.Rope.Text] = true
				r.addRope(body.Rope, shared)
				unstated = append(unstated, s)
			}
		}
	}
	for _, s := range unstated { // hints need all parts
		r.reportNoStatement(s)
	}
}

// addPart makes the part of a statement. A second one of a name is kept apart:
// its own faults are reported, but nothing can name it.
func (r *rigWork) addPart(s *syntax.Statement, body *syntax.Part, shared bool) {
	p := &partWork{body: body, statement: s, shared: shared, Part: &model.Part{
		Name: body.Name.Text, Kind: model.Kind(body.Kind.Text), Doc: docOf(s),
		Place: r.file.At(s.Span), NamePlace: r.file.At(body.Name.Span),
	}}
	if body.Model != nil {
		p.Model = body.Model.Text
	}
	if body.On != nil {
		p.OnPlace = r.file.At(body.On.Span)
	}
	r.noteLosses(p)
	if isTorn(s, body.Name) {
		p.torn = true
		r.nameless++
	}
	if first := r.parts[p.Name]; first != nil {
		r.reportTwice(body.Name, first.NamePlace, "part")
		r.rig.Incomplete = true
		r.doubles = append(r.doubles, p)
		return
	}
	r.keep(p)
}

// isTorn says whether what cannot be read touches a name, so that it may be another one.
func isTorn(s *syntax.Statement, name syntax.Word) bool {
	return slices.ContainsFunc(s.Tokens, func(t syntax.Token) bool {
		return t.Kind == syntax.InvalidToken && (t.Span.End == name.Span.Start || t.Span.Start == name.Span.End)
	})
}

// addRope makes the rope that only a reeving line names.
func (r *rigWork) addRope(name syntax.Word, shared bool) {
	place := r.file.At(name.Span)
	r.keep(&partWork{shared: shared, Part: &model.Part{
		Name: name.Text, Kind: model.RopeLine, Place: place, NamePlace: place,
	}})
}

func (r *rigWork) keep(p *partWork) {
	p.Index = len(r.order)
	r.parts[p.Name] = p
	r.order = append(r.order, p)
	r.rig.Parts = append(r.rig.Parts, p.Part)
}

// work gives the work on a part of the rig.
func (r *rigWork) work(p *model.Part) *partWork { return r.order[p.Index] }
