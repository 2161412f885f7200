package lp

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var (
	tiny   = shape{rows: 3, columns: 6, full: 6}
	middle = shape{rows: 14, columns: 26, full: 3}
)

var ways = []way{guessing, exactly}

func TestRandomProgramsProveTheirOutcome(t *testing.T) {
	for _, s := range []shape{tiny, middle} {
		rapid.Check(t, func(t *rapid.T) {
			p := programs(s).Draw(t, "program")
			for _, how := range ways {
				requireProof(t, p, solve(p, how))
			}
		})
	}
}

func TestRandomProgramsAgainstEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := programs(tiny).Draw(t, "program")
		status, value := enumerate(p).answer(p.costs())
		for _, how := range ways {
			s := solve(p, how)
			require.Equal(t, status, s.Status)
			require.Equal(t, value, s.Value)
		}
	})
}

// optimal draws programs that have an optimum.
func optimal(s shape) *rapid.Generator[*Program] {
	return programs(s).Filter(func(p *Program) bool { return Solve(p).Status == Optimal })
}

func forms(p *Program) *rapid.Generator[[]Term] {
	if len(p.Columns) == 0 {
		return rapid.Just[[]Term](nil)
	}
	return rapid.Custom(func(t *rapid.T) []Term {
		var terms []Term
		for range rapid.IntRange(0, 4).Draw(t, "terms") {
			terms = append(terms, Term{rapid.IntRange(0, len(p.Columns)-1).Draw(t, "column"), smallNumbers().Draw(t, "value")})
		}
		return terms
	})
}

func spread(form []Term, columns int, sign int64) []Num {
	out := make([]Num, columns)
	for _, t := range form {
		out[t.Column] = out[t.Column].Add(t.Value.Mul(Int(sign)))
	}
	return out
}

// requireRange checks Range, Extremes, Unique and Open of the face that s stands
// on against all its corners.
func requireRange(t require.TestingT, p *Program, s *Solution, face corners, terms []Term) {
	low, high, lowOK, highOK := s.Range(terms)
	atLow, atHigh := s.Extremes(terms)
	for _, end := range []struct {
		sign  int64
		value Num
		ok    bool
		at    []Num
	}{{-1, low.Neg(), lowOK, atLow}, {1, high, highOK, atHigh}} {
		aim := spread(terms, len(p.Columns), end.sign)
		status, value := face.answer(aim)
		require.Equal(t, status == Optimal, end.ok)
		require.Equal(t, end.ok, end.at != nil)
		if end.ok {
			require.Equal(t, value, end.value)
			requireFeasible(t, p, end.at)
			require.Equal(t, s.Value, p.worth(end.at))
			require.Equal(t, value, product(aim, end.at))
		}
	}
}

func requireOpen(t require.TestingT, s *Solution, face corners) {
	unique := len(face.rays) == 0
	open := s.Open()
	for j := range s.X {
		moves := false
		for _, v := range face.vertices {
			moves = moves || FromRat(v[j]).Cmp(s.X[j]) != 0
		}
		for _, r := range face.rays {
			moves = moves || r[j].Sign() != 0
		}
		require.True(t, open[j] || !moves, "column %d moves over the face", j)
		unique = unique && !moves
	}
	require.Equal(t, unique, s.Unique())
}

func TestRangeAgainstEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := optimal(tiny).Draw(t, "program")
		face := enumerate(p).optima(p.costs())
		terms := forms(p).Draw(t, "form")
		for _, how := range ways {
			s := solve(p, how)
			before := slices.Clone(s.X)
			requireRange(t, p, s, face, terms)
			requireOpen(t, s, face)
			require.Equal(t, before, s.X, "asking changed the solution")
			requireProof(t, p, s)
		}
	})
}

