package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// OpenShare is a load that statics leaves open while hauling, because ropes to several
// haulers or fixed points can share it in more than one way.
type OpenShare struct {
	// Phase is the haul in which the part may carry most.
	Phase *Phase
	// Low and High are the ends of what it carries there, in newtons, with friction where
	// it is known.
	Low, High lp.Num
	// Settled is the worst load of all phases that does not hang on it, in newtons: in the
	// phases where the share is open the lower end.
	Settled lp.Num
	// Ropes are those whose forces are open in Phase, in file order.
	Ropes []*model.Rope
}

// openShare gives how much of what a part carries is open; nil if nothing is, if the
// shares are stated, if there is no upper end (preload), or if nothing has a mass.
func (r *Result) openShare(part *model.Part) *OpenShare {
	if r.WeightNewtons == nil {
		return nil
	}
	var open *OpenShare
	for _, ph := range r.Bearing() {
		if !ph.hauling() || !ph.leavesOpen(part) || sharesStated(r.Rig) && !ph.ShareUnmet {
			continue
		}
		parts, _ := ph.Loads()
		load := parts[part.Index]
		if load.High == nil {
			continue
		}
		high := load.High.Mul(*r.WeightNewtons)
		if open == nil || high.Cmp(open.High) > 0 {
			open = &OpenShare{Phase: ph, Low: load.Low.Mul(*r.WeightNewtons), High: high}
		}
	}
	if open != nil {
		open.Settled = r.settled(part)
		open.Ropes = open.Phase.openRopes()
	}
	return open
}

// leavesOpen says whether statics leaves open, between two ends, what a part carries.
func (p *Phase) leavesOpen(part *model.Part) bool {
	load := p.Parts[part.Index]
	return load.Ranges() && load.High != nil
}

// settled gives the worst load of a part that does not hang on an open share, in newtons.
func (r *Result) settled(part *model.Part) lp.Num {
	worst := lp.Num{}
	for _, ph := range r.Bearing() {
		parts, _ := ph.Loads()
		load := parts[part.Index]
		switch {
		case !load.Known():
		case ph.leavesOpen(part):
			worst = lp.Max(worst, *load.Low)
		default:
			worst = lp.Max(worst, load.Most())
		}
	}
	return worst.Mul(*r.WeightNewtons)
}

// openRopes lists the ropes on which some force is open.
func (p *Phase) openRopes() []*model.Rope {
	var list []*model.Rope
	for _, s := range p.Strands {
		if s.Ranges() && s.High != nil && (len(list) == 0 || list[len(list)-1] != s.Rope) {
			list = append(list, s.Rope)
		}
	}
	return list
}

// sharesStated says whether any rope's share is stated.
func sharesStated(rig *model.Rig) bool {
	for _, r := range rig.Ropes {
		for _, n := range r.Nodes {
			if n.Share != nil && !r.Broken {
				return true
			}
		}
	}
	return false
}
