package lp

import "slices"

// line is one equation: its basic unknown plus the cells makes value.
type line[F any] struct {
	cells []cell[F]
	value F
}

// dictionary is a program solved for its basic unknowns. The lines from rows on
// are goals: forms to maximise, whose basic unknown is the form itself, so that
// a negative cell marks an unknown whose increase raises the form. The cells of
// a line are those of non-basic unknowns only, sorted.
type dictionary[F number[F]] struct {
	lines []line[F]
	rows  int
	// basic is the basic unknown of each row.
	basic []int
	// fixed are the unknowns that must be 0. They may be basic, and vanish from
	// the dictionary when they leave the basis.
	fixed []bool
	// holders are the lines in which an unknown has a cell.
	holders []set
	pivots  int
	// limit is the number of pivots after which maximise gives up; 0 for none.
	limit int
	spare []cell[F]
}

// outcome is how a walk of pivots ends, or that it does not yet.
type outcome int

const (
	reached outcome = iota
	endless
	gaveUp
	onward
)

// coefficient gives the cell of unknown j in line i, which holds one.
func (d *dictionary[F]) coefficient(i, j int) F {
	at, _ := cellAt(d.lines[i].cells, j)
	return d.lines[i].cells[at].value
}

// pivot makes unknown j basic in row r.
func (d *dictionary[F]) pivot(r, j int) {
	d.pivots++
	d.exchange(r, j)
	row := &d.lines[r]
	holders := d.holders[j]
	for i := holders.next(0); i >= 0; i = holders.next(i + 1) {
		if i != r {
			d.subtract(i, j, row)
		}
	}
	holders.clear()
}

// exchange solves row r for unknown j and puts the one that leaves into its cells.
func (d *dictionary[F]) exchange(r, j int) {
	row := &d.lines[r]
	at, _ := cellAt(row.cells, j)
	inverse := one[F]().Quo(row.cells[at].value)
	row.cells = slices.Delete(row.cells, at, at+1)
	for k := range row.cells {
		row.cells[k].value = row.cells[k].value.Mul(inverse)
	}
	row.value = row.value.Mul(inverse)
	leaving := d.basic[r]
	d.basic[r] = j
	if !d.fixed[leaving] {
		at, _ = cellAt(row.cells, leaving)
		row.cells = slices.Insert(row.cells, at, cell[F]{leaving, inverse})
		d.holders[leaving].put(r)
	}
}

// subtract takes row, whose basic unknown is j, off line i so often that j
// vanishes there.
func (d *dictionary[F]) subtract(i, j int, row *line[F]) {
	target := &d.lines[i]
	factor := d.coefficient(i, j)
	cells := rowStep(d.spare[:0], target.cells, i, j, factor, row.cells, d.holders)
	target.cells, d.spare = cells, target.cells
	if row.value.Sign() != 0 {
		target.value = target.value.mulSub(factor, row.value)
	}
}

// discard drops unknown j, which is not basic, from the dictionary: it stays 0.
func (d *dictionary[F]) discard(j int) {
	holders := d.holders[j]
	for i := holders.next(0); i >= 0; i = holders.next(i + 1) {
		at, _ := cellAt(d.lines[i].cells, j)
		d.lines[i].cells = slices.Delete(d.lines[i].cells, at, at+1)
	}
	holders.clear()
}

// clone gives a copy that can be pivoted apart from d.
func (d *dictionary[F]) clone() *dictionary[F] {
	c := *d
	c.lines = make([]line[F], len(d.lines), len(d.lines)+1)
	for i, l := range d.lines {
		c.lines[i] = line[F]{slices.Clone(l.cells), l.value}
	}
	c.basic = slices.Clone(d.basic)
	c.fixed = slices.Clone(d.fixed)
	c.holders = cloneSets(d.holders)
	c.spare = nil
	return &c
}
