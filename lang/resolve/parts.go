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
	for _, l := range r.all {
		if body := l.part(); body != nil {
			declared[body.Name.Text] = true
		}
	}
	var unstated []*entry
	for _, l := range r.all {
		r.read(l)
		switch body := l.Body.(type) {
		case *syntax.Part:
			r.addPart(l, body)
		case *syntax.Reeve:
			if r.reeves[body.Rope.Text] == nil {
				r.reeves[body.Rope.Text] = l.Statement
			}
			if !declared[body.Rope.Text] {
				declared[body.Rope.Text] = true
				r.addRope(l, body.Rope)
				unstated = append(unstated, l)
			}
		}
	}
	for _, l := range unstated { // hints need all parts
		r.read(l)
		r.reportNoStatement(l.Statement)
	}
}

// addPart makes the part of a statement. A second one of a name is kept apart:
// its own faults are reported, but nothing can name it.
func (r *rigWork) addPart(l *entry, body *syntax.Part) {
	s := l.Statement
	p := &partWork{body: body, entry: l, Part: &model.Part{
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
func (r *rigWork) addRope(l *entry, name syntax.Word) {
	place := r.file.At(name.Span)
	r.keep(&partWork{entry: l, Part: &model.Part{
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
