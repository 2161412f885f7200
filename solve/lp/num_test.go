package lp

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// word draws words of all sizes, the borders often.
func word() *rapid.Generator[int64] {
	near := func(border int64) *rapid.Generator[int64] {
		return rapid.Map(rapid.Int64Range(-3, 3), func(d int64) int64 {
			return int64(uint64(border) + uint64(d)) // wraps round at the ends
		})
	}
	return rapid.OneOf(
		rapid.Int64Range(-6, 6), rapid.Int64(), near(math.MaxInt64), near(math.MinInt64),
		near(1<<31), near(1<<32), near(-1<<32), near(3037000499), // √2^63
	)
}

// exactNum draws exact numbers, of words and wider ones, with the same value in
// big.Rat.
func exactNum(t *rapid.T, name string) (Num, *big.Rat) {
	n := word().Draw(t, name+" numerator")
	d := word().Filter(func(d int64) bool { return d != 0 }).Draw(t, name+" denominator")
	num, rat := Frac(n, d), big.NewRat(n, d)
	if rapid.IntRange(0, 4).Draw(t, name+" wide") == 0 {
		num, rat = num.Mul(num), new(big.Rat).Mul(rat, rat)
	}
	return num, rat
}

// requireNum asserts the value and that the number is in its one form, so that
// numbers in words never hide in a big.Rat.
func requireNum(t require.TestingT, want *big.Rat, got Num) {
	require.True(t, got.IsExact())
	require.Zero(t, want.Cmp(got.Rat()), "want %s, got %s", want.RatString(), got)
	fits := want.Num().IsInt64() && want.Denom().IsInt64() && want.Num().Int64() != math.MinInt64
	require.Equal(t, fits, got.wide == nil, "form of %s", got)
	if got.wide != nil {
		require.Zero(t, got.n)
		require.Zero(t, got.d)
	}
}

func TestExactArithmeticAgreesWithBigRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, ra := exactNum(t, "a")
		b, rb := exactNum(t, "b")
		c, rc := exactNum(t, "c")
		requireNum(t, ra, a)
		requireNum(t, new(big.Rat).Add(ra, rb), a.Add(b))
		requireNum(t, new(big.Rat).Sub(ra, rb), a.Sub(b))
		requireNum(t, new(big.Rat).Mul(ra, rb), a.Mul(b))
		requireNum(t, new(big.Rat).Neg(ra), a.Neg())
		requireNum(t, new(big.Rat).Abs(ra), a.Abs())
		requireNum(t, new(big.Rat).Sub(ra, new(big.Rat).Mul(rb, rc)), a.mulSub(b, c))
		requireNum(t, ra, FromRat(ra))
		requireNum(t, ra, a.Add(b).Sub(b)) // back to words when it fits again
		require.Equal(t, ra.Sign(), a.Sign())
		require.Equal(t, ra.Cmp(rb), a.Cmp(b))
		require.Zero(t, a.Cmp(a))
		require.Equal(t, ra.RatString(), a.String())
		want, _ := ra.Float64()
		require.Equal(t, finite(want), a.Float())
		if rb.Sign() != 0 {
			requireNum(t, new(big.Rat).Inv(rb), b.Inv())
			requireNum(t, new(big.Rat).Quo(ra, rb), a.Quo(b))
		}
		higher, lower := Max(a, b), Min(a, b)
		require.True(t, higher.Cmp(a) >= 0 && higher.Cmp(b) >= 0)
		require.Zero(t, higher.Add(lower).Cmp(a.Add(b)))
	})
}

func TestSqrtIsExactOnSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, ra := exactNum(t, "a")
		requireNum(t, new(big.Rat).Abs(ra), Sqrt(a.Mul(a)))
	})
	assert.Equal(t, "3/2", Sqrt(Frac(9, 4)).String())
	two := Sqrt(Int(2))
	assert.False(t, two.IsExact())
	assert.Equal(t, math.Sqrt2, two.Float())
	assert.Equal(t, math.Sqrt2, Sqrt(Approx(2)).Float())
	assert.Zero(t, Sqrt(Approx(-1e-12)).Float(), "noise below zero")
	assert.Panics(t, func() { Sqrt(Int(-1)) })
}

