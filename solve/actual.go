package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Actual is a haul with friction. Its forces are in fractions of the reference
// weight, like those of the ideal phase.
type Actual struct {
	// Unknown lists the parts over which rope runs and of which neither clause nor
	// model gives an efficiency, in file order. If there are any, nothing else is set:
	// unknown is never taken for frictionless.
	Unknown []*model.Part
	// Stuck says that no forces balance with rope running the way that the exact
	// motion has it; nothing else is set then.
	Stuck bool
	// Pull moves the load: Low with every efficiency at its best, High at its worst.
	// Lowering it is the hand force, the other way round.
	Pull Force
	// Unset when lowering. Advantage is the ideal one times ideal pull over actual pull, Efficiency that
	// over the ideal; here Low is the worst.
	Advantage, Efficiency Force
	// Strands and Parts are what each carries, in the order of the phase's own.
	Strands []Strand
	Parts   []PartLoad
}

// Known says whether the figures could be computed.
func (a *Actual) Known() bool { return a != nil && len(a.Unknown) == 0 && !a.Stuck }

// actual solves a haul again with friction.
func (s *system) actual(ph *Phase) *Actual {
	f := &friction{system: s, ph: ph, run: ph.run}
	a, shown := f.haul()
	if shown == nil {
		return a
	}
	ph.usual = shown()
	f.carry(a, ph.usual)
	return a
}

// HaulWith gives the figures of a haul with friction as they would be with other
// hardware at the bends of some parts: pull, advantage and efficiency, but not what
// strands and parts carry. Without any other it gives those of the rig as it is. Nil
// unless the haul raises a load and takes a pull.
func (r *Result) HaulWith(ph *Phase, instead map[*model.Part]Hardware) *Actual {
	if ph.Status != OK || !ph.hauling() || ph.pull.Sign() <= 0 {
		return nil
	}
	f := &friction{system: r.system, ph: ph, run: ph.run, instead: instead}
	a, _ := f.haul()
	return a
}

// friction works on one haul whose exact solution is known.
type friction struct {
	*system
	ph  *Phase
	run running
	// instead are the parts at whose bends there is other hardware than written.
	instead map[*model.Part]Hardware
}

// bend gives the efficiency of a bend over which rope runs.
func (f *friction) bend(r *model.Rope, node int, at level) (eta lp.Num, known bool) {
	if other, there := f.instead[r.Nodes[node].Part]; there {
		return other.efficiency(wrapDegrees(r, node), included(r, node), at)
	}
	return bendEfficiency(r, node, at, f.ph.Lowering)
}

// haul gives the figures of a haul, and what gives the tensions to show; nil if there
// are none.
func (f *friction) haul() (a *Actual, shown func() *tensions) {
	if unknown := f.unknown(); len(unknown) > 0 {
		return &Actual{Unknown: unknown}, nil
	}
	a = &Actual{}
	usual, program := f.solve(typical)
	if usual == nil {
		return &Actual{Stuck: true}, nil
	}
	if f.open() {
		if t := f.spread(a); t != nil {
			return a, func() *tensions { return t }
		}
	}
	f.figures(a, usual.Value.Abs())
	return a, func() *tensions { return newTensions(program, usual, f.reference) }
}

// unknown lists the parts over which rope runs and whose efficiency is not known.
func (f *friction) unknown() []*model.Part {
	lacks := map[*model.Part]bool{}
	for _, r := range f.rig.Ropes {
		for i, passes := range f.run[r] {
			if passes.IsZero() || !bends(r.Nodes[i].Role) {
				continue
			}
			if _, known := f.bend(r, i, typical); !known {
				lacks[r.Nodes[i].Part] = true
			}
		}
	}
	var list []*model.Part
	for _, p := range f.rig.Parts {
		if lacks[p] {
			list = append(list, p)
		}
	}
	return list
}

func bends(role model.Role) bool { return role == model.Bend || role == model.Capture }

// ranges says whether an efficiency at a running bend is a range.
func (f *friction) ranges() bool {
	for _, r := range f.rig.Ropes {
		for i, passes := range f.run[r] {
			if passes.IsZero() || !bends(r.Nodes[i].Role) {
				continue
			}
			low, _ := f.bend(r, i, worst)
			high, _ := f.bend(r, i, best)
			if low.Cmp(high) != 0 {
				return true
			}
		}
	}
	return false
}

// losses gives the change of tension along every piece at a level of friction.
func (f *friction) losses(at level) *losses {
	n := f.ph.program.network
	l := &losses{links: make([][]lp.Num, len(n.pieces)), grips: make([]lp.Num, len(n.grips))}
	for i, p := range n.pieces {
		tension := lp.Int(1)
		for j, k := range p.links {
			if j > 0 {
				tension = f.past(tension, p.rope, k.from, at)
			}
			l.links[i] = append(l.links[i], tension)
		}
	}
	for i, g := range n.grips {
		l.grips[i] = f.passEfficiency(g, at)
		if f.runsBack(g) {
			l.grips[i] = l.grips[i].Inv()
		}
	}
	return l
}

