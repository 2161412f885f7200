package lp

import "math"

// settleVertex takes the noise out of a vertex in rounded numbers, by the
// dictionary that led there: what is 0 there is 0.
func settleVertex(v *vertex[real], d *dictionary[real]) {
	for place, j := range v.basic {
		if d.lines[place].value == 0 || v.values[place] < 0 || v.mustVanish(j) {
			v.values[place] = 0
		}
	}
	for j, r := range v.reduced {
		if _, off := cellAt(d.lines[d.rows].cells, j); r < 0 && v.status != Unbounded || !off && v.status == Optimal {
			v.reduced[j] = 0
		}
	}
	for j, r := range v.ray {
		v.ray[j] = max(0, r)
	}
}

// sound says whether a vertex in rounded numbers proves its status as far as such
// numbers can. It does not when they grew beyond the range of float64, or drowned
// in one another.
func sound(v *vertex[real]) bool {
	for _, numbers := range [][]real{v.values, v.y, v.reduced, v.ray} {
		for _, n := range numbers {
			if math.IsNaN(float64(n)) || math.IsInf(float64(n), 0) {
				return false
			}
		}
	}
	zeros := make([]real, len(v.rhs))
	switch v.status {
	case Unbounded:
		return meets(v.rows, v.point(), v.rhs) && meets(v.rows, v.ray, zeros) && dot(v.cost, v.ray) > 0
	case Infeasible:
		return dot(v.y, v.rhs) < 0 && covers(v, make([]real, len(v.cost)))
	}
	return meets(v.rows, v.point(), v.rhs) && covers(v, v.cost)
}

// loss is how much of the sum of sizes in an equation may be left over.
const loss = 1e-7

// meets says whether x meets the rows.
func meets(rows [][]cell[real], x, rhs []real) bool {
	for i, row := range rows {
		rest, size := balance(row, x, rhs[i])
		if math.Abs(rest) > loss*size {
			return false
		}
	}
	return true
}

// covers says whether y·A_j is at least the cost of every column.
func covers(v *vertex[real], cost []real) bool {
	for j, column := range v.columns {
		rest, size := balance(column, v.y, cost[j])
		if rest < -loss*size {
			return false
		}
	}
	return true
}

// balance gives the sum of cells·x less total, and the sum of the sizes of all
// that.
func balance(cells []cell[real], x []real, total real) (rest, size float64) {
	rest, size = -float64(total), math.Abs(float64(total))
	for _, c := range cells {
		product := float64(c.value) * float64(x[c.at])
		rest += product
		size += math.Abs(product)
	}
	return rest, size
}
