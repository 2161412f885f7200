package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Opposed is a haul that raises a load only if others give rope meanwhile.
type Opposed struct {
	// Haul is the phase of who hauls, in which all others hold still.
	Haul *Phase
	// By are those of the others who must give rope, in file order.
	By []*model.Part
	// Ideal is the advantage once they do; nil where it is no single figure.
	Ideal *lp.Num
}

// Opposed gives the hauls that do not raise a load while the other haulers hold still,
// but would if some of them gave rope. None if the rig is unsolved.
func (r *Result) Opposed() []Opposed {
	var list []Opposed
	for _, ph := range r.Hauls() {
		if ph.Status == OK || len(r.Hauls()) < 2 {
			continue
		}
		if o := r.system.opposed(ph, r.Hauls()); o != nil {
			list = append(list, *o)
		}
	}
	return list
}

// opposed lets all others give rope, and takes back who need not. Nil if giving rope
// does not help.
func (s *system) opposed(ph *Phase, hauls []*Phase) *Opposed {
	var giving []*model.Part
	for _, h := range hauls {
		if h != ph {
			giving = append(giving, h.Hauler)
		}
	}
	raised := s.givenRope(ph.Hauler, giving)
	if raised.Status != OK {
		return nil
	}
	for i := len(giving) - 1; i >= 0; i-- {
		fewer := slices.Delete(slices.Clone(giving), i, i+1)
		if still := s.givenRope(ph.Hauler, fewer); still.Status == OK {
			giving, raised = fewer, still
		}
	}
	return &Opposed{Haul: ph, By: giving, Ideal: raised.Ideal}
}

// givenRope glances at a haul while some of the others give rope.
func (s *system) givenRope(hauler *model.Part, giving []*model.Part) *Phase {
	return s.glancePhase(newNetworkGiving(s.pulled.layout, giving), hauler)
}
