package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Stuck is what parts carry when people go on hauling though the load is stuck.
type Stuck struct {
	// Phase is the haul.
	Phase *Phase
	// Pull is that of all people together, in newtons.
	Pull lp.Num
	// Parts is what each part carries at that pull, in file order, if nothing gives way.
	Parts []PartLoad
	// Ideal says that friction is unknown or left out, so that parts on the load's side
	// carry at most this.
	Ideal bool
	// Fuses are the hitches and clamps that slip before the pull comes to that, in file
	// order. They slip at a pull of SlipsAt newtons, and Until is what each part carries
	// then: it is no more, however hard people pull. Without fuses it is Parts.
	Fuses   []*model.Part
	SlipsAt lp.Num
	Until   []PartLoad
}

// Stuck gives what parts carry when the loads that a haul raises are held back and people
// pull with so many newtons. The forces are those of the haul with the loads pinned: all
// but the loads are in balance, rope creeps the way it runs in the haul, and the ground
// takes what is over. Friction takes from what reaches the load, so a range of
// efficiencies counts with its better end.
//
// Nil unless the haul raises a load, masses are known, and the pull raises it.
func (r *Result) Stuck(ph *Phase, pull lp.Num) *Stuck {
	needed := r.PullNewtons(ph)
	if ph.Status != OK || ph.Lowering || needed == nil || pull.Cmp(*needed.Low) < 0 {
		return nil
	}
	f := &friction{system: r.system, ph: ph, run: ph.run}
	b := &blocked{friction: f, unit: *r.WeightNewtons}
	ideal := b.solve(pull.Quo(b.unit))
	if ideal == nil {
		return nil
	}
	shown, s := ideal, &Stuck{Phase: ph, Pull: pull, SlipsAt: pull, Ideal: true}
	if ph.Actual.Known() {
		b.losses = f.losses(best)
		if rubbed := b.solve(pull.Quo(b.unit)); rubbed != nil && rubbed.face.Value.Cmp(ideal.face.Value) >= 0 {
			shown, s.Ideal = rubbed, false
		} else {
			b.losses = nil
		}
	}
	_, s.Parts = ph.forces(f.system, shown)
	s.Until = s.Parts
	b.fuse(s, shown)
	return s
}

// blocked is a haul whose loads are held back.
type blocked struct {
	*friction
	// unit is the reference weight in newtons.
	unit lp.Num
	// losses are those of friction; nil: there is none.
	losses *losses
	// caps limits what grips hold, by their group: those that slip.
	caps map[int]lp.Num
}

// solve gives the forces at a pull, in fractions of the reference weight, at which the
// least possible reaches the loads: what can slide does, as in the haul. Nil if there is no
// balance. The value of the face is what
// reaches the loads beyond their weight, by the work that it would do, negated.
func (b *blocked) solve(pull lp.Num) *tensions {
	p := b.program(hands{hauler: b.ph.Hauler, free: true})
	row := p.lp.Row(pull)
	for i, piece := range p.pieces {
		if column := p.column[i]; column >= 0 && piece.pulledBy(b.ph.Hauler) > 0 {
			entries := &p.lp.Columns[column].Entries
			last := p.losses.along(i, len(piece.links)-1)
			*entries = append(*entries, lp.Entry{Row: row, Value: piece.pull(b.ph.Hauler, last)})
		}
	}
	solved := lp.Solve(p.lp)
	if solved.Status != lp.Optimal {
		return nil
	}
	return newTensions(p, solved, b.reference)
}

// program builds the program of the haul with the ground holding back the loads that
// rise: what that takes is a column of each, which costs the work that it would take.
func (b *blocked) program(do hands) *program {
	p := newProgram(b.ph.program.network, b.load(), do, b.losses)
	for _, m := range b.ph.Motion {
		if b.raisable(m.Body) && !m.Free && m.Rise.Sign() > 0 {
			cost := lp.Num{}
			if do.free {
				cost = m.Rise.Neg()
			}
			p.lp.Add(cost, lp.Entry{Row: m.Body.Index, Value: lp.Int(-1)})
		}
	}
	for group := range p.grips {
		most, capped := b.caps[group]
		if column := p.grip[group]; capped && column >= 0 {
			row := p.lp.Row(most)
			entries := &p.lp.Columns[column].Entries
			*entries = append(*entries, lp.Entry{Row: row, Value: lp.Int(1)})
			if most.Sign() > 0 {
				p.lp.Add(lp.Num{}, lp.Entry{Row: row, Value: lp.Int(1)})
			}
		}
	}
	return p
}

// fuse finds what slips before the pull is reached, and the forces at the largest pull
// that it bears: beyond it rope runs through it.
func (b *blocked) fuse(s *Stuck, full *tensions) {
	b.caps = map[int]lp.Num{}
	slips := false
	for group, holds := range full.gripForces() {
		switch most := b.slip(group); {
		case holds.carriesNothing():
			b.caps[group] = lp.Num{}
		case most != nil && holds.Most().Cmp(*most) > 0:
			b.caps[group] = *most
			slips = true
		}
	}
	if !slips {
		return
	}
	largest := lp.Solve(b.program(hands{hauler: b.ph.Hauler}).lp)
	if largest.Status != lp.Optimal || largest.Value.Cmp(s.Pull.Quo(b.unit)) >= 0 {
		return
	}
	until := b.solve(largest.Value)
	if until == nil {
		return
	}
	s.SlipsAt = largest.Value.Mul(b.unit)
	_, s.Until = b.ph.forces(b.system, until)
	holds := until.gripForces()
	for _, p := range b.rig.Parts {
		for group, most := range b.caps {
			if most.Sign() > 0 && holds[group].Most().Cmp(most) >= 0 && slices.Contains(until.network.grips[group].parts(), p) {
				s.Fuses = append(s.Fuses, p)
				break
			}
		}
	}
}

// slip gives the force at which a group of grips surely slips, in fractions of the
// reference weight: each bears the upper end of its range. Nil if it is not known of one,
// or if one harms the rope before.
func (b *blocked) slip(group int) *lp.Num {
	sum, g := lp.Num{}, b.ph.program.network.grips[group]
	for _, p := range g.parts() {
		v := p.Values
		if v.Slips == nil || v.Damages != nil && v.Damages.Low.Cmp(v.Slips.High) <= 0 {
			return nil
		}
		sum = sum.Add(lp.FromRat(v.Slips.High))
	}
	sum = sum.Quo(b.unit)
	return &sum
}

// parts lists the parts of a group, each once.
func (g *gripGroup) parts() []*model.Part {
	var list []*model.Part
	for _, node := range g.nodes {
		if p := g.rope.Nodes[node].Part; !slices.Contains(list, p) {
			list = append(list, p)
		}
	}
	return list
}
