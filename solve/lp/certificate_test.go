package lp

import (
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// shape bounds the random programs.
type shape struct {
	rows, columns int
	// full is how many tenths of the cells are not 0.
	full int
}

// smallNumbers draws numbers such that ties, cancellations and zeros are common.
func smallNumbers() *rapid.Generator[Num] {
	return rapid.OneOf(
		rapid.SampledFrom([]Num{Int(-1), Int(1), Int(1), Int(2)}),
		rapid.SampledFrom([]Num{Int(-1), Int(1), Int(1), Int(2)}),
		rapid.Custom(func(t *rapid.T) Num {
			return Frac(rapid.Int64Range(-5, 5).Draw(t, "n"), rapid.Int64Range(1, 3).Draw(t, "d"))
		}),
	)
}

// programs draws programs of all outcomes, with zero rows, rows that repeat
// others, zero columns, and right-hand sides of which many are 0.
func programs(s shape) *rapid.Generator[*Program] {
	return rapid.Custom(func(t *rapid.T) *Program {
		p := &Program{}
		rows := rapid.IntRange(0, s.rows).Draw(t, "rows")
		number := smallNumbers()
		for range rows {
			p.Row(sometimes(t, 5, number))
		}
		for range rapid.IntRange(0, s.columns).Draw(t, "columns") {
			var entries []Entry
			for i := range rows {
				if v := sometimes(t, s.full, number); !v.IsZero() {
					entries = append(entries, Entry{i, v})
				}
			}
			p.Add(sometimes(t, 4, number), entries...)
		}
		p.perhapsRepeat(t)
		p.perhapsMeet(t)
		return p
	})
}

func sometimes(t *rapid.T, tenths int, of *rapid.Generator[Num]) Num {
	if rapid.IntRange(0, 9).Draw(t, "tenths") >= tenths {
		return Num{}
	}
	return of.Draw(t, "value")
}

// perhapsRepeat adds a row that is a multiple of another, sometimes with a
// contradiction.
func (p *Program) perhapsRepeat(t *rapid.T) {
	if len(p.RHS) == 0 || rapid.IntRange(0, 3).Draw(t, "repeat") > 0 {
		return
	}
	of := rapid.IntRange(0, len(p.RHS)-1).Draw(t, "of")
	times := rapid.SampledFrom([]Num{Int(1), Int(-2), Frac(1, 3)}).Draw(t, "times")
	row := p.Row(p.RHS[of].Mul(times))
	for j, c := range p.Columns {
		for _, e := range c.Entries {
			if e.Row == of {
				p.Columns[j].Entries = append(p.Columns[j].Entries, Entry{row, e.Value.Mul(times)})
			}
		}
	}
}

// perhapsMeet sets the right-hand side to what some x ≥ 0 makes, so that the
// program can be met.
func (p *Program) perhapsMeet(t *rapid.T) {
	if rapid.Bool().Draw(t, "as drawn") {
		return
	}
	x := make([]Num, len(p.Columns))
	for j := range x {
		x[j] = sometimes(t, 5, smallNumbers()).Abs()
	}
	p.RHS = p.times(x)
}

// times gives A·x.
func (p *Program) times(x []Num) []Num {
	out := make([]Num, len(p.RHS))
	for j, c := range p.Columns {
		for _, e := range c.Entries {
			out[e.Row] = out[e.Row].Add(e.Value.Mul(x[j]))
		}
	}
	return out
}

// against gives y·A_j for every column.
func (p *Program) against(y []Num) []Num {
	out := make([]Num, len(p.Columns))
	for j, c := range p.Columns {
		for _, e := range c.Entries {
			out[j] = out[j].Add(e.Value.Mul(y[e.Row]))
		}
	}
	return out
}

func (p *Program) worth(x []Num) Num {
	var sum Num
	for j, c := range p.Columns {
		sum = sum.Add(c.Cost.Mul(x[j]))
	}
	return sum
}

func product(a, b []Num) Num {
	var sum Num
	for i := range a {
		sum = sum.Add(a[i].Mul(b[i]))
	}
	return sum
}

// requireProof checks what the solution says by its own certificate, which needs
// no second solver.
func requireProof(t require.TestingT, p *Program, s *Solution) {
	switch s.Status {
	case Optimal:
		requireFeasible(t, p, s.X)
		require.Zero(t, p.worth(s.X).Cmp(s.Value), "value of x: %s, want %s", p.worth(s.X), s.Value)
		requireMultipliers(t, p, s)
	case Infeasible:
		require.Nil(t, s.X)
		requireFarkas(t, p, s.Y)
	case Unbounded:
		require.Nil(t, s.Y)
		for i, b := range p.times(s.X) {
			require.True(t, b.IsZero(), "row %d of the ray is %s", i, b)
		}
		for j, x := range s.X {
			require.True(t, x.Sign() >= 0, "ray goes down at %d", j)
		}
		require.Equal(t, 1, p.worth(s.X).Sign())
	default:
		require.Fail(t, "unknown status")
	}
}

func requireFeasible(t require.TestingT, p *Program, x []Num) {
	for i, b := range p.times(x) {
		require.Zero(t, b.Cmp(p.RHS[i]), "row %d is %s, want %s", i, b, p.RHS[i])
	}
	for j := range x {
		require.True(t, x[j].Sign() >= 0, "x[%d] is %s", j, x[j])
	}
}

func requireMultipliers(t require.TestingT, p *Program, s *Solution) {
	require.Zero(t, product(s.Y, p.RHS).Cmp(s.Value), "y·rhs is %s, want %s", product(s.Y, p.RHS), s.Value)
	for j, a := range p.against(s.Y) {
		slack := a.Sub(p.Columns[j].Cost)
		require.True(t, slack.Sign() >= 0, "column %d would pay", j)
		require.True(t, slack.Mul(s.X[j]).IsZero(), "column %d is not complementary", j)
	}
}

func requireFarkas(t require.TestingT, p *Program, y []Num) {
	require.Equal(t, -1, product(y, p.RHS).Sign())
	for j, a := range p.against(y) {
		require.True(t, a.Sign() >= 0, "the ray does not stand at column %d", j)
	}
	for i, b := range p.RHS {
		bound := y[i].Mul(Int(int64(b.Sign())))
		require.True(t, bound.Cmp(Int(-1)) >= 0, "the ray leaves its box at row %d", i)
	}
}