func TestLeastAndLargestNarrowTheFace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := optimal(tiny).Draw(t, "program")
		face := enumerate(p).optima(p.costs())
		s := Solve(p)
		y := slices.Clone(s.Y)
		for range 3 {
			terms := forms(p).Draw(t, "form")
			up := rapid.Bool().Draw(t, "largest")
			ask, sign := s.Least, int64(-1)
			if up {
				ask, sign = s.Largest, 1
			}
			aim := spread(terms, len(p.Columns), sign)
			status, value := face.answer(aim)
			before := slices.Clone(s.X)
			require.Equal(t, status == Optimal, ask(terms))
			if status == Optimal {
				face = face.optima(aim)
				require.Equal(t, value, product(aim, s.X))
			} else {
				require.Equal(t, before, s.X)
			}
			requireProof(t, p, s)
			requireOpen(t, s, face)
			requireRange(t, p, s, face, forms(p).Draw(t, "asked"))
		}
		require.Equal(t, y, s.Y)
	})
}

func TestMultiplierRangeAgainstEnumeration(t *testing.T) {
	few := shape{rows: 2, columns: 4, full: 6}
	rapid.Check(t, func(t *rapid.T) {
		p := optimal(few).Draw(t, "program")
		for _, how := range ways {
			s := solve(p, how)
			if rapid.Bool().Draw(t, "moved first") {
				s.Least(forms(p).Draw(t, "form"))
			}
			multipliers := enumerate(p.dual(s.Value))
			for row := range p.RHS {
				requireMultiplierRange(t, s, row, multipliers)
			}
		}
	})
}

func requireMultiplierRange(t require.TestingT, s *Solution, row int, multipliers corners) {
	low, high, lowOK, highOK := s.MultiplierRange(row)
	rows := len(s.Y)
	aim := make([]Num, 2*rows+len(s.X))
	aim[row], aim[rows+row] = Int(1), Int(-1)
	status, value := multipliers.answer(aim)
	require.Equal(t, status == Optimal, highOK)
	if highOK {
		require.Equal(t, value, high)
	}
	aim[row], aim[rows+row] = Int(-1), Int(1)
	status, value = multipliers.answer(aim)
	require.Equal(t, status == Optimal, lowOK)
	if lowOK {
		require.Equal(t, value.Neg(), low)
	}
}

// The range of a multiplier is the range of a form over the optima of the dual
// program; here that program is written out and solved by the same solver, on
// larger programs than can be enumerated.
func TestMultiplierRangeAgainstDual(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := optimal(middle).Draw(t, "program")
		s := Solve(p)
		dual := Solve(p.dual(s.Value))
		require.Equal(t, Optimal, dual.Status)
		for row := range p.RHS {
			low, high, lowOK, highOK := s.MultiplierRange(row)
			form := []Term{{row, Int(1)}, {len(p.RHS) + row, Int(-1)}}
			wantLow, wantHigh, wantLowOK, wantHighOK := dual.Range(form)
			require.Equal(t, wantLowOK, lowOK)
			require.Equal(t, wantHighOK, highOK)
			if lowOK {
				require.Equal(t, wantLow, low)
			}
			if highOK {
				require.Equal(t, wantHigh, high)
			}
		}
	})
}

// The ray of an infeasible program is the lowest in its box.
func TestInfeasibleRayIsTheLowest(t *testing.T) {
	bad := programs(tiny).Filter(func(p *Program) bool { return Solve(p).Status == Infeasible })
	rapid.Check(t, func(t *rapid.T) {
		p := bad.Draw(t, "program")
		shortfall := &Program{RHS: p.RHS}
		for _, c := range p.Columns {
			shortfall.Add(Num{}, c.Entries...)
		}
		for i, b := range p.RHS {
			if b.Sign() != 0 {
				shortfall.Add(Int(-1), Entry{i, Int(int64(b.Sign()))})
			}
		}
		_, value := enumerate(shortfall).answer(shortfall.costs())
		for _, how := range ways {
			require.Equal(t, value, product(solve(p, how).Y, p.RHS))
		}
	})
}
