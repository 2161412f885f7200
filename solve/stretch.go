package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// stretches is a program of forces with a column for each stretch of rope over
// which the tension is the same, so that the ratio of tensions at a bend need not
// be fixed but can be limited.
type stretches struct {
	*friction
	*program
	// usual are the tensions of the usual solution, and shown the columns' values
	// in it. Nil while no such solution is known.
	usual *tensions
	shown []lp.Num
	// at is the level of friction without a usual solution.
	at level
	// static lets friction act either way at bends over which no rope runs.
	static bool
}

func (f *friction) newStretches(usual *tensions, at level, static bool) *stretches {
	network := f.ph.program.network
	b := &stretches{friction: f, program: &program{network: network, lp: &lp.Program{}}, usual: usual, at: at, static: static}
	b.hands = f.ph.program.hands
	b.lp.RHS = append(b.lp.RHS, f.load()...)
	for i := range b.pieces {
		b.addLinks(i)
	}
	for i, g := range b.network.grips {
		b.grip = append(b.grip, b.addGrip(i, g))
	}
	return b
}

// box gives the tensions that efficiencies anywhere in their ranges allow, each
// bend on its own: at a bend over which rope runs, the tension after lies between
// the one before over the best efficiency and over the worst. The usual tensions
// are those shown. Nil if the program cannot be solved.
func (f *friction) box(usual *tensions) *tensions {
	return f.newStretches(usual, worst, false).all()
}

// all gives all tensions that the program allows, the usual ones shown.
func (b *stretches) all() *tensions {
	solved := b.program.solve()
	if solved.Status != lp.Optimal {
		return nil
	}
	open := make([]bool, len(b.shown))
	for i := range open {
		open[i] = true
	}
	return &tensions{program: b.program, face: solved, shown: b.shown, open: open, any: true, limits: map[int]limit{}}
}

// largestPull is the other way to the forces with friction, with no direction of
// grips and slack taken for granted: the pull that just starts the raise is the
// largest for which tensions exist with every body in balance, a ratio between η
// and 1/η at every bend over which the exact motion runs rope, and 1 at the others;
// at a hitch the tension after is at most the held one, at a capture at most the
// held one over η.
func (f *friction) largestPull(at level) (*lp.Solution, *program) {
	b := f.newStretches(nil, at, false)
	for i, p := range b.pieces {
		if b.column[i] < 0 {
			continue
		}
		b.pulledAt(p.start, b.links[i][0])
		b.pulledAt(p.end, b.links[i][len(p.links)-1])
	}
	return b.program.solve(), b.program
}

// pulledAt counts the tension of a column as pull if the phase's hauler holds it.
func (b *stretches) pulledAt(end boundary, column int) {
	if end.cut != hauled || end.hauler != b.ph.Hauler {
		return
	}
	pull := lp.Int(1)
	if b.hands.lowering {
		pull = lp.Int(-1)
	}
	c := &b.lp.Columns[column]
	c.Cost = c.Cost.Add(pull)
}

// add adds a column with the value that it has in the usual solution.
func (b *stretches) add(shown lp.Num, entries ...lp.Entry) int {
	b.shown = append(b.shown, shown)
	return b.lp.Add(lp.Num{}, entries...)
}

// carries says whether a piece can have tension: with a usual solution, whether it
// has a column there.
func (b *stretches) carries(piece int) bool {
	if b.usual != nil {
		return b.usual.column[piece] >= 0
	}
	return !b.pieces[piece].opens() && !b.pieces[piece].fresh()
}

// shownIn gives the usual tension of a link.
func (b *stretches) shownIn(piece, link int) lp.Num {
	if b.usual == nil {
		return lp.Num{}
	}
	return b.usual.linkTension(piece, link)
}

// addLinks adds the columns of a piece.
func (b *stretches) addLinks(piece int) {
	p := b.pieces[piece]
	columns := make([]int, len(p.links))
	defer func() {
		b.links = append(b.links, columns)
		b.column = append(b.column, columns[0])
	}()
	for i, k := range p.links {
		if !b.carries(piece) {
			columns[i] = -1
			continue
		}
		runs := b.parts(p.rope, k.from)
		if i > 0 && !runs {
			columns[i] = columns[i-1]
		} else {
			columns[i] = b.add(b.shownIn(piece, i))
		}
		entries := &b.lp.Columns[columns[i]].Entries
		*entries = append(*entries, b.balance(k.form)...)
		if i > 0 && runs {
			b.ratio(p.rope, k.from, columns[i-1], columns[i])
		}
	}
}

// modeless says that the ratios at running bends are not taken as given: no usual
// solution is known, or it is one without a mode itself.
func (b *stretches) modeless() bool { return b.usual == nil || b.usual.links != nil }

// shownHold gives what a grip holds in the usual solution.
func (b *stretches) shownHold(group int) lp.Num {
	if b.usual == nil {
		return lp.Num{}
	}
	return b.usual.gripForce(group)
}

// parts says whether the tensions on the two sides of a node may differ.
func (b *stretches) parts(r *model.Rope, node int) bool {
	if _, runs := b.efficiency(r, node, typical); runs || !b.static || !bends(r.Nodes[node].Role) {
		return runs
	}
	_, known := b.bend(r, node, worst)
	return known // unknown only where the rope is slack
}

