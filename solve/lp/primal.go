package lp

// walk is a way of pivots towards a goal, a line beyond the rows.
//
// The unknown that promises most enters. As that alone could go round in a
// circle, a long run of pivots without progress is ended by Bland's rule, which
// cannot.
type walk struct {
	goal int
	// still counts the pivots since the goal last moved, all those of the walk.
	still, all int
}

// next gives the next pivot, unknown j into the basis at row r. The outcome is
// reached if there is none to make, endless if j can grow for ever, gaveUp if
// the numbers go round in a circle, and onward else.
func (d *dictionary[F]) next(w *walk) (r, j int, how outcome) {
	careful := w.still > d.rows+8
	if j = d.entering(w.goal, careful); j < 0 {
		return -1, -1, reached
	}
	r, moves := d.leaving(j, careful)
	if r < 0 {
		return -1, j, endless
	}
	if w.all++; d.limit > 0 && w.all > d.limit {
		return -1, -1, gaveUp
	}
	if w.still++; moves {
		w.still = 0
	}
	return r, j, onward
}

// maximise pivots until a goal is as large as it can be. If it is endless the
// unknown that can grow for ever is given too.
func (d *dictionary[F]) maximise(goal int) (outcome, int) {
	w := walk{goal: goal}
	for {
		r, j, how := d.next(&w)
		if how != onward {
			return how, j
		}
		d.pivot(r, j)
	}
}

// last says whether a pivot is the last one to a goal, and gives the goal's value
// after it. That takes a glance at one row, where the pivot changes them all.
func (d *dictionary[F]) last(goal, r, j int) (F, bool) {
	at, _ := cellAt(d.lines[r].cells, j)
	row := d.lines[r]
	target := d.lines[goal]
	share := d.coefficient(goal, j).Quo(row.cells[at].value)
	// The unknown that leaves gets the cell −share, which is positive.
	k := 0
	for _, c := range row.cells {
		for k < len(target.cells) && target.cells[k].at < c.at {
			if target.cells[k].value.Sign() < 0 {
				return share, false
			}
			k++
		}
		var cost F
		if k < len(target.cells) && target.cells[k].at == c.at {
			cost = target.cells[k].value
			k++
		}
		if c.at != j && cost.mulSub(share, c.value).Sign() < 0 {
			return share, false
		}
	}
	for ; k < len(target.cells); k++ {
		if target.cells[k].value.Sign() < 0 {
			return share, false
		}
	}
	return target.value.mulSub(share, row.value), true
}

// entering gives the unknown to enter for the goal: the steepest, or the first
// if careful; -1 if none raises it.
func (d *dictionary[F]) entering(goal int, careful bool) int {
	best := -1
	var steepest F
	for _, c := range d.lines[goal].cells {
		if c.value.Sign() >= 0 {
			continue
		}
		if careful {
			return c.at
		}
		if best < 0 || c.value.Cmp(steepest) < 0 {
			best, steepest = c.at, c.value
		}
	}
	return best
}

// leaving gives the row that first stops unknown j from growing, and whether j
// grows at all; -1 if nothing stops it.
func (d *dictionary[F]) leaving(j int, careful bool) (row int, moves bool) {
	row = -1
	var step, size F
	holders := d.holders[j]
	for i := holders.next(0); i >= 0 && i < d.rows; i = holders.next(i + 1) {
		a := d.coefficient(i, j)
		if d.fixed[d.basic[i]] && a.Sign() != 0 {
			return i, false
		}
		if a.Sign() <= 0 {
			continue
		}
		ratio := d.lines[i].value
		if ratio.Sign() != 0 {
			ratio = ratio.Quo(a)
		}
		if row >= 0 {
			order := ratio.Cmp(step)
			if order > 0 || order == 0 && !d.prefers(i, a, row, size, careful) {
				continue
			}
		}
		row, step, size = i, ratio, a
	}
	return row, row >= 0 && step.Sign() != 0
}

// prefers says whether row i with coefficient a should leave rather than row r
// with coefficient b, which stops the entering unknown at the same value.
func (d *dictionary[F]) prefers(i int, a F, r int, b F, careful bool) bool {
	if careful {
		return d.basic[i] < d.basic[r]
	}
	if order := a.Cmp(b); order != 0 {
		return order > 0
	}
	return d.basic[i] < d.basic[r]
}
