package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Bearing gives the phases whose forces parts must bear: all but a haul through a brake.
func (r *Result) Bearing() []*Phase {
	var list []*Phase
	for _, ph := range r.Every() {
		if !r.Brakes(ph) {
			list = append(list, ph)
		}
	}
	return list
}

// Brakes says whether a haul would drag rope backward through a brake that is there to
// lower: it has no advantage, rope runs over a device that does not hold it, or over a
// part with whole turns round it, and given rope the load comes down on the hand. Nobody
// hauls so; the pull that it would take is no force that comes on any part.
func (r *Result) Brakes(haul *Phase) bool {
	if haul.Hauler == nil || haul.Lowering || haul.Ideal == nil || haul.Ideal.Cmp(lp.Int(1)) > 0 || !haul.drags() {
		return false
	}
	for _, ph := range r.Lowers {
		if ph.Hauler == haul.Hauler {
			return ph.Status == Lowers
		}
	}
	return false
}

// drags says whether rope runs over a brake.
func (p *Phase) drags() bool {
	for r, ways := range p.run {
		for i, way := range ways {
			n := r.Nodes[i]
			if way.Sign() != 0 && n.Role == model.Bend && (n.Part.Kind == model.Device || n.Turns != nil) {
				return true
			}
		}
	}
	return false
}
