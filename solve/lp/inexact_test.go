package lp

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	simplex "gonum.org/v1/gonum/optimize/convex/lp"
	"pgregory.net/rapid"
)

// scaling stretches rows and columns by factors that are no fractions. Outcome and
// value stay; x and y are divided by the factors.
type scaling struct{ rows, columns []float64 }

func scalings(p *Program) *rapid.Generator[scaling] {
	factor := rapid.Custom(func(t *rapid.T) float64 {
		return math.Sqrt(float64(rapid.IntRange(1, 12).Draw(t, "square")))
	})
	return rapid.Custom(func(t *rapid.T) scaling {
		return scaling{
			rows:    rapid.SliceOfN(factor, len(p.RHS), len(p.RHS)).Draw(t, "rows"),
			columns: rapid.SliceOfN(factor, len(p.Columns), len(p.Columns)).Draw(t, "columns"),
		}
	})
}

func (s scaling) of(p *Program) *Program {
	out := &Program{}
	for i, b := range p.RHS {
		out.Row(Approx(b.Float() * s.rows[i]))
	}
	for j, c := range p.Columns {
		var entries []Entry
		for _, e := range c.Entries {
			entries = append(entries, Entry{e.Row, Approx(e.Value.Float() * s.rows[e.Row] * s.columns[j])})
		}
		out.Add(Approx(c.Cost.Float()*s.columns[j]), entries...)
	}
	return out
}

func requireNear(t require.TestingT, want, got Num, what string) {
	require.InDelta(t, want.Float(), got.Float(), 1e-7*(1+math.Abs(want.Float())), what)
}

func TestInexactAgreesWithExact(t *testing.T) {
	for _, size := range []shape{tiny, middle} {
		rapid.Check(t, func(t *rapid.T) {
			p := programs(size).Filter(func(p *Program) bool { return len(p.RHS) > 0 }).Draw(t, "program")
			stretch := scalings(p).Draw(t, "scaling")
			exact, rough := Solve(p), Solve(stretch.of(p))
			require.Equal(t, exact.Status, rough.Status)
			requireInexact(t, rough)
			if exact.Status != Optimal {
				return
			}
			requireNear(t, exact.Value, rough.Value, "value")
			require.Equal(t, exact.Unique(), rough.Unique())
			for j := range p.Columns {
				requireSameRange(t, exact, rough, stretch, j)
			}
			for i := range p.RHS {
				requireSameSlopes(t, exact, rough, stretch, i)
			}
		})
	}
}

func requireInexact(t require.TestingT, s *Solution) {
	for _, numbers := range [][]Num{s.X, s.Y} {
		for _, n := range numbers {
			require.False(t, n.IsExact())
			require.False(t, math.IsNaN(n.Float()))
		}
	}
}

func requireSameRange(t require.TestingT, exact, rough *Solution, by scaling, j int) {
	low, high, lowOK, highOK := exact.Range([]Term{{j, Int(1)}})
	roughLow, roughHigh, roughLowOK, roughHighOK := rough.Range([]Term{{j, Approx(by.columns[j])}})
	require.Equal(t, []bool{lowOK, highOK}, []bool{roughLowOK, roughHighOK})
	requireNear(t, low, roughLow, "low")
	requireNear(t, high, roughHigh, "high")
}

func requireSameSlopes(t require.TestingT, exact, rough *Solution, by scaling, i int) {
	low, high, lowOK, highOK := exact.MultiplierRange(i)
	roughLow, roughHigh, roughLowOK, roughHighOK := rough.MultiplierRange(i)
	require.Equal(t, []bool{lowOK, highOK}, []bool{roughLowOK, roughHighOK})
	if lowOK {
		requireNear(t, low, roughLow.Mul(Approx(by.rows[i])), "low multiplier")
	}
	if highOK {
		requireNear(t, high, roughHigh.Mul(Approx(by.rows[i])), "high multiplier")
	}
}

