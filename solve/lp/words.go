package lp

import (
	"math"
	"math/bits"
)

// addFractions gives a/b + c/d of fractions in lowest terms, if it fits.
func addFractions(a, b, c, d int64) (Num, bool) {
	if a == 0 {
		return fraction(c, d), true
	}
	if c == 0 {
		return fraction(a, b), true
	}
	g := int64(gcd(uint64(b), uint64(d)))
	left, ok1 := mulWords(a, d/g)
	right, ok2 := mulWords(c, b/g)
	sum := left + right
	if !ok1 || !ok2 || (sum > left) != (right > 0) || sum == math.MinInt64 {
		return Num{}, false
	}
	if sum == 0 {
		return Num{}, true
	}
	// Only a divisor of g can be common to the sum and b/g·d.
	h := int64(gcd(abs(sum), uint64(g)))
	den, ok := mulWords(b/g, d/h)
	return fraction(sum/h, den), ok
}

// mulFractions gives a/b · c/d of fractions in lowest terms, if it fits.
func mulFractions(a, b, c, d int64) (Num, bool) {
	if a == 0 || c == 0 {
		return Num{}, true
	}
	if d > 1 {
		g := int64(gcd(abs(a), uint64(d)))
		a, d = a/g, d/g
	}
	if b > 1 {
		g := int64(gcd(abs(c), uint64(b)))
		c, b = c/g, b/g
	}
	num, ok1 := mulWords(a, c)
	den, ok2 := mulWords(b, d)
	if !ok1 || !ok2 {
		return Num{}, false
	}
	return fraction(num, den), true
}

// cmpFractions compares a/b with c/d, both denominators positive.
func cmpFractions(a, b, c, d int64) int {
	switch {
	case a < 0 && c >= 0:
		return -1
	case a >= 0 && c < 0:
		return 1
	case a < 0:
		return cmpFractions(-c, d, -a, b)
	}
	hi1, lo1 := bits.Mul64(uint64(a), uint64(d))
	hi2, lo2 := bits.Mul64(uint64(c), uint64(b))
	switch {
	case hi1 < hi2 || hi1 == hi2 && lo1 < lo2:
		return -1
	case hi1 == hi2 && lo1 == lo2:
		return 0
	}
	return 1
}

// mulWords gives a·b, if its size fits a word.
func mulWords(a, b int64) (int64, bool) {
	hi, lo := bits.Mul64(abs(a), abs(b))
	if hi != 0 || lo > math.MaxInt64 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(lo), true
	}
	return int64(lo), true
}

// abs gives the size of a word.
func abs(a int64) uint64 {
	if a < 0 {
		return uint64(-a)
	}
	return uint64(a)
}

// gcd gives the greatest common divisor; gcd(a, 0) = a.
func gcd(a, b uint64) uint64 {
	if a == 0 || b == 0 {
		return a | b
	}
	shift := bits.TrailingZeros64(a | b)
	a >>= bits.TrailingZeros64(a)
	for b != 0 {
		b >>= bits.TrailingZeros64(b)
		if a > b {
			a, b = b, a
		}
		b -= a
	}
	return a << shift
}
