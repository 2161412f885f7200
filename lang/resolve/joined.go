package resolve

import "fairlead/lang/syntax"

// closeJoins notes the part that each join leaves, and reports the ends that the rig
// does not have.
func (r *rigWork) closeJoins() {
	r.file = r.out.Source
	for _, name := range r.made.unjoined {
		r.at = &entry{Statement: &syntax.Statement{}, file: r.file}
		r.find(name, func(p *partWork) bool { return p.Kind.IsPerson() || p.Kind.IsWeight() })
	}
	for _, join := range r.rig.Joins {
		if p := r.parts[r.made.now(r.made.remains[join])]; p != nil {
			join.Remains = p.Part
		}
	}
}
