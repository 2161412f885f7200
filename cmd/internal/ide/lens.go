package ide

import "fairlead/lang/source"

// Lens is one line about a rig, to stand above it.
type Lens struct {
	// Rig is the rig's name, Span its name in the text, or its first statement.
	Rig   string
	Span  source.Span
	Title string
}

// Lenses says of each rig what it does: "3:1 simple, 2.77 with friction, pull 0.638 kN,
// 3 people; hands off: held by top".
func (d *Document) Lenses() []Lens {
	var list []Lens
	for i, r := range d.Model.Rigs {
		if len(r.Ropes) == 0 {
			continue
		}
		span := r.NamePlace.Span
		if span.Len() == 0 {
			span = source.Span{Start: r.Place.Span.Start, End: r.Place.Span.Start}
		}
		if f := d.figures(i); f != nil {
			list = append(list, Lens{Rig: r.Name, Span: span, Title: f.Line()})
		}
	}
	return list
}
