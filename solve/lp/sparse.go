package lp

import "slices"

// cell is one entry of a sparse vector: the value at index at. Sparse vectors are
// sorted by index and hold no zeros.
type cell[F any] struct {
	at    int
	value F
}

// cellAt finds the place of index j in cells.
func cellAt[F any](cells []cell[F], j int) (int, bool) {
	return slices.BinarySearchFunc(cells, j, func(c cell[F], j int) int { return c.at - j })
}

// sparse gives the cells of a dense vector.
func sparse[F number[F]](dense []F) []cell[F] {
	var out []cell[F]
	for i, value := range dense {
		if value.Sign() != 0 {
			out = append(out, cell[F]{i, value})
		}
	}
	return out
}

// merge sorts cells in place, adds up those of one index and drops zeros.
func merge[F number[F]](cells []cell[F]) []cell[F] {
	slices.SortStableFunc(cells, func(a, b cell[F]) int { return a.at - b.at })
	out := cells[:0]
	for i := 0; i < len(cells); {
		sum := cells[i]
		for i++; i < len(cells) && cells[i].at == sum.at; i++ {
			sum.value = sum.value.Add(cells[i].value)
		}
		if sum.value.Sign() != 0 {
			out = append(out, sum)
		}
	}
	return out
}

// rowStep clears index j of old, row i of a system, by taking pivot, the rest of
// a row in which j stands, off it times times. It builds the result in room and
// keeps holders, the rows in which an index has a cell, except for j itself.
func rowStep[F number[F]](room, old []cell[F], i, j int, times F, pivot []cell[F], holders []set) []cell[F] {
	fill := func(c cell[F]) {
		holders[c.at].put(i)
		room = append(room, cell[F]{c.at, times.Mul(c.value).Neg()})
	}
	k := 0
	for _, c := range old {
		if c.at == j {
			continue
		}
		for ; k < len(pivot) && pivot[k].at < c.at; k++ {
			fill(pivot[k])
		}
		if k < len(pivot) && pivot[k].at == c.at {
			c.value = c.value.mulSub(times, pivot[k].value)
			k++
			if c.value.Sign() == 0 {
				holders[c.at].drop(i)
				continue
			}
		}
		room = append(room, c)
	}
	for ; k < len(pivot); k++ {
		fill(pivot[k])
	}
	return room
}
