package lp

import (
	"math"
	"math/big"
	"math/bits"
)

// wide is a fraction in lowest terms, den > 0, that two words do not hold. It is
// shared and never changes. It keeps itself in lowest terms as fractions of words
// do, which spares it most of the long divisions that big.Rat makes to get there.
type wide struct {
	num, den big.Int
}

// widened gives a fraction of words as a wide one.
func widened(n, d int64) *wide {
	w := new(wide)
	w.num.SetInt64(n)
	w.den.SetInt64(d)
	return w
}

// wideOf gives an exact number as a wide fraction.
func (n Num) wideOf() *wide {
	if n.wide != nil {
		return n.wide
	}
	return widened(n.n, n.d+1)
}

// narrow gives the number of a fraction in lowest terms, which it takes over: in
// words if it fits.
func (w *wide) narrow() Num {
	if w.num.IsInt64() && w.den.IsInt64() {
		if n := w.num.Int64(); n != math.MinInt64 {
			return fraction(n, w.den.Int64())
		}
	}
	return Num{wide: w}
}

// mul gives w·v.
func (w *wide) mul(v *wide) Num {
	out := new(wide)
	var a, b, c, d big.Int
	divideOut(&a, &d, &w.num, &v.den)
	divideOut(&c, &b, &v.num, &w.den)
	out.num.Mul(&a, &c)
	out.den.Mul(&b, &d)
	return out.narrow()
}

// mulWords gives w·n/d, n not 0.
func (w *wide) mulWords(n, d int64) Num {
	if d == 1 && n == 1 {
		return Num{wide: w}
	}
	g := int64(gcd(remainder(&w.num, uint64(d)), uint64(d)))
	h := int64(gcd(remainder(&w.den, abs(n)), abs(n)))
	out := new(wide)
	scale(&out.num, &w.num, g, n/h)
	scale(&out.den, &w.den, h, d/g)
	return out.narrow()
}

// add gives w + v.
func (w *wide) add(v *wide) Num {
	var g, p, q, t big.Int
	g.GCD(nil, nil, &w.den, &v.den)
	p.Quo(&w.den, &g)
	q.Quo(&v.den, &g)
	out := new(wide)
	out.num.Mul(&w.num, &q)
	out.num.Add(&out.num, t.Mul(&v.num, &p))
	// Only a divisor of g can be common to the sum and p·v.den.
	if g.IsInt64() && g.Int64() == 1 {
		out.den.Mul(&p, &v.den)
		return out.narrow()
	}
	t.Abs(&out.num)
	g.GCD(nil, nil, &t, &g)
	out.num.Quo(&out.num, &g)
	out.den.Mul(&p, t.Quo(&v.den, &g))
	return out.narrow()
}

// addWords gives w + n/d.
func (w *wide) addWords(n, d int64) Num {
	g := int64(gcd(remainder(&w.den, uint64(d)), uint64(d)))
	out := new(wide)
	var p, t big.Int
	scale(&p, &w.den, g, 1)
	scale(&out.num, &w.num, 1, d/g)
	out.num.Add(&out.num, scale(&t, &p, 1, n))
	h := int64(gcd(remainder(&out.num, uint64(g)), uint64(g)))
	scale(&out.num, &out.num, h, 1)
	scale(&out.den, &p, 1, d/h)
	return out.narrow()
}

// cmp compares two wide fractions.
func (w *wide) cmp(v *wide) int {
	if s, r := w.num.Sign(), v.num.Sign(); s != r {
		return sign(int64(s - r))
	}
	var a, b big.Int
	return a.Mul(&w.num, &v.den).Cmp(b.Mul(&v.num, &w.den))
}

// neg gives −w. It is not wide if w is one below what words hold.
func (w *wide) neg() Num {
	out := new(wide)
	out.num.Neg(&w.num)
	out.den.Set(&w.den)
	return out.narrow()
}

// inv gives 1/w.
func (w *wide) inv() Num {
	out := new(wide)
	out.num.Set(&w.den)
	out.den.Abs(&w.num)
	if w.num.Sign() < 0 {
		out.num.Neg(&out.num)
	}
	return out.narrow()
}

// rat gives the fraction as a big.Rat of the caller's own.
func (w *wide) rat() *big.Rat { return new(big.Rat).SetFrac(&w.num, &w.den) }

// divideOut sets p and q to x and y without their common divisor; y > 0.
func divideOut(p, q, x, y *big.Int) {
	var g big.Int
	g.Abs(x)
	g.GCD(nil, nil, &g, y)
	if g.IsInt64() && g.Int64() == 1 {
		p.Set(x)
		q.Set(y)
		return
	}
	p.Quo(x, &g)
	q.Quo(y, &g)
}

// scale sets z to x/divisor·factor; divisor > 0 divides x. It gives z.
func scale(z, x *big.Int, divisor, factor int64) *big.Int {
	var word big.Int
	if divisor != 1 {
		x = z.Quo(x, word.SetInt64(divisor))
	}
	if factor == 1 {
		return z.Set(x)
	}
	return z.Mul(x, word.SetInt64(factor))
}

// remainder gives the size of x modulo m.
func remainder(x *big.Int, m uint64) uint64 {
	if m == 1 {
		return 0
	}
	if bits.UintSize != 64 {
		var r, divisor big.Int
		return r.Abs(x).Mod(&r, divisor.SetUint64(m)).Uint64()
	}
	words := x.Bits()
	var rest uint64
	for i := len(words) - 1; i >= 0; i-- {
		_, rest = bits.Div64(rest, uint64(words[i]), m)
	}
	return rest
}
