package resolve

import (
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// weighing are the clauses without whose values the forces in the rig are other ones.
var weighing = map[string]bool{"mass": true, "weight": true, "slope": true, "angle": true, "friction": true}

// readAllValues gives every part the values of its model and of its clauses.
func (r *rigWork) readAllValues() {
	for _, p := range r.order {
		if p.body != nil {
			r.read(p.entry)
			r.readValues(p)
		}
	}
	for _, p := range r.doubles {
		r.read(p.entry)
		r.readValues(p)
	}
	for _, p := range r.order {
		if p.Kind == model.Leg {
			r.read(p.entry)
			r.checkLeg(p)
		}
	}
	r.checkMasses()
}

// readValues reads the values of one part; a clause beats the model.
func (r *rigWork) readValues(p *partWork) {
	if p.body.Model != nil && !r.meansOn(p) {
		if p.Stock = r.modelOf(p); p.Stock != nil {
			p.Values = copied(p.Stock.Values)
		}
	}
	var mass *syntax.ClauseUse
	for _, of := range p.clauses() {
		r.file = of.file
		for i := range of.clauses {
			r.readPartClause(p, &of.clauses[i], &mass)
		}
	}
	r.file = p.file
}

// readPartClause reads one clause of a part; mass is the one that says what it weighs,
// once it was met.
func (r *rigWork) readPartClause(p *partWork, c *syntax.ClauseUse, mass **syntax.ClauseUse) {
	word := c.Word.Text
	if weighs(word) {
		if old := *mass; old != nil && old.Word.Text != word {
			d := r.report(badValue, c.Span, p.Name, "%s has both a mass and a weight; write one of them", p.Name)
			related(d, r.file.At(old.Span), "the %s of %s", old.Word.Text, p.Name)
			return
		}
		*mass = c
		p.Values.Mass, p.Values.Weight = nil, nil
		delete(p.Values.Places, "mass")
		delete(p.Values.Places, "weight")
	}
	if !r.readClause(p.Name, string(p.Kind), &p.Values, *c) && weighing[word] {
		r.rig.Incomplete = true
	}
	if c.Name != nil {
		r.readName(p, *c)
	}
}

// meansOn reports a part in whose place for the model another part stands, since "on"
// was left out.
func (r *rigWork) meansOn(p *partWork) bool {
	name := *p.body.Model
	host := r.parts[name.Text]
	if host == nil || host == p || !canCarry(host) || p.saysOn() || p.work.lacking || p.work.modelNamed(p.body.Kind.Text, name.Text) != nil {
		return false
	}
	d := r.report(wrongKind, name.Span, p.Name,
		"%s: %s is %s of this rig and no %s model, did you mean on %s?",
		p.Name, name.Text, article(host.Kind), p.body.Kind.Text, name.Text)
	offer(d, "write on "+clipped(name.Text), r.insert(name.Span.Start, "on "))
	host.named = true
	r.rig.Incomplete = true
	return true
}

// readName resolves the part that a clause names.
func (r *rigWork) readName(p *partWork, c syntax.ClauseUse) {
	switch c.Word.Text {
	case "holds":
		if end := r.find(*c.Name, canEnd); end != nil {
			p.Values.HoldsEnd = end.Part
		} else {
			r.rig.Incomplete = true
		}
	case "from":
		from := r.find(*c.Name, func(q *partWork) bool { return q.Fixed() })
		switch {
		case from == nil:
			r.rig.Incomplete = true
		case !from.Fixed() || from.Kind == model.Focal:
			r.misfit(*c.Name, "%s is no anchor, so that %s cannot come from it", from.Name, p.Name)
			r.rig.Incomplete = true
		default:
			from.leg = true
			p.Values.From = from.Part
		}
	case "to":
		to := r.find(*c.Name, func(q *partWork) bool { return q.Kind == model.Focal })
		switch {
		case to == nil:
			r.rig.Incomplete = true
		case to.Kind != model.Focal:
			r.misfit(*c.Name, "%s is no focal point, so that %s cannot lead to it", to.Name, p.Name)
			r.rig.Incomplete = true
		default:
			to.leg = true
			p.Values.To = to.Part
		}
	}
}

// saidAt gives the place in the rig that a part's clause comes from: the clause, or
// the name of the model that brought it from elsewhere.
func (r *rigWork) saidAt(p *model.Part, word string) source.Place {
	if p.FromStock(word) == nil {
		return p.Values.Places[word]
	}
	w := r.order[p.Index]
	return w.file.At(w.body.Model.Span)
}

// canEnd says whether a rope can end at the part.
func canEnd(p *partWork) bool { return p.Kind != model.Leg && !p.IsReeved() }

// checkLeg reports a leg that does not say where it runs; one of whose ends
// nothing is known joins nothing.
func (r *rigWork) checkLeg(p *partWork) {
	for _, word := range []string{"from", "to"} {
		if _, said := p.Values.Places[word]; said || p.lost(word) {
			continue
		}
		r.report(missingClause, p.NamePlace.Span, p.Name, "%s is a leg and needs both from and to", p.Name)
		r.rig.Incomplete = true
		break
	}
	if p.Values.From == nil || p.Values.To == nil {
		p.Values.From, p.Values.To = nil, nil
	}
}
