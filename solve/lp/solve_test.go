package lp

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// program builds a program from rows of whole numbers, the last of each being the
// right-hand side, and from costs. Slack columns are for the caller to write.
func program(cost []int64, rows ...[]int64) *Program {
	p := &Program{}
	for _, c := range cost {
		p.Add(Int(c))
	}
	for _, row := range rows {
		i := p.Row(Int(row[len(row)-1]))
		for j, a := range row[:len(row)-1] {
			p.extend(j, Entry{i, Int(a)})
		}
	}
	return p
}

// everyWay solves a program in all ways and checks the proofs.
func everyWay(t *testing.T, p *Program, check func(*testing.T, *Solution)) {
	t.Helper()
	for name, how := range map[string]way{"guessing": guessing, "exactly": exactly} {
		t.Run(name, func(t *testing.T) {
			s := solve(p, how)
			requireProof(t, p, s)
			check(t, s)
		})
	}
}

// beale is the program on which the steepest rule alone goes round in a circle
// (E. M. L. Beale, Cycling in the dual simplex algorithm, 1955).
func beale() *Program {
	p := &Program{RHS: []Num{Int(0), Int(0), Int(1)}}
	p.Add(Frac(3, 4), Entry{0, Frac(1, 4)}, Entry{1, Frac(1, 2)})
	p.Add(Int(-150), Entry{0, Int(-60)}, Entry{1, Int(-90)})
	p.Add(Frac(1, 50), Entry{0, Frac(-1, 25)}, Entry{1, Frac(-1, 50)}, Entry{2, Int(1)})
	p.Add(Int(-6), Entry{0, Int(9)}, Entry{1, Int(3)})
	for i := range 3 {
		p.Add(Int(0), Entry{i, Int(1)})
	}
	return p
}

func TestBealeDoesNotCycle(t *testing.T) {
	everyWay(t, beale(), func(t *testing.T, s *Solution) {
		assert.Equal(t, Optimal, s.Status)
		assert.Equal(t, Frac(1, 20), s.Value) // as a minimum -1/20
	})
}

func TestOutcomes(t *testing.T) {
	tests := []struct {
		name    string
		program *Program
		status  Status
		value   Num
	}{
		{"nothing at all", &Program{}, Optimal, Int(0)},
		{"no columns, rhs 0", &Program{RHS: make([]Num, 2)}, Optimal, Int(0)},
		{"no columns, rhs 1", &Program{RHS: []Num{Int(0), Int(1)}}, Infeasible, Int(0)},
		{"no rows, cost below 0", program([]int64{-1, 0}), Optimal, Int(0)},
		{"no rows, cost above 0", program([]int64{-1, 2}), Unbounded, Int(0)},
		{"zero column that pays", program([]int64{1, 0}, []int64{0, 1, 2}), Unbounded, Int(0)},
		{"zero column that pays, rows not met", program([]int64{1, 0}, []int64{0, 1, -2}), Infeasible, Int(0)},
		{"zero column that costs", program([]int64{-1, 3}, []int64{0, 1, 2}), Optimal, Int(6)},
		{"zero row", program([]int64{1}, []int64{0, 0}, []int64{2, 3}), Optimal, Frac(3, 2)},
		{"zero row with rhs", program([]int64{1}, []int64{0, 1}, []int64{2, 3}), Infeasible, Int(0)},
		{"negative rhs", program([]int64{-1, 0}, []int64{-1, 1, -4}), Optimal, Int(-4)},
		{"row twice", program([]int64{1, 1}, []int64{1, 2, 4}, []int64{1, 2, 4}), Optimal, Int(4)},
		{"row contradicted", program([]int64{1, 1}, []int64{1, 2, 4}, []int64{2, 4, 9}), Infeasible, Int(0)},
		{"rows that add up", program([]int64{1, 1, 1}, []int64{1, 1, 0, 2}, []int64{0, 1, 1, 3}, []int64{1, 2, 1, 5}), Optimal, Int(5)},
		{"ray", program([]int64{1, 0}, []int64{1, -1, 1}), Unbounded, Int(0)},
		{"degenerate corner", program([]int64{2, 3, 0, 0, 0}, []int64{1, 1, 1, 0, 0, 4}, []int64{1, 2, 0, 1, 0, 8}, []int64{0, 1, 0, 0, 1, 4}), Optimal, Int(12)},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			everyWay(t, test.program, func(t *testing.T, s *Solution) {
				assert.Equal(t, test.status, s.Status)
				assert.Equal(t, test.value, s.Value)
				if s.Status == Optimal {
					assert.Len(t, s.X, len(test.program.Columns))
					assert.Len(t, s.Y, len(test.program.RHS))
				}
			})
		})
	}
}

