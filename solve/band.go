package solve

import "fairlead/lang/model"

// Band is how far friction at rest may shift the tensions of a phase: at a bend
// under load over which no rope runs, the tension on one side lies anywhere between
// η and 1/η times that on the other.
type Band struct {
	// Unknown lists the parts at rest under load of which no efficiency is known, in
	// file order. If there are any, nothing else is set.
	Unknown []*model.Part
	// Strands and Parts are the phase's own (with friction where it is known), with
	// the widest ends that balance allows.
	Strands []Strand
	Parts   []PartLoad
}

// Known says whether the band could be computed.
func (b *Band) Known() bool { return b != nil && len(b.Unknown) == 0 }

// Band gives the band of a phase; nil if no bend under load is at rest, if the
// phase has no tensions, or if friction where rope runs is unknown.
func (r *Result) Band(ph *Phase) *Band {
	if !ph.Solved() || ph.usual == nil || ph.Hauler != nil && !ph.Actual.Known() {
		return nil
	}
	f := &friction{system: r.system, ph: ph, run: ph.run}
	atRest := f.atRest()
	if len(atRest) == 0 {
		return nil
	}
	b := &Band{}
	for _, p := range r.Rig.Parts {
		if known, there := atRest[p]; there && !known {
			b.Unknown = append(b.Unknown, p)
		}
	}
	if len(b.Unknown) > 0 {
		return b
	}
	all := f.newStretches(ph.usual, worst, true).all()
	if all == nil {
		return nil
	}
	b.Strands, b.Parts = ph.forces(f.system, all)
	return b
}

// atRest gives the parts with a bend under load that turns the rope and over which
// none runs, and whether the efficiency of all of them is known.
func (f *friction) atRest() map[*model.Part]bool {
	parts := map[*model.Part]bool{}
	for i, p := range f.ph.program.pieces {
		if f.ph.tension[i].Sign() <= 0 {
			continue
		}
		for _, k := range p.links[1:] {
			if f.run.way(p.rope, k.from) != 0 || !bends(p.rope.Nodes[k.from].Role) || wrapDegrees(p.rope, k.from).Sign() == 0 {
				continue
			}
			part := p.rope.Nodes[k.from].Part
			_, known := f.bend(p.rope, k.from, worst)
			before, seen := parts[part]
			parts[part] = known && (before || !seen)
		}
	}
	return parts
}