// runsBack says whether rope runs over a grip toward its held side, as it does over
// one that is opened to lower.
func (f *friction) runsBack(g *gripGroup) bool {
	way := f.run.way(g.rope, g.nodes[0])
	if g.holds == model.LastSide {
		way = -way
	}
	return way < 0
}

// passEfficiency is that of the captures of a group of grips over which rope runs.
func (f *friction) passEfficiency(g *gripGroup, at level) lp.Num {
	product := lp.Int(1)
	for _, node := range g.nodes {
		if eta, running := f.efficiency(g.rope, node, at); running {
			product = product.Mul(eta)
		}
	}
	return product
}

// efficiency gives that of a bend over which rope runs.
func (f *friction) efficiency(r *model.Rope, node int, at level) (eta lp.Num, running bool) {
	if f.run.way(r, node) == 0 || !bends(r.Nodes[node].Role) {
		return eta, false
	}
	eta, _ = f.bend(r, node, at)
	return eta, true
}

// past gives the tension beyond a bend from the one before it: it grows by 1/η in
// the direction in which rope runs.
func (f *friction) past(tension lp.Num, r *model.Rope, node int, at level) lp.Num {
	eta, running := f.efficiency(r, node, at)
	switch {
	case !running:
		return tension
	case f.run.way(r, node) > 0:
		return tension.Quo(eta)
	}
	return tension.Mul(eta)
}

// solve gives the forces at a level of friction. The exact solution fixes which way
// rope runs over each bend; the program of forces then gives the rest, since at the
// largest pull that can be balanced a grip that could slide does. Where forces in
// that mode do not balance, or friction would ease the pull, the mode is wrong, and
// the program without a mode is asked. Nil if that has no answer either.
//
// Lowering, the smallest force on the hand is what is asked for, and the program
// without a mode must agree.
func (f *friction) solve(at level) (*lp.Solution, *program) {
	solved, program := f.inMode(at)
	if f.credible(solved) && !f.ph.Lowering {
		return solved, program
	}
	least, free := f.largestPull(at)
	switch {
	case !f.credible(least):
		return nil, nil
	case f.credible(solved) && solved.Value.Cmp(least.Value) == 0:
		return solved, program // the same force, with the mode's narrower ranges
	}
	return least, free
}

// credible says whether forces balance and friction does not ease the pull.
// Lowering, the program's value is the hand force negated, and friction eases it.
func (f *friction) credible(solved *lp.Solution) bool {
	ideal := f.ph.pull
	if f.ph.Lowering {
		ideal = ideal.Neg()
	}
	return solved.Status == lp.Optimal && solved.Value.Cmp(ideal) >= 0
}

// load is the weight of each body as it counts in the phase.
func (f *friction) load() []lp.Num {
	weight, _ := exactly(f.bodyWeights(f.ph.program.layout, f.ph.hauling()))
	return weight
}

// inMode gives the forces with the tension at every bend over which rope runs
// falling by its efficiency.
func (f *friction) inMode(at level) (*lp.Solution, *program) {
	program := newProgram(f.ph.program.network, f.load(), f.ph.program.hands, f.losses(at))
	return program.solve(), program
}

// figures sets pull, advantage and efficiency with their ranges.
func (f *friction) figures(a *Actual, usual lp.Num) {
	low, high := usual, usual
	if f.ranges() {
		for _, at := range []level{best, worst} {
			if s, _ := f.solve(at); s != nil {
				low, high = lp.Min(low, s.Value.Abs()), lp.Max(high, s.Value.Abs())
			}
		}
	}
	f.set(a, Force{Value: &usual, Low: &low, High: &high})
}

// set sets pull, advantage and efficiency by the pull with its range.
func (f *friction) set(a *Actual, pull Force) {
	a.Pull = f.ph.marked(pull)
	if f.ph.Lowering {
		return
	}
	ideal := f.ph.pull
	ratio := func(n lp.Num) lp.Num { return ideal.Quo(n) }
	value, least, most := ratio(*pull.Value), ratio(*pull.High), ratio(*pull.Low)
	a.Efficiency = Force{Value: &value, Low: &least, High: &most}
	if f.ph.Ideal == nil {
		return
	}
	times := func(n lp.Num) *lp.Num { m := n.Mul(*f.ph.Ideal); return &m }
	a.Advantage = Force{Value: times(value), Low: times(least), High: times(most)}
}

// carry sets what each strand and part carries.
func (f *friction) carry(a *Actual, t *tensions) {
	a.Strands, a.Parts = f.ph.forces(f.system, t)
	if !f.ranges() {
		return
	}
	if box := f.box(t); box != nil {
		strands, parts := f.ph.forces(f.system, box)
		for i := range a.Strands {
			a.Strands[i].widen(strands[i].Force)
		}
		for i := range a.Parts {
			a.Parts[i].widen(parts[i].Force)
		}
	}
}

// widen takes over the ends of a wider range.
func (f *Force) widen(wider Force) {
	if !f.Known() || !wider.Known() {
		return
	}
	low := lp.Min(*f.Low, *wider.Low)
	f.Low = &low
	if f.High == nil || wider.High == nil {
		f.High = nil
		return
	}
	high := lp.Max(*f.High, *wider.High)
	f.High = &high
}
