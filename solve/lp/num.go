package lp

import (
	"math"
	"math/big"
	"strconv"
)

// Num is an immutable number, exact (a fraction) or inexact (a float64). The
// zero Num is exact 0. An operation is exact if all its operands are.
//
// Inexact numbers are always finite: a result beyond the range of float64 stays
// at the largest float64 of its sign.
type Num struct {
	// A fraction of two words is n/(d+1), in lowest terms, with n above the
	// smallest int64 and d ≥ 0; an inexact number has its bits in n and d = -1; a
	// fraction that does not fit has wide, and n = d = 0. So every value has one
	// form only, and the zero Num is 0/1.
	n, d int64
	wide *wide
}

const inexactMark = -1

// Int gives the exact whole number n.
func Int(n int64) Num {
	if n == math.MinInt64 {
		return Num{wide: widened(n, 1)}
	}
	return Num{n: n}
}

// Frac gives the exact fraction n/d. It panics if d is 0.
func Frac(n, d int64) Num {
	if d == 0 {
		panic("lp: fraction with denominator 0")
	}
	if n == math.MinInt64 || d == math.MinInt64 {
		return FromRat(big.NewRat(n, d))
	}
	if d < 0 {
		n, d = -n, -d
	}
	g := gcd(abs(n), uint64(d))
	return fraction(n/int64(g), d/int64(g))
}

// FromRat gives the exact value of r, of which it keeps no reference.
func FromRat(r *big.Rat) Num {
	w := new(wide)
	w.num.Set(r.Num())
	w.den.Set(r.Denom())
	return w.narrow()
}

// Approx gives the inexact number f. It panics if f is not finite.
func Approx(f float64) Num {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		panic("lp: inexact number that is not finite")
	}
	return inexact(f)
}

// IsExact says whether n is a fraction.
func (n Num) IsExact() bool { return n.d != inexactMark }

// IsZero says whether n is 0, by the measure of Sign.
func (n Num) IsZero() bool { return n.Sign() == 0 }

// Rat gives the exact value in a big.Rat of the caller's own; nil if n is
// inexact.
func (n Num) Rat() *big.Rat {
	if !n.IsExact() {
		return nil
	}
	return n.wideOf().rat()
}

// Float gives the nearest float64, the largest finite one for fractions beyond
// it.
func (n Num) Float() float64 {
	switch {
	case n.wide != nil:
		f, _ := n.wide.rat().Float64()
		return finite(f)
	case n.d == inexactMark:
		return math.Float64frombits(uint64(n.n))
	case n.d == 0:
		return float64(n.n)
	case abs(n.n) < 1<<53 && n.d < 1<<53:
		return float64(n.n) / float64(n.d+1)
	}
	f, _ := big.NewRat(n.n, n.d+1).Float64()
	return f
}

// String gives "3" or "1/3" for exact numbers, twelve significant digits for
// inexact ones.
func (n Num) String() string {
	switch {
	case n.wide != nil:
		return n.wide.rat().RatString()
	case n.d == inexactMark:
		return strconv.FormatFloat(n.Float(), 'g', 12, 64)
	case n.d == 0:
		return strconv.FormatInt(n.n, 10)
	}
	return strconv.FormatInt(n.n, 10) + "/" + strconv.FormatInt(n.d+1, 10)
}

// fraction gives the number of a fraction in lowest terms, d > 0.
func fraction(n, d int64) Num { return Num{n: n, d: d - 1} }

// inexact gives the inexact number nearest to f.
func inexact(f float64) Num {
	f = finite(f) + 0 // adding 0 turns -0 into 0
	return Num{n: int64(math.Float64bits(f)), d: inexactMark}
}

// finite brings an infinite f back to the largest float64 of its sign.
func finite(f float64) float64 {
	return max(-math.MaxFloat64, min(f, math.MaxFloat64))
}

// rationalised gives the exact value of the float64 of an inexact number.
func (n Num) rationalised() Num {
	if n.IsExact() {
		return n
	}
	return FromRat(new(big.Rat).SetFloat64(n.Float()))
}

// approximate gives n as an inexact number.
func (n Num) approximate() Num { return inexact(n.Float()) }
