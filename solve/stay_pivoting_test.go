package solve_test

import (
	"math"

	"fairlead/lang/quantity"
)

// pivoting is a plain dense program in floating point for the simulation: the most
// gain over x ≥ 0 with every row at most its bound, none of which is negative, so
// that x = 0 is a start.
type pivoting struct {
	columns int
	rows    []boundRow
	gains   []float64
	barred  map[int]bool
}

type boundRow struct {
	a     []float64
	bound float64
}

type outcome int

const (
	settled outcome = iota
	endless
	lostCount
)

func (p *pivoting) row(bound float64) int {
	p.rows = append(p.rows, boundRow{make([]float64, p.columns), bound})
	return len(p.rows) - 1
}

func (p *pivoting) gain(column int, by float64) {
	if p.gains == nil {
		p.gains = make([]float64, p.columns)
	}
	p.gains[column] += by
}

func (p *pivoting) bar(column int) {
	if p.barred == nil {
		p.barred = map[int]bool{}
	}
	p.barred[column] = true
}

// solve exchanges columns by the rule of the smallest index, which cannot go round
// in a circle but for rounding.
func (p *pivoting) solve() ([]float64, outcome) {
	const tiny = 1e-10
	m, n := len(p.rows), p.columns
	table := make([][]float64, m+1)
	basic := make([]int, m)
	for i := range table {
		table[i] = make([]float64, n+m+1)
	}
	for i, r := range p.rows {
		copy(table[i], r.a)
		table[i][n+i], table[i][n+m] = 1, r.bound
		basic[i] = n + i
	}
	for j, g := range p.gains {
		table[m][j] = -g
	}
	for range 5000 {
		enter := -1
		for j := 0; j < n+m && enter < 0; j++ {
			if table[m][j] < -tiny && !p.barred[j] {
				enter = j
			}
		}
		if enter < 0 {
			x := make([]float64, n+m)
			for i, b := range basic {
				x[b] = table[i][n+m]
			}
			return x[:n], settled
		}
		leave, least := -1, math.Inf(1)
		for i := range m {
			if table[i][enter] <= tiny {
				continue
			}
			ratio := table[i][n+m] / table[i][enter]
			if ratio < least-tiny || ratio < least+tiny && basic[i] < basic[leave] {
				leave, least = i, math.Min(ratio, least)
			}
		}
		if leave < 0 {
			return nil, endless
		}
		exchange(table, leave, enter)
		basic[leave] = enter
	}
	return nil, lostCount
}

func exchange(table [][]float64, row, column int) {
	by := table[row][column]
	for j := range table[row] {
		table[row][j] /= by
	}
	for i := range table {
		factor := table[i][column]
		if i == row || factor == 0 {
			continue
		}
		for j := range table[i] {
			table[i][j] -= factor * table[row][j]
			if math.Abs(table[i][j]) < 1e-12 {
				table[i][j] = 0
			}
		}
	}
}

func quantityOf(q *quantity.Quantity) float64 {
	f, _ := q.Middle().Float64()
	return f
}