func TestEntriesOfOneRowAddUp(t *testing.T) {
	p := &Program{RHS: []Num{Int(6), Int(0)}}
	p.Add(Int(1), Entry{0, Int(1)}, Entry{1, Int(5)}, Entry{0, Int(2)}, Entry{1, Int(-5)})
	everyWay(t, p, func(t *testing.T, s *Solution) {
		assert.Equal(t, Int(2), s.Value)
	})
	low, high, _, _ := Solve(p).Range([]Term{{0, Int(1)}, {0, Int(2)}})
	assert.Equal(t, []Num{Int(6), Int(6)}, []Num{low, high})
}

func TestSolveLeavesTheProgramAlone(t *testing.T) {
	p := &Program{RHS: []Num{Int(-3), Int(2)}}
	p.Add(Int(-1), Entry{1, Int(1)}, Entry{0, Int(-1)}, Entry{1, Int(1)})
	p.Add(Int(2), Entry{1, Int(1)})
	before := fmt.Sprint(*p)
	Solve(p)
	assert.Equal(t, before, fmt.Sprint(*p))
}

func TestAskingOfNoOptimumGivesNothing(t *testing.T) {
	for _, p := range []*Program{
		program([]int64{1}, []int64{1, -1}),
		program([]int64{1, 0}, []int64{1, -1, 0}),
	} {
		s := Solve(p)
		form := []Term{{0, Int(1)}}
		_, _, lowOK, highOK := s.Range(form)
		assert.False(t, lowOK || highOK)
		_, _, lowOK, highOK = s.MultiplierRange(0)
		assert.False(t, lowOK || highOK)
		low, high := s.Extremes(form)
		assert.Nil(t, low)
		assert.Nil(t, high)
		assert.False(t, s.Least(form) || s.Largest(form) || s.Unique())
		assert.Nil(t, s.Open())
	}
}

// Two ropes share one load: their sum is certain, neither of them is.
func TestSharedLoad(t *testing.T) {
	p := program([]int64{0, 0}, []int64{1, 1, 3})
	everyWay(t, p, func(t *testing.T, s *Solution) {
		assert.False(t, s.Unique())
		assert.Equal(t, []bool{true, true}, s.Open())
		low, high, lowOK, highOK := s.Range([]Term{{0, Int(1)}})
		assert.True(t, lowOK && highOK)
		assert.Equal(t, []Num{Int(0), Int(3)}, []Num{low, high})
		low, high, _, _ = s.Range([]Term{{0, Int(1)}, {1, Int(1)}})
		assert.Equal(t, []Num{Int(3), Int(3)}, []Num{low, high})
		assert.True(t, s.Least([]Term{{1, Int(1)}}))
		assert.Equal(t, []Num{Int(3), Int(0)}, s.X)
		assert.True(t, s.Unique())
		assert.Equal(t, []bool{false, false}, s.Open())
	})
}

