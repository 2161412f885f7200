package lp

// matrix is a program in the numbers it is solved in, without zeros, sorted.
type matrix[F number[F]] struct {
	rhs  []F
	cost []F
	// columns hold cells by row, rows cells by column.
	columns, rows [][]cell[F]
}

// newMatrix merges the entries of p and turns them into numbers of one kind.
func newMatrix[F number[F]](p *Program, number func(Num) F) *matrix[F] {
	m := &matrix[F]{
		rhs:     make([]F, len(p.RHS)),
		cost:    make([]F, len(p.Columns)),
		columns: make([][]cell[F], len(p.Columns)),
		rows:    make([][]cell[F], len(p.RHS)),
	}
	for i, b := range p.RHS {
		m.rhs[i] = number(b)
	}
	total := 0
	for j := range p.Columns {
		total += len(p.Columns[j].Entries)
	}
	room := make([]cell[F], 0, total)
	height := make([]int, len(p.RHS))
	for j := range p.Columns {
		start := len(room)
		for _, e := range p.Columns[j].Entries {
			room = append(room, cell[F]{e.Row, number(e.Value)})
		}
		merged := merge(room[start:])
		room = room[:start+len(merged)]
		m.columns[j] = merged
		m.cost[j] = number(p.Columns[j].Cost)
		for _, c := range merged {
			height[c.at]++
		}
	}
	m.transpose(height, len(room))
	return m
}

// transpose fills rows from columns; length is the number of cells of each row.
func (m *matrix[F]) transpose(length []int, total int) {
	room := make([]cell[F], total)
	for i, n := range length {
		m.rows[i], room = room[:0:n], room[n:]
	}
	for j, column := range m.columns {
		for _, c := range column {
			m.rows[c.at] = append(m.rows[c.at], cell[F]{j, c.value})
		}
	}
}

// converted gives the same program in other numbers, without the cells that
// vanish in them.
func converted[F number[F], G number[G]](m *matrix[F], number func(F) G) *matrix[G] {
	out := &matrix[G]{
		rhs:     make([]G, len(m.rhs)),
		cost:    make([]G, len(m.cost)),
		columns: convertedCells(m.columns, number),
		rows:    convertedCells(m.rows, number),
	}
	for i, b := range m.rhs {
		out.rhs[i] = number(b)
	}
	for j, c := range m.cost {
		out.cost[j] = number(c)
	}
	return out
}

func convertedCells[F number[F], G number[G]](vectors [][]cell[F], number func(F) G) [][]cell[G] {
	total := 0
	for _, v := range vectors {
		total += len(v)
	}
	room := make([]cell[G], 0, total)
	out := make([][]cell[G], len(vectors))
	for i, v := range vectors {
		start := len(room)
		for _, c := range v {
			if value := number(c.value); value.Sign() != 0 {
				room = append(room, cell[G]{c.at, value})
			}
		}
		out[i] = room[start:len(room):len(room)]
	}
	return out
}

// unknowns is the number of columns.
func (m *matrix[F]) unknowns() int { return len(m.columns) }

// Beyond its columns a matrix has one artificial column for each row, which
// stands for the row's own shortfall: the unit of the row with the sign of its
// right-hand side. artificial gives the index of that column.
func (m *matrix[F]) artificial(row int) int { return len(m.columns) + row }

// column gives the cells of a column, artificial ones included.
func (m *matrix[F]) column(j int) []cell[F] {
	if j < len(m.columns) {
		return m.columns[j]
	}
	row := j - len(m.columns)
	return []cell[F]{{row, m.unit(row)}}
}

// unit gives the entry of the artificial column of a row.
func (m *matrix[F]) unit(row int) F {
	if m.rhs[row].Sign() < 0 {
		return one[F]().Neg()
	}
	return one[F]()
}
