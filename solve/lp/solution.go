package lp

import "slices"

// Solution is a solved program, standing at a vertex of the optimal face. It is
// not for use by several goroutines at once.
type Solution struct {
	Status Status
	// Value is the largest value; 0 unless Optimal.
	Value Num
	// X has one number a column: the vertex if Optimal; if Unbounded the ray, for
	// which A·x = 0, x ≥ 0 and cost·x > 0. Nil if Infeasible.
	X []Num
	// Y has one number a row. If Optimal the multipliers: y·A_j ≥ cost_j for every
	// column, and y·rhs = Value. If Infeasible the proof of it: y·A_j ≥ 0 for
	// every column, and y·rhs < 0, as low as it can be with y_i·sign(rhs_i) ≥ -1 on
	// the rows whose rhs is not 0. Nil if Unbounded.
	Y []Num
	// Pivots is how many exchanges of columns it took.
	Pivots int

	// vertex answers what is asked later; exact numbers are given as inexact ones
	// if rounded.
	vertex  answers
	rounded bool
}

// answers is a vertex in either kind of number.
type answers interface {
	unique() bool
	open() []bool
	extreme(form []Term, up bool) (Num, func() []Num, bool)
	narrow(form []Term, up bool) ([]Num, bool)
	multiplier(row, sign int) (Num, bool)
}

// Unique says whether X is the only optimum (of the narrowed face, after Least or
// Largest). False unless Optimal.
func (s *Solution) Unique() bool {
	return s.Status == Optimal && s.vertex.unique()
}

// Open says of each column whether its value may differ from one optimum to
// another. A column said not to differ does not; one said to may turn out not to,
// seldom. Nil unless Optimal.
func (s *Solution) Open() []bool {
	if s.Status != Optimal {
		return nil
	}
	return s.vertex.open()
}

// Range gives the smallest and the largest value of a form over all optima. lowOK
// or highOK is false, and low or high 0, where there is no limit; both unless
// Optimal.
func (s *Solution) Range(form []Term) (low, high Num, lowOK, highOK bool) {
	if s.Status != Optimal {
		return Num{}, Num{}, false, false
	}
	low, _, lowOK = s.vertex.extreme(form, false)
	high, _, highOK = s.vertex.extreme(form, true)
	if slices.ContainsFunc(form, func(t Term) bool { return !t.Value.IsExact() }) {
		low, high = low.approximate(), high.approximate()
	}
	return s.told(low), s.told(high), lowOK, highOK
}

// Extremes gives optima at which a form is least and largest; nil where there is
// no limit, and unless Optimal.
func (s *Solution) Extremes(form []Term) (low, high []Num) {
	if s.Status != Optimal {
		return nil, nil
	}
	if _, x, ok := s.vertex.extreme(form, false); ok {
		low = s.toldAll(x())
	}
	if _, x, ok := s.vertex.extreme(form, true); ok {
		high = s.toldAll(x())
	}
	return low, high
}

// Least narrows the optima to those at which a form is smallest, and moves X to
// one of them; Range, Extremes, Unique, Open, Least and Largest then speak of
// these only. Y and MultiplierRange stay. It gives false and changes nothing if
// there is no limit, and unless Optimal.
func (s *Solution) Least(form []Term) bool { return s.narrow(form, false) }

// Largest is Least for the largest value.
func (s *Solution) Largest(form []Term) bool { return s.narrow(form, true) }

func (s *Solution) narrow(form []Term, up bool) bool {
	if s.Status != Optimal {
		return false
	}
	x, ok := s.vertex.narrow(form, up)
	if ok {
		s.X = s.toldAll(x)
	}
	return ok
}

// MultiplierRange gives the smallest and the largest Y[row] over all optimal
// multipliers: the change of Value with RHS[row], upwards and downwards. lowOK or
// highOK is false where there is no limit, because the slightest change that way
// leaves nothing to meet the rows; both, of a row that repeats others. Both are
// false unless Optimal.
func (s *Solution) MultiplierRange(row int) (low, high Num, lowOK, highOK bool) {
	if s.Status != Optimal {
		return Num{}, Num{}, false, false
	}
	low, lowOK = s.vertex.multiplier(row, 1)
	high, highOK = s.vertex.multiplier(row, -1)
	return s.told(low), s.told(high.Neg()), lowOK, highOK
}

// told gives a number as it is told to the caller.
func (s *Solution) told(n Num) Num {
	if s.rounded {
		return n.approximate()
	}
	return n
}

func (s *Solution) toldAll(numbers []Num) []Num {
	for i, n := range numbers {
		numbers[i] = s.told(n)
	}
	return numbers
}

func (v *vertex[F]) unique() bool { return v.optima().single() }
func (v *vertex[F]) open() []bool { return v.optima().open() }

func (v *vertex[F]) extreme(form []Term, up bool) (Num, func() []Num, bool) {
	value, x, ok := v.optima().best(form, up)
	return toNum(value), func() []Num { return toNums(x()) }, ok
}

func (v *vertex[F]) narrow(form []Term, up bool) ([]Num, bool) {
	f := v.optima()
	if !f.narrow(form, up) {
		return nil, false
	}
	return toNums(f.point()), true
}

func (v *vertex[F]) multiplier(row, sign int) (Num, bool) {
	slope, ok := v.slope(row, sign)
	return toNum(slope), ok
}

func toNums[F number[F]](numbers []F) []Num {
	if numbers == nil {
		return nil
	}
	out := make([]Num, len(numbers))
	for i, n := range numbers {
		out[i] = toNum(n)
	}
	return out
}
