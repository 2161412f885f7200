package resolve

import "fairlead/lang/source"

// checkMasses reports the loads without mass in a rig where anything has one:
// what they weigh beside it cannot be told.
func (r *rigWork) checkMasses() {
	var heavy *partWork
	for _, p := range r.order {
		if p.saysMass() {
			heavy = p
			break
		}
	}
	if heavy == nil {
		return
	}
	for _, p := range r.order {
		fromUse := p.Model != "" && p.entry.work.lacking // its model may come from there
		if !p.Kind.IsWeight() || p.saysMass() || p.Faulty || fromUse {
			continue
		}
		r.read(p.entry)
		d := r.report(massMissing, p.NamePlace.Span, p.Name,
			"%s needs a mass, since %s has one", p.Name, heavy.Name)
		related(d, heavy.massPlace(), "the mass of %s", heavy.Name)
		r.rig.Incomplete = true
	}
}

// saysMass says whether a mass or weight is written of the part, be it a good one or not.
func (p *partWork) saysMass() bool { return p.massPlace().File != nil }

func (p *partWork) massPlace() source.Place {
	if place, ok := p.Values.Places["mass"]; ok {
		return place
	}
	return p.Values.Places["weight"]
}
