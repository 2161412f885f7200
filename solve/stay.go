package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Without says whether the rig stays up, hands off, once a part is lost; nil
// loses nothing (the whistle test).
func (r *Result) Without(lost *model.Part) Stay { return r.After(LostOf(r.Rig, lost)) }

// After says whether the rig stays up, hands off, once something is lost.
func (r *Result) After(lost Lost) Stay { return r.stays(question{lost: lost}) }

// AfterWhileHauling is After with every hauler holding on to their rope's ends,
// which stand still.
func (r *Result) AfterWhileHauling(lost Lost) Stay {
	return r.stays(question{lost: lost, hauling: true})
}

// TiedOff is the whistle test with the rope's ends of one hauler made fast, who need
// not let go then; all others do.
func (r *Result) TiedOff(hauler *model.Part) Stay { return r.stays(question{tied: hauler}) }

// Losses is the critical-point test: everything that can be lost, each in turn and
// alone, hands off, in file order.
// Nil if the rig is unsolved.
func (r *Result) Losses() []Loss { return r.losses(r.After) }

// LossesWhileHauling is Losses with every hauler holding on.
func (r *Result) LossesWhileHauling() []Loss { return r.losses(r.AfterWhileHauling) }

func (r *Result) losses(after func(Lost) Stay) []Loss {
	if r.Status == Unsolved {
		return nil
	}
	var list []Loss
	for _, lost := range everyLost(r.Rig) {
		list = append(list, Loss{Lost: lost, Stay: after(lost)})
	}
	return list
}

// stays answers each question once.
func (r *Result) stays(ask question) Stay {
	if r.Status == Unsolved {
		return Stay{}
	}
	known := &r.system.stays
	known.Lock()
	defer known.Unlock()
	stay, asked := known.answers[ask]
	if !asked {
		if known.answers == nil {
			known.answers = map[question]Stay{}
			known.learn(r.Hold())
		}
		stay = r.system.stay(ask)
		known.answers[ask] = stay
	}
	return stay
}

// stay asks programs, from the strongest answer to the weakest, whether forces in
// balance exist: without the slack rope, with it pulled tight, with knots that stop
// at bends, and with every strand free to push once its parts have met. Forces that
// were in balance before may answer the first, a motion known from one the others.
func (s *system) stay(ask question) Stay {
	if forces := s.stays.unchanged(ask); forces != nil {
		return Stay{Answer: Held, lost: ask.lost, forces: forces}
	}
	network := newNetworkTied(newLayout(s.rig, ask.lost, s.weights), !ask.hauling, ask.tied)
	weight, _ := exactly(s.bodyWeights(network.layout, false))
	stay := Stay{Answer: Held, Grounded: s.grounded(network, weight), lost: ask.lost}
	if stay.forces = s.stays.prove(network, weight); stay.forces != nil {
		return stay
	}
	program := newStayProgram(network, weight, asDrawn)
	solved := program.solve()
	if solved.Status != lp.Infeasible {
		stay.forces = program.strandForces(solved.X)
		s.stays.add(&proof{stay.forces, ask.keepsWhole(s.pulled.layout, stay.forces)})
		return stay
	}
	stay.Answer, stay.Sinking = Down, sinking(network, solved)
	stay.stops(network, weight, solved.Y, s.place)
	return stay
}

// keepsWhole says what carries something in tensions that keep the rig without what is
// lost, if they keep the whole rig too, since nothing lost would carry anything; nil if
// not.
func (q question) keepsWhole(whole *layout, forces strandForces) *busyness {
	if q.hauling || q.tied != nil {
		return nil
	}
	busy := newBusyness(whole, forces)
	if q.lost.Part != nil && !busy.idle(q.lost) {
		return nil
	}
	return busy
}

// stops finds what stops a rig that is not held and goes down as a motion says; a
// motion that a reading of the strands allows is not stopped there.
func (s *Stay) stops(n *network, weight, motion []lp.Num, place positions) {
	for _, how := range []reading{pulledTight, knotsMeet, partsMeet} {
		if n.allows(motion, how) {
			continue
		}
		program := newStayProgram(n, weight, how)
		solved := program.solve()
		if solved.Status == lp.Infeasible {
			motion = solved.Y
			continue
		}
		s.Answer, s.Catching = Caught, program.catching(solved.X)
		s.forces = program.strandForces(solved.X)
		if how != pulledTight {
			s.Answer, s.Catching, s.Meeting = Jams, nil, program.meeting(solved.X)
			s.AtKnot = how == knotsMeet
		}
		s.Drop = n.drop(weight, place)
		return
	}
}

// sinking lists the bodies with weight that go down along the ray.
func sinking(n *network, solved *lp.Solution) []*Body {
	var list []*Body
	for i, b := range n.bodies {
		if b.Weight.Sign() > 0 && solved.Y[i].Sign() < 0 {
			list = append(list, b)
		}
	}
	return list
}

// grounded lists the bodies that weigh nothing along their slope because the
// friction of the ground keeps them, and that nothing else would keep: without it
// they would go down.
func (s *system) grounded(n *network, weight []lp.Num) []*Body {
	bare, kept := slices.Clone(weight), []*Body(nil)
	for i, b := range n.bodies {
		if down := s.downSlope(b); weight[i].Sign() == 0 && down.Sign() > 0 {
			bare[i] = down
			kept = append(kept, b)
		}
	}
	if len(kept) == 0 {
		return nil
	}
	exact, _ := exactly(bare)
	solved := newStayProgram(n, exact, asDrawn).solve()
	if solved.Status != lp.Infeasible {
		return nil
	}
	return slices.DeleteFunc(kept, func(b *Body) bool { return solved.Y[b.Index].Sign() >= 0 })
}

// downSlope gives the pull of a body's loads down their slopes without friction, in
// fractions of the reference weight.
func (s *system) downSlope(b *Body) lp.Num {
	sum := lp.Num{}
	for _, p := range b.Loads {
		if p.Values.Slope != nil {
			sum = sum.Add(s.weights.plumb(p).Quo(s.weights.unit).Mul(sine(p.Values.Slope.Middle())))
		}
	}
	return sum
}
