package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// program is the tension program of a network in one phase: a row for each
// moving body (the forces on it balance its weight) and each grip (what it holds
// is the difference of the tensions beside it), a column for each piece that can
// carry tension and for what each grip holds. It asks for the largest pull that
// can be balanced; its multipliers are the motion.
type program struct {
	*network
	lp *lp.Program
	// column is the column of each piece, -1 if it carries nothing; grip that of
	// what each grip holds.
	column, grip []int
	hands        hands
	// links has the column of each link of each piece where these differ; nil: a
	// piece has one column.
	links [][]int
	// losses say how tension changes along the ropes; nil: not at all.
	losses *losses
}

// hands say what people do in a phase.
type hands struct {
	// hauler pulls one unit of rope, or gives one when lowering; nil does nothing.
	hauler *model.Part
	// lowering asks for the smallest hand force and opens what is releasable.
	lowering bool
	// free asks for no largest pull: every balance counts.
	free bool
}

// newProgram builds the program of what people do. Without losses it is that of
// the frictionless rig.
func newProgram(n *network, weight []lp.Num, do hands, losses *losses) *program {
	p := &program{network: n, lp: &lp.Program{}, hands: do, losses: losses}
	p.lp.RHS = append(append(p.lp.RHS, weight...), make([]lp.Num, len(n.grips))...)
	for i, piece := range n.pieces {
		p.column = append(p.column, p.addPiece(i, piece))
	}
	for i, g := range n.grips {
		p.grip = append(p.grip, p.addGrip(i, g))
	}
	return p
}

// addPiece adds the column of a piece, its tension where it starts: on each strand
// it acts on the bodies against the growth of the strand's length. A piece with a
// loose end or with slack in it carries nothing, and so does one that touches
// nothing that moves.
func (p *program) addPiece(index int, piece *piece) int {
	if piece.opens() || piece.fresh() {
		return -1
	}
	var force form
	for i, k := range piece.links {
		force = force.joinTimes(k.form, p.losses.along(index, i))
	}
	last := p.losses.along(index, len(piece.links)-1)
	entries := append(p.balance(force), p.gripEntries(piece, last)...)
	cost := lp.Num{}
	if p.hands.hauler != nil {
		cost = piece.pull(p.hands.hauler, last)
	}
	switch {
	case p.hands.free:
		cost = lp.Num{}
	case p.hands.lowering:
		cost = cost.Neg()
	}
	if len(entries) == 0 && cost.Sign() == 0 {
		return -1
	}
	return p.lp.Add(cost, entries...)
}

// term gives the tension in a link of a piece as a column and its factor; column
// -1 carries nothing.
func (p *program) term(piece, link int) (column int, factor lp.Num) {
	switch {
	case piece < 0 || p.column[piece] < 0:
		return -1, lp.Num{}
	case p.links != nil:
		return p.links[piece][link], lp.Int(1)
	}
	return p.column[piece], p.losses.along(piece, link)
}

// balance gives the entries of a form's force on the bodies.
func (p *program) balance(f form) []lp.Entry {
	entries := make([]lp.Entry, 0, len(f)+2)
	for _, t := range f {
		entries = append(entries, lp.Entry{Row: t.body, Value: t.factor.Neg()})
	}
	return entries
}

// gripEntries gives the entries of a piece in the rows of the grips at its ends:
// the rope it loses at its start and wins at its end.
// Last is the tension at its end over that at its start.
func (p *program) gripEntries(piece *piece, last lp.Num) []lp.Entry {
	var entries []lp.Entry
	if g := piece.start.grip; piece.start.cut == grip {
		factor := p.losses.past(g, p.grips[g].holds == model.LastSide)
		entries = append(entries, lp.Entry{Row: p.gripRow(g), Value: factor.Neg()})
	}
	if g := piece.end.grip; piece.end.cut == grip {
		factor := p.losses.past(g, p.grips[g].holds != model.LastSide)
		entries = append(entries, lp.Entry{Row: p.gripRow(g), Value: last.Mul(factor)})
	}
	return entries
}

func (p *program) gripRow(group int) int { return len(p.bodies) + group }

// addGrip adds the column of what a grip holds: the tension on its held side is
// that on the other side, less what is lost there while it slides, and this.
// An opened one holds nothing and passes rope both ways: it has no column.
func (p *program) addGrip(group int, g *gripGroup) int {
	if p.hands.lowering && g.releasable() || p.losses.holdsNothing(group) {
		return -1
	}
	value := lp.Int(-1)
	if g.holds == model.LastSide {
		value = lp.Int(1)
	}
	return p.lp.Add(lp.Num{}, lp.Entry{Row: p.gripRow(group), Value: value})
}

// linear is a linear form over the columns and a constant: a force.
type linear struct {
	terms    map[int]lp.Num
	constant lp.Num
}

func (f *linear) add(column int, factor lp.Num) {
	if column < 0 || factor.Sign() == 0 {
		return
	}
	if f.terms == nil {
		f.terms = map[int]lp.Num{}
	}
	f.terms[column] = f.terms[column].Add(factor)
}

// plus adds a multiple of another form.
func (f *linear) plus(g linear, factor lp.Num) {
	f.constant = f.constant.Add(g.constant.Mul(factor))
	for c, v := range g.terms {
		f.add(c, v.Mul(factor))
	}
}

// at gives the value of the form at a vector of columns.
func (f linear) at(x []lp.Num) lp.Num {
	sum := f.constant
	for _, t := range f.list() {
		sum = sum.Add(t.Value.Mul(x[t.Column]))
	}
	return sum
}

// list gives the terms in the order of their columns, so that results never
// depend on the order of a map.
func (f linear) list() []lp.Term {
	list := make([]lp.Term, 0, len(f.terms))
	for c, v := range f.terms {
		if v.Sign() != 0 {
			list = append(list, lp.Term{Column: c, Value: v})
		}
	}
	slices.SortFunc(list, func(a, b lp.Term) int { return a.Column - b.Column })
	return list
}
