package solve

import (
	"cmp"
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// tensions is the solved program of a phase: the figures to show and the range
// of each where statics leaves it open.
type tensions struct {
	*program
	// face answers range questions over all solutions.
	face *lp.Solution
	// shown is the solution to show.
	shown []lp.Num
	// open marks the columns that may differ from solution to solution.
	open []bool
	any  bool
	// unmet says that stated shares are not possible and were passed over.
	unmet bool
	// limits remembers the ends of single columns: most strands share them.
	limits map[int]limit
}

// limit is the range of one column; limited is false if there is no upper end.
type limit struct {
	low, high lp.Num
	limited   bool
}

// newTensions chooses the solution to show among all there are.
func newTensions(p *program, solved *lp.Solution, reference *model.Part) *tensions {
	face, unmet := p.withShares(solved)
	t := &tensions{program: p, face: face, shown: face.X, open: face.Open(), limits: map[int]limit{}, unmet: unmet}
	t.any = slices.Contains(t.open, true)
	if t.any {
		t.shown = t.choose(reference)
	}
	return t
}

// choose narrows the solutions: no preload, then runs that end at a tender
// carry least, then, unless somebody hauls, the capture nearest the load carries
// most. What is still open is shown in the middle of its extremes.
func (t *tensions) choose(reference *model.Part) []lp.Num {
	narrow, _ := t.withShares(lp.Solve(t.lp))
	narrow.Least(t.preload())
	narrow.Least(t.tended())
	if t.hands.hauler == nil || t.hands.lowering {
		for _, column := range t.gripsByNearness(reference) {
			if column >= 0 && t.open[column] {
				narrow.Largest([]lp.Term{{Column: column, Value: lp.Int(1)}})
			}
		}
	}
	return t.middle(narrow)
}

// preload is the sum of the tensions that have no upper limit.
func (t *tensions) preload() []lp.Term {
	var sum []lp.Term
	for _, column := range t.column {
		if column < 0 || !t.open[column] {
			continue
		}
		if !t.columnEnds(column).limited {
			sum = append(sum, lp.Term{Column: column, Value: lp.Int(1)})
		}
	}
	return sum
}

// tended is the sum of the tensions in runs of rope that end at a tender.
func (t *tensions) tended() []lp.Term {
	var sum []lp.Term
	for i, piece := range t.pieces {
		column := t.column[i]
		if column < 0 || !t.open[column] {
			continue
		}
		if piece.endsAt(model.Tended) {
			sum = append(sum, lp.Term{Column: column, Value: lp.Int(1)})
		}
	}
	return sum
}

// gripsByNearness lists the columns of the grips: those on the ground first, which
// are the captures, the nearest to the reference load before others, counted in
// pieces of rope between; then in file order.
func (t *tensions) gripsByNearness(reference *model.Part) []int {
	steps := t.stepsFrom(t.of(reference))
	order := make([]int, len(t.grips))
	for i := range order {
		order[i] = i
	}
	far := func(group int) int {
		if held := t.grips[group].held(); held >= 0 {
			return steps[held]
		}
		return len(t.pieces) + 1
	}
	tractor := func(group int) int {
		g := t.grips[group]
		return min(1, t.of(g.rope.Nodes[g.nodes[0]].Part)-ground)
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(tractor(a), tractor(b)), cmp.Compare(far(a), far(b)))
	})
	columns := make([]int, len(order))
	for i, group := range order {
		columns[i] = t.grip[group]
	}
	return columns
}

// stepsFrom counts for each piece how many pieces lie between it and a body,
// through moving bodies and grips.
func (t *tensions) stepsFrom(body int) []int {
	const unreached = 1 << 30
	steps := make([]int, len(t.pieces))
	touching := make([][]int, len(t.bodies)+len(t.grips))
	note := func(key, piece int) { touching[key] = append(touching[key], piece) }
	keys := make([][]int, len(t.pieces))
	for i, p := range t.pieces {
		steps[i] = unreached
		for _, k := range p.links {
			for _, term := range k.form {
				keys[i] = append(keys[i], term.body)
			}
		}
		for _, b := range []boundary{p.start, p.end} {
			if b.cut == grip {
				keys[i] = append(keys[i], len(t.bodies)+b.grip)
			}
		}
		for _, key := range keys[i] {
			note(key, i)
		}
	}
	if body < 0 {
		return steps
	}
	queue := []int{}
	reach := func(key, step int) {
		for _, p := range touching[key] {
			if steps[p] == unreached {
				steps[p] = step
				queue = append(queue, p)
			}
		}
		touching[key] = nil
	}
	reach(body, 0)
	for len(queue) > 0 {
		p := queue[0]
		queue = queue[1:]
		for _, key := range keys[p] {
			reach(key, steps[p]+1)
		}
	}
	return steps
}

// middle gives the mean of the extreme solutions of every tension still open.
func (t *tensions) middle(s *lp.Solution) []lp.Num {
	var corners [][]lp.Num
	open := s.Open()
	for _, column := range t.column {
		if column < 0 || !open[column] {
			continue
		}
		low, high := s.Extremes([]lp.Term{{Column: column, Value: lp.Int(1)}})
		for _, corner := range [][]lp.Num{low, high} {
			if corner != nil {
				corners = append(corners, corner)
			}
		}
	}
	if len(corners) == 0 {
		return s.X
	}
	mean := make([]lp.Num, len(s.X))
	share := lp.Frac(1, int64(len(corners)))
	for _, corner := range corners {
		for i, v := range corner {
			mean[i] = mean[i].Add(v.Mul(share))
		}
	}
	return mean
}

