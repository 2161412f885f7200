package lp

// plan is a basis and what it proves.
type plan struct {
	status Status
	// basic is the basic column of each row, artificial ones included.
	basic []int
	// entering is the column that can grow for ever, when Unbounded.
	entering int
	// reliable is false when the numbers led nowhere.
	reliable bool
}

// search finds the plan of m, and gives the dictionary that it ended with.
func search[F number[F]](m *matrix[F]) (*dictionary[F], plan) {
	d := newDictionary(m)
	out := plan{basic: d.basic, entering: -1, reliable: true}
	if d.shortfall(m) {
		how, _ := d.maximise(d.rows + 1)
		if how == gaveUp {
			return d, plan{}
		}
		if !d.met(m) {
			out.status = Infeasible
		}
		d.endShortfall(m)
	}
	if out.status == Optimal {
		how, j := d.maximise(d.rows)
		switch how {
		case gaveUp:
			return d, plan{}
		case endless:
			out.status, out.entering = Unbounded, j
		}
	}
	return d, out
}

// newDictionary solves every row for a column of its own that has no other
// entry and does not go below 0, else for the row's artificial column. The
// artificial column of a row whose right-hand side is 0 is fixed. The one goal
// is the program's.
func newDictionary[F number[F]](m *matrix[F]) *dictionary[F] {
	rows, unknowns := len(m.rhs), m.unknowns()+len(m.rhs)
	d := &dictionary[F]{
		lines:   make([]line[F], rows+1, rows+2),
		rows:    rows,
		basic:   m.slacks(),
		fixed:   make([]bool, unknowns),
		holders: newSets(unknowns, rows+2),
		limit:   pivotLimit[F](rows, unknowns),
	}
	for i := range rows {
		if d.basic[i] < 0 {
			d.basic[i] = m.artificial(i)
			d.fixed[d.basic[i]] = m.rhs[i].Sign() == 0
		}
		d.lines[i] = d.solved(m, i)
	}
	goal := &d.lines[rows]
	for j, c := range m.cost {
		if c.Sign() != 0 {
			goal.cells = append(goal.cells, cell[F]{j, c.Neg()})
			d.holders[j].put(rows)
		}
	}
	for i, j := range d.basic {
		if j < m.unknowns() && m.cost[j].Sign() != 0 {
			d.subtract(rows, j, &d.lines[i])
			d.holders[j].clear()
		}
	}
	return d
}

// solved gives row i of m solved for its basic column.
func (d *dictionary[F]) solved(m *matrix[F], i int) line[F] {
	j, factor := d.basic[i], m.unit(i)
	if j < m.unknowns() {
		factor = one[F]().Quo(m.columns[j][0].value)
	}
	row := line[F]{cells: make([]cell[F], 0, len(m.rows[i])), value: m.rhs[i].Mul(factor)}
	for _, c := range m.rows[i] {
		if c.at != j {
			row.cells = append(row.cells, cell[F]{c.at, c.value.Mul(factor)})
			d.holders[c.at].put(i)
		}
	}
	return row
}

// slacks gives for each row a column with an entry there only that meets the
// row alone without going below 0, one that costs nothing if there is one; -1
// for none.
func (m *matrix[F]) slacks() []int {
	found := make([]int, len(m.rhs))
	for i := range found {
		found[i] = -1
	}
	for j, column := range m.columns {
		if len(column) != 1 {
			continue
		}
		i := column[0].at
		if m.rhs[i].Sign()*column[0].value.Sign() < 0 {
			continue
		}
		if found[i] < 0 || m.cost[found[i]].Sign() != 0 && m.cost[j].Sign() == 0 {
			found[i] = j
		}
	}
	return found
}

// shortfall adds the goal of phase one, to have no artificial column above 0,
// and says whether there is any.
func (d *dictionary[F]) shortfall(m *matrix[F]) bool {
	var value F
	var cells []cell[F]
	for i, j := range d.basic {
		if j >= m.unknowns() && !d.fixed[j] {
			value = value.Add(d.lines[i].value)
			cells = append(cells, d.lines[i].cells...)
		}
	}
	if value.Sign() == 0 {
		return false
	}
	goal := line[F]{cells: merge(cells), value: value.Neg()}
	for k := range goal.cells {
		goal.cells[k].value = goal.cells[k].value.Neg()
		d.holders[goal.cells[k].at].put(d.rows + 1)
	}
	d.lines = append(d.lines, goal)
	return true
}

// met says whether no artificial column is above 0.
func (d *dictionary[F]) met(m *matrix[F]) bool {
	var short, scale F
	for i, j := range d.basic {
		if j >= m.unknowns() {
			short = short.Add(d.lines[i].value)
		}
		scale = scale.Add(m.rhs[i].Mul(m.unit(i)))
	}
	return negligible(short, scale)
}

// endShortfall drops the goal of phase one and bars the artificial columns;
// those still basic are 0 from here on, whatever noise says.
func (d *dictionary[F]) endShortfall(m *matrix[F]) {
	for i := range d.lines[d.rows+1].cells {
		d.holders[d.lines[d.rows+1].cells[i].at].drop(d.rows + 1)
	}
	d.lines = d.lines[:d.rows+1]
	var zero F
	for i := range m.rhs {
		if d.basic[i] >= m.unknowns() {
			d.lines[i].value = zero
		}
		j := m.artificial(i)
		d.fixed[j] = true
		d.discard(j)
	}
}
