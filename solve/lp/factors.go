package lp

// factors are a square matrix taken apart by elimination, so that systems with
// it can be solved. Its rows are those of the program, its columns the places
// of a basis.
type factors[F number[F]] struct {
	// places and rows are the pivots in the order of elimination; upper are the
	// rest of their rows, cells by place; pivots their values.
	rows, places []int
	upper        [][]cell[F]
	pivots       []F
	// lower are the row operations, in order.
	lower []operation[F]
}

// operation is: take row from so many times off row to.
type operation[F any] struct {
	to, from int
	times    F
}

// solve gives x by place with matrix·x = b, b by row; it uses b up.
func (f *factors[F]) solve(b []F) []F {
	for _, op := range f.lower {
		if b[op.from].Sign() != 0 {
			b[op.to] = b[op.to].mulSub(op.times, b[op.from])
		}
	}
	x := make([]F, len(b))
	for k := len(f.rows) - 1; k >= 0; k-- {
		value := b[f.rows[k]]
		for _, c := range f.upper[k] {
			if x[c.at].Sign() != 0 {
				value = value.mulSub(c.value, x[c.at])
			}
		}
		if value.Sign() != 0 {
			x[f.places[k]] = value.Quo(f.pivots[k])
		}
	}
	return x
}

// solveLeft gives y by row with y·matrix = c, c by place; it uses c up.
func (f *factors[F]) solveLeft(c []F) []F {
	y := make([]F, len(c))
	for k, place := range f.places {
		if c[place].Sign() == 0 {
			continue
		}
		value := c[place].Quo(f.pivots[k])
		y[f.rows[k]] = value
		for _, u := range f.upper[k] {
			c[u.at] = c[u.at].mulSub(u.value, value)
		}
	}
	for k := len(f.lower) - 1; k >= 0; k-- {
		op := f.lower[k]
		if y[op.to].Sign() != 0 {
			y[op.from] = y[op.from].mulSub(op.times, y[op.to])
		}
	}
	return y
}