// pieceTensions gives the tension to show of every piece.
func (t *tensions) pieceTensions() []lp.Num {
	list := make([]lp.Num, len(t.pieces))
	for i, column := range t.column {
		if column >= 0 {
			list[i] = t.shown[column]
		}
	}
	return list
}

// pull is the sum of the shown tensions on a hauler's ends.
func (t *tensions) pull(hauler *model.Part) lp.Num {
	sum := lp.Num{}
	for i, p := range t.pieces {
		if hauler == nil || p.pulledBy(hauler) == 0 {
			continue
		}
		if p.start.cut == hauled && p.start.hauler == hauler {
			sum = sum.Add(t.linkTension(i, 0))
		}
		if p.end.cut == hauled && p.end.hauler == hauler {
			sum = sum.Add(t.linkTension(i, len(p.links)-1))
		}
	}
	return sum
}

// force evaluates a form whose value is never negative.
func (t *tensions) force(f linear) Force {
	value := f.at(t.shown)
	low, high := value, &value
	if t.touchesOpen(f) {
		ends := t.ends(f)
		low, high = lp.Max(ends.low, lp.Num{}), nil
		if ends.limited {
			high = &ends.high
		}
	}
	return Force{Value: &value, Low: &low, High: high}
}

// ends gives the range of a form over all solutions.
func (t *tensions) ends(f linear) limit {
	terms := f.list()
	if len(terms) == 1 && terms[0].Value.Sign() > 0 {
		end := t.columnEnds(terms[0].Column)
		factor := terms[0].Value
		return limit{end.low.Mul(factor).Add(f.constant), end.high.Mul(factor).Add(f.constant), end.limited}
	}
	return endsOf(t.face, terms, f.constant)
}

func (t *tensions) columnEnds(column int) limit {
	end, known := t.limits[column]
	if !known {
		end = endsOf(t.face, []lp.Term{{Column: column, Value: lp.Int(1)}}, lp.Num{})
		t.limits[column] = end
	}
	return end
}

// endsOf asks for the range of a form; a form without a lower end starts at 0, for
// what it stands for is a size.
func endsOf(face *lp.Solution, terms []lp.Term, constant lp.Num) limit {
	low, high, lowLimited, limited := face.Range(terms)
	if !lowLimited {
		low = constant.Neg()
	}
	return limit{low.Add(constant), high.Add(constant), limited}
}

func (t *tensions) touchesOpen(f linear) bool {
	if !t.any {
		return false
	}
	for c, v := range f.terms {
		if t.open[c] && v.Sign() != 0 {
			return true
		}
	}
	return false
}

// size evaluates a form of either sign and gives how large it is.
func (t *tensions) size(f linear) Force {
	var flipped linear
	flipped.plus(f, lp.Int(-1))
	if !t.touchesOpen(f) {
		if f.at(t.shown).Sign() < 0 {
			return t.force(flipped)
		}
		return t.force(f)
	}
	value := f.at(t.shown).Abs()
	up, down := t.force(f), t.force(flipped)
	low := lp.Max(*up.Low, *down.Low)
	var high *lp.Num
	if up.High != nil && down.High != nil {
		h := lp.Max(*up.High, *down.High)
		high = &h
	}
	return Force{Value: &value, Low: &low, High: high}
}

// strandTerm gives the tension in a stroke as a column and its factor: the larger
// tension inside a group of grips where most says so, else the smaller one.
// Column -1 carries nothing.
func (t *tensions) strandTerm(r *model.Rope, stroke int, most bool) (column int, factor lp.Num) {
	at := t.strands[r][stroke]
	piece, link := at.piece, at.link
	if at.group >= 0 {
		g := t.grips[at.group]
		piece, link = g.other(), 0
		if most {
			piece = g.held()
		}
		if piece >= 0 && piece == g.before {
			link = len(t.pieces[piece].links) - 1
		}
	}
	return t.term(piece, link)
}

// gripForces gives what every group of grips holds.
func (t *tensions) gripForces() []Force {
	list := make([]Force, len(t.grips))
	for i := range list {
		var f linear
		f.add(t.program.grip[i], lp.Int(1))
		list[i] = t.force(f)
	}
	return list
}

// gripForce gives what a group of grips holds in the shown solution.
func (t *tensions) gripForce(group int) lp.Num {
	if column := t.program.grip[group]; column >= 0 {
		return t.shown[column]
	}
	return lp.Num{}
}

// linkTension gives the shown tension in a link of a piece.
func (t *tensions) linkTension(piece, link int) lp.Num {
	column, factor := t.term(piece, link)
	if column < 0 {
		return lp.Num{}
	}
	return factor.Mul(t.shown[column])
}

// strand gives what one stroke carries.
func (t *tensions) strand(r *model.Rope, stroke int) Force {
	f := t.force(t.tension(r, stroke, true))
	if t.strands[r][stroke].group >= 0 {
		f.Low = t.force(t.tension(r, stroke, false)).Low
	}
	return f
}

func (t *tensions) tension(r *model.Rope, stroke int, most bool) linear {
	var f linear
	f.add(t.strandTerm(r, stroke, most))
	return f
}