// The smallest int64 is no numerator in words, so that every number in words has
// its negative there too.
func TestSmallestWordIsWide(t *testing.T) {
	smallest := new(big.Rat).SetInt64(math.MinInt64)
	half := Int(-1 << 62)
	for _, n := range []Num{Int(math.MinInt64), Frac(math.MinInt64, 1), half.Add(half), half.Mul(Int(2))} {
		requireNum(t, smallest, n)
		requireNum(t, new(big.Rat).Neg(smallest), n.Neg())
	}
	third := Frac(-1<<62, 3)
	requireNum(t, big.NewRat(math.MinInt64, 3), third.Add(third))
}

func TestZeroNumIsExactZero(t *testing.T) {
	var zero Num
	assert.True(t, zero.IsExact())
	assert.True(t, zero.IsZero())
	assert.Equal(t, "0", zero.String())
	assert.Equal(t, Int(0), zero)
	assert.Equal(t, Int(5), zero.Add(Int(5)))
	assert.Equal(t, zero, Int(5).Mul(zero))
	assert.Equal(t, zero, zero.Neg())
	assert.Zero(t, zero.Rat().Sign())
	assert.Zero(t, zero.Float())
	assert.Equal(t, zero, zero.Quo(Int(7)))
}

func TestInexactArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(-1e6, 1e6).Draw(t, "f")
		g := rapid.Float64Range(-1e6, 1e6).Draw(t, "g")
		a, b := Approx(f), Approx(g)
		require.Equal(t, f+g, a.Add(b).Float())
		require.Equal(t, f-g, a.Sub(b).Float())
		require.Equal(t, f*g, a.Mul(b).Float())
		require.Equal(t, math.Abs(f), a.Abs().Float())
		if g != 0 {
			require.Equal(t, finite(f/g), a.Quo(b).Float())
			require.Equal(t, finite(1/g), b.Inv().Float())
		}
		require.False(t, a.Add(Int(1)).IsExact())
		require.False(t, Int(0).Mul(a).IsExact())
		require.Nil(t, a.Rat())
		require.Zero(t, a.rationalised().Rat().Cmp(new(big.Rat).SetFloat64(f)))
	})
}

func TestInexactTolerance(t *testing.T) {
	assert.Equal(t, 0, Approx(1e-10).Sign())
	assert.Equal(t, 1, Approx(1e-8).Sign())
	assert.Equal(t, -1, Approx(-1e-8).Sign())
	assert.Equal(t, 0, Approx(1).Cmp(Int(1).Add(Approx(1e-10))))
	assert.Equal(t, 0, Approx(1e6).Cmp(Approx(1e6+1e-4)))
	assert.Equal(t, -1, Approx(1).Cmp(Frac(11, 10)))
	assert.Equal(t, 1, Frac(11, 10).Cmp(Approx(1)))
	assert.Equal(t, "0.333333333333", Approx(1.0/3).String())
	assert.Equal(t, "0", Approx(math.Copysign(0, -1)).String())
}

func TestInexactStaysFinite(t *testing.T) {
	huge := Approx(math.MaxFloat64)
	assert.Equal(t, math.MaxFloat64, huge.Add(huge).Float())
	assert.Equal(t, -math.MaxFloat64, huge.Mul(huge.Neg()).Float())
	assert.Equal(t, math.MaxFloat64, huge.Quo(Approx(math.SmallestNonzeroFloat64)).Float())
	wide := Int(10)
	for range 10 {
		wide = wide.Mul(wide)
	}
	assert.Equal(t, math.MaxFloat64, wide.Float())
	assert.False(t, math.IsNaN(wide.Mul(Approx(0)).Float()))
	assert.Panics(t, func() { Approx(math.NaN()) })
	assert.Panics(t, func() { Approx(math.Inf(1)) })
}

func TestDivisionByZeroPanics(t *testing.T) {
	assert.Panics(t, func() { Frac(1, 0) })
	assert.Panics(t, func() { Int(1).Quo(Num{}) })
	assert.Panics(t, func() { Approx(1).Quo(Approx(0)) })
	assert.Panics(t, func() { Num{}.Inv() })
}

func TestRatIsACopy(t *testing.T) {
	r := big.NewRat(1, 3)
	n := FromRat(r)
	r.SetInt64(9)
	n.Rat().SetInt64(9)
	assert.Equal(t, "1/3", n.String())
	wide := Int(math.MaxInt64).Add(Int(1))
	wide.Rat().SetInt64(9)
	assert.Equal(t, "9223372036854775808", wide.String())
}