// ratio limits the ratio of the tensions before and after a bend over which rope
// runs: to what its range of efficiencies allows, or without a usual solution to
// what its friction could bear either way.
func (b *stretches) ratio(r *model.Rope, node, before, after int) {
	low, _ := b.efficiency(r, node, worst)
	high, _ := b.efficiency(r, node, best)
	switch {
	case b.run.way(r, node) == 0:
		eta, _ := b.bend(r, node, worst)
		b.between(before, after, eta, eta.Inv())
	case b.modeless():
		eta, _ := b.efficiency(r, node, b.at)
		b.between(before, after, eta, eta.Inv())
	case b.run.way(r, node) < 0:
		b.between(after, before, low, high)
	default:
		b.between(before, after, low, high)
	}
}

// between limits the tension in column to by the one in column from, from which
// rope runs: from/high ≤ to ≤ from/low.
func (b *stretches) between(from, to int, low, high lp.Num) {
	before, after := b.shown[from], b.shown[to]
	b.limit(from, lp.Int(-1), to, high, after.Mul(high).Sub(before))
	b.limit(from, lp.Int(1), to, low.Neg(), before.Sub(after.Mul(low)))
}

// limit adds the row first·x + second·y ≥ 0, which has the given value as shown.
func (b *stretches) limit(x int, first lp.Num, y int, second lp.Num, shown lp.Num) {
	row := b.lp.Row(lp.Num{})
	for _, t := range []lp.Term{{Column: x, Value: first}, {Column: y, Value: second}} {
		entries := &b.lp.Columns[t.Column].Entries
		*entries = append(*entries, lp.Entry{Row: row, Value: t.Value})
	}
	b.add(shown, lp.Entry{Row: row, Value: lp.Int(-1)})
}

// addGrip ties the tensions on the two sides of a grip together: while it slides
// they keep the ratio that its efficiency allows; while it holds, what it holds is
// a column of its own.
func (b *stretches) addGrip(group int, g *gripGroup) int {
	held, other := b.gripColumn(g, g.held()), b.gripColumn(g, g.other())
	switch {
	case held < 0 || other < 0:
		return b.oneSided(held, other, b.letsRun(group, g))
	case b.hands.lowering && g.releasable():
		b.passes(g, held, other)
		return -1
	case b.modeless():
		return b.heldBack(held, other, b.passEfficiency(g, b.at), b.shownHold(group))
	}
	if force := b.usual.gripForce(group); force.Sign() > 0 || b.static && b.run.way(g.rope, g.nodes[0]) == 0 {
		return b.heldBack(held, other, b.passEfficiency(g, worst), force)
	}
	b.between(held, other, b.passEfficiency(g, worst), b.passEfficiency(g, best))
	return -1
}

// passes ties the tensions on the two sides of an open grip, over which rope runs
// the other way: from the side that is not held to the one that is.
func (b *stretches) passes(g *gripGroup, held, other int) {
	if b.modeless() {
		eta := b.passEfficiency(g, b.at)
		b.between(held, other, eta, eta.Inv())
		return
	}
	b.between(other, held, b.passEfficiency(g, worst), b.passEfficiency(g, best))
}

// heldBack gives the column of what a grip holds: the held tension less η times
// the one on the other side.
func (b *stretches) heldBack(held, other int, eta, shown lp.Num) int {
	row := b.lp.Row(lp.Num{})
	b.entry(held, row, lp.Int(1))
	b.entry(other, row, eta.Neg())
	return b.add(shown, lp.Entry{Row: row, Value: lp.Int(-1)})
}

// letsRun says whether a grip holds nothing: it is open, or it slides in the usual
// solution and is not asked what it could hold at rest.
func (b *stretches) letsRun(group int, g *gripGroup) bool {
	if b.hands.lowering && g.releasable() {
		return true
	}
	atRest := b.static && b.run.way(g.rope, g.nodes[0]) == 0
	return b.usual != nil && !atRest && b.usual.gripForce(group).IsZero()
}

// oneSided is a grip with rope that carries something on one side only. What it
// cannot hold back, it lets run: an open grip, or one that holds the other side.
func (b *stretches) oneSided(held, other int, opened bool) int {
	if column := max(held, other); column >= 0 && (opened || held < 0) {
		row := b.lp.Row(lp.Num{})
		b.entry(column, row, lp.Int(1))
		return -1
	}
	if held < 0 {
		return -1
	}
	row := b.lp.Row(lp.Num{})
	b.entry(held, row, lp.Int(1))
	return b.add(b.shown[held], lp.Entry{Row: row, Value: lp.Int(-1)})
}

func (b *stretches) entry(column, row int, value lp.Num) {
	entries := &b.lp.Columns[column].Entries
	*entries = append(*entries, lp.Entry{Row: row, Value: value})
}

// gripColumn gives the column of the strand of a piece that is next to a grip; -1
// if there is none, or if it carries nothing.
func (b *stretches) gripColumn(g *gripGroup, piece int) int {
	switch piece {
	case -1:
		return -1
	case g.after:
		return b.links[piece][0]
	}
	return b.links[piece][len(b.links[piece])-1]
}
