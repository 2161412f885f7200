package solve

import (
	"strings"

	"fairlead/lang/model"
)

// system is a rig laid out for its phases.
type system struct {
	rig       *model.Rig
	weights   *weights
	reference *model.Part
	// named says that "raise" names the reference.
	named  bool
	bodies []*Body
	// ideal leaves friction and lowering out.
	ideal bool
	// held is the network with hands off, pulled the one with every hauler at work.
	held, pulled *network
	// place is where the parts are.
	place positions
	stays stays
	// ratings are those of the result, once asked for.
	ratings ratings
}

// Rig computes everything of one rig.
func Rig(rig *model.Rig) *Result { return newWholeSystem(rig).result(false) }

// Ideal computes only what needs no friction and no lowering: status, advantage,
// class, ideal forces and whether the rig stays up. It is what trying a change out
// takes.
func Ideal(rig *model.Rig) *Result { return newWholeSystem(rig).result(true) }

func (s *system) result(ideal bool) *Result {
	rig := s.rig
	s.ideal = ideal
	res := &Result{Rig: rig, Status: Unsolved, Bodies: s.bodies, Reference: s.reference, system: s}
	if s.weights.newtons {
		unit := s.weights.unit
		res.WeightNewtons = &unit
	}
	if s.reference == nil || !hasRope(rig) {
		return res
	}
	res.Phases = append(res.Phases, s.solvePhase("hold", nil))
	haulers := s.haulers()
	for _, h := range haulers {
		name := "haul"
		if len(haulers) > 1 {
			name += " " + h.Name
		}
		res.Phases = append(res.Phases, s.solvePhase(name, h))
		if ideal {
			continue
		}
		res.Lowers = append(res.Lowers, s.solveLower("lower"+strings.TrimPrefix(name, "haul"), h))
	}
	res.Status = overall(res.Hauls())
	res.Released = res.After(Lost{})
	if !ideal {
		s.measure(res)
	}
	return res
}

// newWholeSystem lays a rig out for every phase.
func newWholeSystem(rig *model.Rig) *system {
	s := newSystem(rig)
	s.place = newPositions(rig)
	s.held = newNetwork(s.pulled.layout, true)
	return s
}

// newSystem lays a rig out for its hauls.
func newSystem(rig *model.Rig) *system {
	s := &system{rig: rig}
	s.reference, s.named = referenceLoad(rig)
	s.weights = newWeights(rig, s.reference)
	layout := newLayout(rig, Lost{}, s.weights)
	s.bodies = layout.bodies
	s.pulled = newNetwork(layout, false)
	return s
}

// referenceLoad gives the load whose weight all ratios are of: the one with
// "raise", else the first load that can move.
func referenceLoad(rig *model.Rig) (load *model.Part, named bool) {
	for _, p := range rig.Parts {
		if p.Kind != model.Load || !p.Moves() {
			continue
		}
		if p.Values.Raise != nil {
			return p, true
		}
		if load == nil {
			load = p
		}
	}
	return load, false
}

func hasRope(rig *model.Rig) bool {
	for _, r := range rig.Ropes {
		if !r.Broken && len(r.Strokes) > 0 {
			return true
		}
	}
	return false
}

// haulers lists those that hold a rope's end, in file order.
func (s *system) haulers() []*model.Part {
	pulls := map[*model.Part]bool{}
	for _, p := range s.pulled.pieces {
		for _, b := range []boundary{p.start, p.end} {
			if b.cut == hauled {
				pulls[b.hauler] = true
			}
		}
	}
	var list []*model.Part
	for _, p := range s.rig.Parts {
		if pulls[p] {
			list = append(list, p)
		}
	}
	return list
}

// overall gives the status of a rig: ok if any haul raises, else the first in
// the order of the statuses that fits one.
func overall(hauls []*Phase) Status {
	if len(hauls) == 0 {
		return NoHaul
	}
	for _, want := range []Status{OK, Falls, RunsUp, Unbalanced, Jammed} {
		for _, ph := range hauls {
			if ph.Status == want {
				return want
			}
		}
	}
	return RaisesNothing
}