func TestOneInexactNumberMakesTheSolutionInexact(t *testing.T) {
	p := haulChain(4)
	p.RHS[0] = Approx(1)
	s := Solve(p)
	require.Equal(t, Optimal, s.Status)
	assert.False(t, s.Value.IsExact())
	assert.Equal(t, 0, s.Value.Cmp(Frac(1, 9)))
	requireInexact(t, s)
}

func TestInexactFormOverExactProgram(t *testing.T) {
	s := Solve(program([]int64{0, 0}, []int64{1, 1, 3}))
	low, high, lowOK, highOK := s.Range([]Term{{0, Approx(math.Sqrt2)}, {1, Int(1)}})
	require.True(t, lowOK && highOK)
	assert.False(t, low.IsExact() || high.IsExact())
	assert.Equal(t, 0, low.Cmp(Int(3)))
	assert.InDelta(t, 3*math.Sqrt2, high.Float(), 1e-12)
	require.True(t, s.Largest([]Term{{1, Approx(0.1)}}))
	assert.Equal(t, []Num{Int(0), Int(3)}, s.X, "the vertex stays exact")
}

// The last tension of a long chain is far below any absolute tolerance.
func TestInexactKeepsTheSmallestTensions(t *testing.T) {
	p := haulChain(40)
	p.RHS[0] = Approx(1)
	s := Solve(p)
	require.Equal(t, Optimal, s.Status)
	assert.InEpsilon(t, math.Pow(3, -20), s.Value.Float(), 1e-9)
	assert.True(t, s.Unique())
}

// Numbers at the edge of float64 overflow on the way; the program is then solved
// in fractions.
func TestInexactBeyondFloatIsSolvedInFractions(t *testing.T) {
	p := &Program{RHS: []Num{Approx(1e-300), Int(0), Int(0)}}
	p.Add(Int(0), Entry{0, Approx(1e300)}, Entry{1, Approx(-1e300)})
	p.Add(Int(0), Entry{1, Approx(1e-300)}, Entry{2, Approx(-1e-300)})
	p.Add(Int(1), Entry{2, Approx(1e-300)})
	s := Solve(p)
	require.Equal(t, Optimal, s.Status)
	assert.InEpsilon(t, 1, s.Value.Float(), 1e-9)
	requireInexact(t, s)
	low, high, lowOK, highOK := s.Range([]Term{{2, Int(1)}})
	assert.True(t, lowOK && highOK)
	assert.False(t, low.IsExact() || high.IsExact())
}

// gonum's simplex wants rows of full rank; where it ends without an error it is a
// second opinion.
func TestAgreesWithGonum(t *testing.T) {
	agreed := 0
	draw := programs(shape{rows: 5, columns: 12, full: 6})
	for seed := range 3000 {
		p := draw.Example(seed)
		rows, columns := len(p.RHS), len(p.Columns)
		if rows == 0 || columns <= rows {
			continue
		}
		cost, a, rhs := p.floats()
		if rank(a) < rows {
			continue
		}
		value, _, err := simplex.Simplex(cost, a, rhs, 0, nil)
		if err != nil {
			continue
		}
		s := Solve(p)
		require.Equal(t, Optimal, s.Status)
		require.InDelta(t, -value, s.Value.Float(), 1e-6)
		agreed++
	}
	assert.Greater(t, agreed, 100, "programs that gonum solves")
}

// floats gives p as a minimum in dense numbers.
func (p *Program) floats() (cost []float64, a *mat.Dense, rhs []float64) {
	rhs = make([]float64, len(p.RHS))
	for i := range rhs {
		rhs[i] = p.RHS[i].Float()
	}
	cost, a = make([]float64, len(p.Columns)), mat.NewDense(len(p.RHS), len(p.Columns), nil)
	for j, column := range p.Columns {
		cost[j] = -column.Cost.Float()
		for _, e := range column.Entries {
			a.Set(e.Row, j, a.At(e.Row, j)+e.Value.Float())
		}
	}
	return cost, a, rhs
}

func rank(a *mat.Dense) int {
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDNone) {
		return 0
	}
	return svd.Rank(1e-9)
}
