package lp

import "slices"

// eliminator is a square matrix while it is taken apart.
type eliminator[F number[F]] struct {
	*factors[F]
	// cells are the rows that are left, by place.
	cells [][]cell[F]
	// holders are the rows left in which a place has a cell.
	holders []set
	// ready are rows and places (as ^place) that may have one cell left.
	ready []int
	spare []cell[F]
}

// factorize takes the matrix of the given columns apart; nil if it is singular.
func factorize[F number[F]](columns [][]cell[F]) *factors[F] {
	n := len(columns)
	e := &eliminator[F]{
		factors: &factors[F]{upper: make([][]cell[F], 0, n), pivots: make([]F, 0, n)},
		cells:   make([][]cell[F], n),
		holders: newSets(n, n),
	}
	for place, column := range columns {
		for _, c := range column {
			e.cells[c.at] = append(e.cells[c.at], cell[F]{place, c.value})
			e.holders[place].put(c.at)
		}
		e.notePlace(place)
	}
	for i := range e.cells {
		e.noteRow(i)
	}
	for range n {
		row, at := e.choose()
		if row < 0 {
			return nil
		}
		e.eliminate(row, at)
	}
	return e.factors
}

func (e *eliminator[F]) noteRow(i int) {
	if len(e.cells[i]) == 1 {
		e.ready = append(e.ready, i)
	}
}

func (e *eliminator[F]) notePlace(place int) {
	if e.holders[place].size() == 1 {
		e.ready = append(e.ready, ^place)
	}
}

// choose gives the next pivot: a cell alone in its row or column, else the one
// that threatens the least fill; row is -1 if no cell is left.
func (e *eliminator[F]) choose() (row, at int) {
	for len(e.ready) > 0 {
		item := e.ready[len(e.ready)-1]
		e.ready = e.ready[:len(e.ready)-1]
		if item >= 0 {
			if len(e.cells[item]) == 1 {
				return item, 0
			}
		} else if holders := e.holders[^item]; holders.size() == 1 {
			row = holders.next(0)
			at, _ = cellAt(e.cells[row], ^item)
			return row, at
		}
	}
	return e.leastFill()
}

// leastFill gives the cell whose row and column have the fewest other cells.
func (e *eliminator[F]) leastFill() (row, at int) {
	row = -1
	fewest := 0
	for i, cells := range e.cells {
		largest := largestOf(cells)
		for k, c := range cells {
			fill := (len(cells) - 1) * (e.holders[c.at].size() - 1)
			if (row < 0 || fill < fewest) && !c.value.weak(largest) {
				row, at, fewest = i, k, fill
			}
		}
	}
	return row, at
}

// largestOf gives the size of the largest cell; 0 where nothing rounds, since
// size matters only there.
func largestOf[F number[F]](cells []cell[F]) F {
	var largest F
	if !rounds[F]() {
		return largest
	}
	for _, c := range cells {
		size := c.value
		if size.Sign() < 0 {
			size = size.Neg()
		}
		if size.Cmp(largest) > 0 {
			largest = size
		}
	}
	return largest
}

// eliminate makes the cell at index at of row the next pivot.
func (e *eliminator[F]) eliminate(row, at int) {
	pivot := e.cells[row][at]
	rest := slices.Delete(e.cells[row], at, at+1)
	e.cells[row] = nil
	for _, c := range rest {
		e.holders[c.at].drop(row)
	}
	holders := e.holders[pivot.at]
	holders.drop(row)
	for i := holders.next(0); i >= 0; i = holders.next(i + 1) {
		old := e.cells[i]
		at, _ := cellAt(old, pivot.at)
		times := old[at].value.Quo(pivot.value)
		e.lower = append(e.lower, operation[F]{i, row, times})
		e.cells[i] = rowStep(e.spare[:0], old, i, pivot.at, times, rest, e.holders)
		e.spare = old
		e.noteRow(i)
	}
	holders.clear()
	for _, c := range rest {
		e.notePlace(c.at)
	}
	e.rows, e.places = append(e.rows, row), append(e.places, pivot.at)
	e.upper, e.pivots = append(e.upper, rest), append(e.pivots, pivot.value)
}
