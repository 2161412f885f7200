package solve

import (
	"math/big"
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// solvePhase solves the tension program of one boundary condition: a hauler
// pulls, or nobody does (hold).
func (s *system) solvePhase(name string, hauler *model.Part) *Phase {
	ph := &Phase{Name: name, Hauler: hauler}
	network := s.held
	if hauler != nil {
		network = s.pulled
	}
	weight, inexact := exactly(s.bodyWeights(network.layout, ph.hauling()))
	ph.inexact = inexact
	ph.program = newProgram(network, weight, hands{hauler: hauler}, nil)
	solved := lp.Solve(ph.program.lp)
	switch solved.Status {
	case lp.Infeasible:
		s.runaway(ph, solved)
		ph.Unpinned = s.unpinned(ph, weight)
		if hauler == nil && ph.Status == Unbalanced {
			s.sag(ph, weight)
		}
	case lp.Unbounded:
		ph.Status = Jammed
		ph.Jam = jam(ph.program, hauler, solved.X)
	default:
		s.balance(ph, solved)
	}
	if ph.Pull == nil {
		s.withoutTensions(ph)
	}
	return ph
}

// hauling says whether the phase raises: on a slope friction then adds to the
// weight, else it takes off.
func (p *Phase) hauling() bool { return p.Hauler != nil && !p.Lowering }

// bodyWeights gives the weight of each body in fractions of the reference weight.
func (s *system) bodyWeights(l *layout, hauling bool) []lp.Num {
	weight := make([]lp.Num, len(l.bodies))
	for i, b := range l.bodies {
		for _, p := range b.Parts {
			weight[i] = weight[i].Add(s.weights.of(p, hauling))
		}
	}
	return weight
}

// sag solves hold again where only parts with a weight of their own go down, such as
// a heavy pulley on a hitch that slides down its rope: without those weights, so
// that what holds the load is seen.
func (s *system) sag(ph *Phase, weight []lp.Num) {
	light := slices.Clone(weight)
	var sagging []*Body
	for i, b := range s.bodies {
		if len(b.Loads) == 0 && weight[i].Sign() > 0 {
			light[i] = lp.Num{}
			sagging = append(sagging, b)
		}
	}
	program := newProgram(ph.program.network, light, hands{}, nil)
	solved := lp.Solve(program.lp)
	if solved.Status != lp.Optimal {
		return
	}
	ph.program, ph.Ray, ph.Sagging = program, nil, sagging
	s.balance(ph, solved)
}

// exactly gives weights as fractions. The weight of a load on a slope is irrational;
// motion and advantage do not depend on it and stay exact, so the program is
// solved with the fraction nearest to it and the forces are marked inexact after.
func exactly(weight []lp.Num) (exact []lp.Num, inexact bool) {
	exact = make([]lp.Num, len(weight))
	for i, w := range weight {
		exact[i] = w
		if !w.IsExact() {
			exact[i] = lp.FromRat(new(big.Rat).SetFloat64(w.Float()))
			inexact = true
		}
	}
	return exact, inexact
}

// marked gives a force as inexact if the weights were.
func (p *Phase) marked(f Force) Force {
	if !p.inexact {
		return f
	}
	mark := func(n *lp.Num) *lp.Num {
		if n == nil || n.IsZero() {
			return n
		}
		m := lp.Approx(n.Float())
		return &m
	}
	return Force{Value: mark(f.Value), Low: mark(f.Low), High: mark(f.High)}
}

// balance reads motion and forces off an optimum.
func (s *system) balance(ph *Phase, solved *lp.Solution) {
	pull := solved.Value
	ph.pull = pull
	ph.Pull = ph.marked(Force{Value: &pull}).Value
	s.motions(ph, solved)
	t := newTensions(ph.program, solved, s.reference)
	ph.exact, ph.usual = t, t
	ph.run = newRunning(ph.program, solved, t.pieceTensions())
	ph.ShareUnmet = t.unmet
	ph.tension = t.pieceTensions()
	ph.holds = t.gripForces()
	ph.Strands, ph.Parts = ph.forces(s, t)
	if raised := s.judge(ph); raised != nil {
		ph.Class, ph.Stages = classify(ph, raised)
	}
	if ph.Status == OK && ph.Hauler != nil && pull.Sign() > 0 && !s.ideal {
		ph.Actual = s.actual(ph)
	}
}

// forces gives what every strand and part carries under some tensions.
func (p *Phase) forces(s *system, t *tensions) ([]Strand, []PartLoad) {
	pull := t.pull(p.Hauler)
	var strands []Strand
	for _, r := range s.rig.Ropes {
		for i := range r.Strokes {
			strand := Strand{Rope: r, Index: i}
			if !r.Broken {
				force := t.strand(r, i)
				strand.Force, strand.Count = p.marked(force), inPulls(*force.Value, pull)
				strand.Slack = strand.carriesNothing()
			}
			strands = append(strands, strand)
		}
	}
	hauling := p.hauling()
	parts := newLoads(t, p.Hauler, func(q *model.Part) lp.Num { return s.weights.of(q, hauling) }).all()
	for i := range parts {
		parts[i].Force = p.marked(parts[i].Force)
	}
	return strands, parts
}

// inPulls gives a tension as a multiple of the pull; nil without a pull.
func inPulls(tension, pull lp.Num) *lp.Num {
	if pull.Sign() == 0 {
		return nil
	}
	count := tension.Quo(pull)
	return &count
}

func (f Force) carriesNothing() bool {
	return f.Known() && f.High != nil && f.High.Sign() == 0
}

// motion reads the motion of a body. If the optimum leaves it open, it moves no
// further than it must (a load in balance with its counterweight rises with it); it
// is free if it need not move at all.
func motion(solved *lp.Solution, b *Body) Motion {
	low, high, lowLimited, highLimited := solved.MultiplierRange(b.Index)
	switch {
	case lowLimited && highLimited && low.Cmp(high) == 0, lowLimited && low.Sign() > 0:
		return Motion{Body: b, Rise: low}
	case highLimited && high.Sign() < 0:
		return Motion{Body: b, Rise: high}
	}
	return Motion{Body: b, Free: true}
}

// judge gives the status of a phase whose program has an optimum, and its
// advantage if it raises the load: then it gives the motion that this is about.
func (s *system) judge(ph *Phase) *Motion {
	if ph.Hauler == nil {
		ph.Status = OK
		return nil
	}
	ph.Status = RaisesNothing
	for _, m := range ph.Motion {
		if s.raisable(m.Body) && !m.Free && m.Rise.Sign() > 0 {
			ph.Status = OK
		}
	}
	raised := s.raised(ph)
	if ph.Status != OK || raised == nil {
		return nil
	}
	ideal := raised.Rise.Inv()
	ph.Ideal = &ideal
	return raised
}

// raisable says whether raising the body is what a haul is for: it has the load
// that "raise" names, or any load where none does.
func (s *system) raisable(b *Body) bool {
	for _, p := range b.Loads {
		if p.Kind == model.Load && (!s.named || p == s.reference) {
			return true
		}
	}
	return false
}

// raised gives the motion of the body that the ideal advantage is about: that of
// the load that "raise" names, else the only body with a load. Nil if there are
// several, or if it does not rise.
func (s *system) raised(ph *Phase) *Motion {
	var found *Motion
	for i := range ph.Motion {
		if !s.raisable(ph.Motion[i].Body) {
			continue
		}
		if found != nil {
			return nil
		}
		found = &ph.Motion[i]
	}
	if found == nil || found.Free || found.Rise.Sign() <= 0 {
		return nil
	}
	return found
}

// withoutTensions lists strands and parts with unknown forces, but for rope that
// carries nothing whatever happens.
func (s *system) withoutTensions(ph *Phase) {
	for _, r := range s.rig.Ropes {
		for i := range r.Strokes {
			strand := Strand{Rope: r, Index: i}
			if at := ph.program.strands[r][i]; !r.Broken && at.piece >= 0 && ph.program.column[at.piece] < 0 {
				strand.Force, strand.Slack = zeroLoad(nil).Force, true
			}
			ph.Strands = append(ph.Strands, strand)
		}
	}
	for _, p := range s.rig.Parts {
		ph.Parts = append(ph.Parts, PartLoad{Part: p})
	}
}

// jam finds where the rope of the hauled end is fast: the piece that people pull
// and that a ray without bound stretches.
func jam(p *program, hauler *model.Part, ray []lp.Num) *Jam {
	for i, piece := range p.pieces {
		if column := p.column[i]; column >= 0 && ray[column].Sign() > 0 && piece.pulledBy(hauler) > 0 {
			return &Jam{Rope: piece.rope, From: piece.start.node, To: piece.end.node}
		}
	}
	return nil
}

// runaway reads off a program without balance what moves without bound: a load
// goes down (falls), goes up, or only other parts move.
func (s *system) runaway(ph *Phase, solved *lp.Solution) {
	ph.Status = Unbalanced
	up := false
	for i, b := range s.bodies {
		rise := solved.Y[i]
		ph.Ray = append(ph.Ray, Motion{Body: b, Rise: rise})
		if len(b.Loads) == 0 {
			continue
		}
		if rise.Sign() < 0 {
			ph.Status = Falls
		}
		up = up || rise.Sign() > 0 && s.raisable(b)
	}
	if up && !s.loadSinks(ph.Ray) {
		ph.Status = RunsUp
	}
}

// loadSinks says whether a load, not a counterweight only, goes down.
func (s *system) loadSinks(ray []Motion) bool {
	for _, m := range ray {
		if m.Rise.Sign() < 0 && s.raisable(m.Body) {
			return true
		}
	}
	return false
}

// unpinned finds the weightless bodies that fly up along the ray and of which
// holding any single one would give the program a balance: nothing pulls them
// the other way. None unless a load falls in a haul.
func (s *system) unpinned(ph *Phase, weight []lp.Num) []*Body {
	var found []*Body
	if ph.Status != Falls || ph.Hauler == nil {
		return nil
	}
	for _, m := range ph.Ray {
		if m.Rise.Sign() <= 0 || weight[m.Body.Index].Sign() != 0 {
			continue
		}
		if lp.Solve(pinned(ph.program.lp, m.Body.Index)).Status != lp.Infeasible {
			found = append(found, m.Body)
		}
	}
	return found
}

// pinned gives the program with the row of one body left free: a support holds it.
func pinned(p *lp.Program, row int) *lp.Program {
	q := &lp.Program{RHS: p.RHS, Columns: p.Columns[:len(p.Columns):len(p.Columns)]}
	q.Add(lp.Num{}, lp.Entry{Row: row, Value: lp.Int(1)})
	q.Add(lp.Num{}, lp.Entry{Row: row, Value: lp.Int(-1)})
	return q
}