// A row that repeats another has no multiplier of its own: what one has more the
// other has less. A third row is untouched by that.
func TestMultipliersOfRepeatedRows(t *testing.T) {
	p := program([]int64{1, 1}, []int64{1, 0, 4}, []int64{1, 0, 4}, []int64{0, 2, 3})
	everyWay(t, p, func(t *testing.T, s *Solution) {
		for row := range 2 {
			_, _, lowOK, highOK := s.MultiplierRange(row)
			assert.False(t, lowOK || highOK)
		}
		low, high, lowOK, highOK := s.MultiplierRange(2)
		assert.True(t, lowOK && highOK)
		assert.Equal(t, []Num{Frac(1, 2), Frac(1, 2)}, []Num{low, high})
	})
}

// A bound of 0 on the first row: more of it is worth 2 each, less is impossible.
func TestMultiplierAtTheEdgeOfTheFeasible(t *testing.T) {
	p := program([]int64{2}, []int64{1, 0})
	everyWay(t, p, func(t *testing.T, s *Solution) {
		low, _, lowOK, highOK := s.MultiplierRange(0)
		assert.True(t, lowOK)
		assert.False(t, highOK)
		assert.Equal(t, Int(2), low)
	})
}

// The two best columns differ by less than a float64 can tell: only fractions
// know which is better, and floating point must not decide it.
func TestGuessIsNeverBelieved(t *testing.T) {
	tiny := Int(1)
	for range 40 {
		tiny = tiny.Mul(Frac(1, 10))
	}
	for _, better := range []int{0, 1} {
		p := program([]int64{1, 1, 0}, []int64{1, 1, 1, 1})
		p.Columns[better].Cost = Int(1).Add(tiny)
		everyWay(t, p, func(t *testing.T, s *Solution) {
			assert.Equal(t, Int(1).Add(tiny), s.Value)
			assert.Equal(t, Int(1), s.X[better])
			assert.True(t, s.Unique())
		})
	}
	p := program([]int64{0}, []int64{1, 1}, []int64{1, 1})
	p.RHS[1] = p.RHS[1].Add(tiny)
	everyWay(t, p, func(t *testing.T, s *Solution) {
		assert.Equal(t, Infeasible, s.Status)
	})
}

func TestNumbersOfManyBits(t *testing.T) {
	p := haulChain(300)
	s := Solve(p)
	requireProof(t, p, s)
	want := Int(1)
	for range 150 {
		want = want.Mul(Frac(1, 3))
	}
	assert.Equal(t, want, s.Value)
	assert.Greater(t, s.Value.wideOf().den.BitLen(), 200)
}

// shuffled renames rows and columns.
func (p *Program) shuffled(random *rand.Rand) *Program {
	row := random.Perm(len(p.RHS))
	out := &Program{RHS: make([]Num, len(p.RHS))}
	for i, b := range p.RHS {
		out.RHS[row[i]] = b
	}
	for _, j := range random.Perm(len(p.Columns)) {
		entries := slices.Clone(p.Columns[j].Entries)
		for k := range entries {
			entries[k].Row = row[entries[k].Row]
		}
		out.Add(p.Columns[j].Cost, entries...)
	}
	return out
}

// A chain takes about one pivot a row, in whatever order it is written.
func TestPivotsOfChains(t *testing.T) {
	for _, sheaves := range []int{10, 50, 200} {
		for seed := range uint64(4) {
			p := haulChain(sheaves).shuffled(rand.New(rand.NewPCG(seed, 1)))
			s := Solve(p)
			require.Equal(t, Optimal, s.Status)
			assert.LessOrEqual(t, s.Pivots, len(p.RHS)+5, "%d sheaves, order %d", sheaves, seed)
		}
	}
}

func TestRandomRigs(t *testing.T) {
	seen := map[Status]int{}
	for seed := range uint64(400) {
		random := rand.New(rand.NewPCG(seed, 2))
		p := randomRig(random, 2+random.IntN(30), 1+random.IntN(20), 2+random.IntN(6))
		for _, how := range ways {
			s := solve(p, how)
			requireProof(t, p, s)
			seen[s.Status]++
		}
	}
	for _, status := range []Status{Optimal, Infeasible, Unbounded} {
		assert.Greater(t, seen[status], 10, status.String())
	}
}
