package lp

// slopes are the places of a vertex whose basic column is 0: there, and nowhere
// else, a small change of a right-hand side can force another basis, and with it
// other multipliers.
type slopes[F number[F]] struct {
	places []int
	// change is, for each of those places, how much its basic column grows with
	// the right-hand side of each row, in cells by row.
	change [][]cell[F]
	// dictionary holds those places with all columns that are not basic. Its goal
	// is the program's.
	*dictionary[F]
}

// slope gives the change of the optimal value with the right-hand side of a row,
// upwards (sign 1) or downwards (-1); false if the rows cannot be met after the
// slightest change that way.
func (v *vertex[F]) slope(row, sign int) (F, bool) {
	start := v.y[row]
	if sign < 0 {
		start = start.Neg()
	}
	s := v.degenerate()
	forced := false
	values := make([]F, len(s.places))
	for i, change := range s.change {
		if at, ok := cellAt(change, row); ok {
			if values[i] = change[at].value; sign < 0 {
				values[i] = values[i].Neg()
			}
		}
		way := values[i].Sign()
		forced = forced || way < 0 || way > 0 && v.basic[s.places[i]] >= v.unknowns()
	}
	if !forced {
		return start, true
	}
	if s.dictionary == nil {
		s.dictionary = v.newSlopes(s)
	}
	d := s.dictionary.clone()
	for i, value := range values {
		d.lines[i].value = value
	}
	d.lines[d.rows].value = start
	return d.restore()
}

func (v *vertex[F]) degenerate() *slopes[F] {
	if v.slopes == nil {
		v.slopes = &slopes[F]{}
		for place, value := range v.values {
			if value.Sign() == 0 {
				unit := make([]F, len(v.basic))
				unit[place] = one[F]()
				v.slopes.places = append(v.slopes.places, place)
				v.slopes.change = append(v.slopes.change, sparse(v.factors.solveLeft(unit)))
			}
		}
	}
	return v.slopes
}

// newSlopes computes the dictionary of slopes.
func (v *vertex[F]) newSlopes(s *slopes[F]) *dictionary[F] {
	cells := make([][]cell[F], len(v.basic))
	reached := make([]bool, v.unknowns())
	var names []int
	for i, place := range s.places {
		names = append(names, v.basic[place])
		var row []cell[F]
		for _, change := range s.change[i] {
			for _, c := range v.rows[change.at] {
				if !v.inBasis[c.at] {
					row = append(row, cell[F]{c.at, c.value.Mul(change.value)})
				}
			}
		}
		cells[place] = merge(row)
		for _, c := range cells[place] {
			if !reached[c.at] {
				reached[c.at] = true
				names = append(names, c.at)
			}
		}
	}
	d, unknown := v.part(names, s.places, cells)
	var goal line[F]
	for j, r := range v.reduced {
		if reached[j] && r.Sign() != 0 {
			goal.cells = append(goal.cells, cell[F]{unknown[j], r})
			d.holders[unknown[j]].put(d.rows)
		}
	}
	d.lines = append(d.lines, goal)
	return d
}

// restore pivots until no row is below 0 and no fixed unknown off 0, keeping the
// goal, the line after the rows, at an optimum; it gives the goal's value. It
// gives false if that cannot be. The first rows and columns that serve are taken
// (Bland's rule), so that it cannot go round in a circle.
func (d *dictionary[F]) restore() (F, bool) {
	for start := d.pivots; d.limit == 0 || d.pivots-start < d.limit; {
		r := d.broken()
		if r < 0 {
			break
		}
		j := d.yielding(r)
		if j < 0 {
			var none F
			return none, false
		}
		d.pivot(r, j)
	}
	return d.lines[d.rows].value, true
}

// broken gives the row to mend, those of fixed unknowns first; -1 for none.
func (d *dictionary[F]) broken() int {
	r := -1
	for i, u := range d.basic {
		s := d.lines[i].value.Sign()
		if d.fixed[u] && s != 0 {
			return i
		}
		if s < 0 && (r < 0 || u < d.basic[r]) {
			r = i
		}
	}
	return r
}

// yielding gives the column that mends row r at the least cost to the goal; -1
// for none.
func (d *dictionary[F]) yielding(r int) int {
	best := -1
	var least F
	way := d.lines[r].value.Sign()
	goal := d.lines[d.rows].cells
	for _, c := range d.lines[r].cells {
		if c.value.Sign() != way {
			continue
		}
		var cost F
		if at, ok := cellAt(goal, c.at); ok {
			if cost = goal[at].value.Quo(c.value); way < 0 {
				cost = cost.Neg()
			}
		}
		if best < 0 || cost.Cmp(least) < 0 {
			best, least = c.at, cost
		}
	}
	return best
}
