package lp

import "math/big"

// corners is all that can be said of a small program by trying every basis: the
// vertices of what meets its rows, and the extreme rays of its recession cone.
type corners struct {
	vertices, rays [][]*big.Rat
}

// enumerate tries every set of columns.
func enumerate(p *Program) corners {
	rows, rhs := dense(p)
	cone := append([][]*big.Rat(nil), rows...)
	ones := make([]*big.Rat, len(p.Columns))
	for j := range ones {
		ones[j] = big.NewRat(1, 1)
	}
	cone = append(cone, ones)
	zeros := make([]*big.Rat, len(rhs)+1)
	for i := range zeros {
		zeros[i] = new(big.Rat)
	}
	zeros[len(rhs)] = big.NewRat(1, 1)
	return corners{
		vertices: basicPoints(rows, rhs, len(p.Columns)),
		rays:     basicPoints(cone, zeros, len(p.Columns)),
	}
}

func dense(p *Program) (rows [][]*big.Rat, rhs []*big.Rat) {
	for _, b := range p.RHS {
		row := make([]*big.Rat, len(p.Columns))
		for j := range row {
			row[j] = new(big.Rat)
		}
		rows, rhs = append(rows, row), append(rhs, b.Rat())
	}
	for j, c := range p.Columns {
		for _, e := range c.Entries {
			rows[e.Row][j].Add(rows[e.Row][j], e.Value.Rat())
		}
	}
	return rows, rhs
}

// basicPoints gives the points x ≥ 0 with rows·x = rhs whose columns are
// independent.
func basicPoints(rows [][]*big.Rat, rhs []*big.Rat, columns int) [][]*big.Rat {
	var points [][]*big.Rat
	var chosen []int
	var try func(from int)
	try = func(from int) {
		x, independent := onlyPoint(rows, rhs, chosen, columns)
		if !independent {
			return
		}
		if x != nil {
			points = append(points, x)
		}
		for j := from; j < columns; j++ {
			chosen = append(chosen, j)
			try(j + 1)
			chosen = chosen[:len(chosen)-1]
		}
	}
	try(0)
	return points
}

// onlyPoint solves for the chosen columns by full elimination. It gives nil
// without a solution or where one goes below 0.
func onlyPoint(rows [][]*big.Rat, rhs []*big.Rat, chosen []int, columns int) (x []*big.Rat, independent bool) {
	work := make([][]*big.Rat, len(rows))
	for i, row := range rows {
		for _, j := range chosen {
			work[i] = append(work[i], new(big.Rat).Set(row[j]))
		}
		work[i] = append(work[i], new(big.Rat).Set(rhs[i]))
	}
	for k := range chosen {
		pivot := -1
		for i := k; i < len(work); i++ {
			if work[i][k].Sign() != 0 {
				pivot = i
			}
		}
		if pivot < 0 {
			return nil, false
		}
		work[k], work[pivot] = work[pivot], work[k]
		clearColumn(work, k)
	}
	x = make([]*big.Rat, columns)
	for j := range x {
		x[j] = new(big.Rat)
	}
	for i, row := range work {
		last := row[len(chosen)]
		switch {
		case i >= len(chosen):
			if last.Sign() != 0 {
				return nil, true
			}
		case last.Sign() < 0:
			return nil, true
		default:
			x[chosen[i]] = last
		}
	}
	return x, true
}

func clearColumn(work [][]*big.Rat, k int) {
	inverse := new(big.Rat).Inv(work[k][k])
	for _, v := range work[k] {
		v.Mul(v, inverse)
	}
	for i, row := range work {
		if i == k || row[k].Sign() == 0 {
			continue
		}
		factor := new(big.Rat).Set(row[k])
		for c, v := range row {
			v.Sub(v, new(big.Rat).Mul(factor, work[k][c]))
		}
	}
}

// answer gives status and value of the program for the costs given.
func (c corners) answer(cost []Num) (Status, Num) {
	if len(c.vertices) == 0 {
		return Infeasible, Num{}
	}
	for _, r := range c.rays {
		if form(cost, r).Sign() > 0 {
			return Unbounded, Num{}
		}
	}
	best := form(cost, c.vertices[0])
	for _, v := range c.vertices {
		best = Max(best, form(cost, v))
	}
	return Optimal, best
}

// optima gives the vertices and rays of the optimal face.
func (c corners) optima(cost []Num) corners {
	_, value := c.answer(cost)
	var face corners
	for _, v := range c.vertices {
		if form(cost, v).Cmp(value) == 0 {
			face.vertices = append(face.vertices, v)
		}
	}
	for _, r := range c.rays {
		if form(cost, r).IsZero() {
			face.rays = append(face.rays, r)
		}
	}
	return face
}

func form(cost []Num, x []*big.Rat) Num {
	var sum Num
	for j, c := range cost {
		sum = sum.Add(c.Mul(FromRat(x[j])))
	}
	return sum
}

func (p *Program) costs() []Num {
	out := make([]Num, len(p.Columns))
	for j, c := range p.Columns {
		out[j] = c.Cost
	}
	return out
}

// dual gives the program of the optimal multipliers of p: the columns are y⁺ and
// y⁻ of each row, then the slack of each column of p.
func (p *Program) dual(value Num) *Program {
	d := &Program{}
	for _, c := range p.Columns {
		d.Row(c.Cost)
	}
	last := d.Row(value)
	for _, sign := range []Num{Int(1), Int(-1)} {
		for i, b := range p.RHS {
			entries := []Entry{{last, b.Mul(sign)}}
			for j, c := range p.Columns {
				for _, e := range c.Entries {
					if e.Row == i {
						entries = append(entries, Entry{j, e.Value.Mul(sign)})
					}
				}
			}
			d.Add(Num{}, entries...)
		}
	}
	for j := range p.Columns {
		d.Add(Num{}, Entry{j, Int(-1)})
	}
	return d
}
