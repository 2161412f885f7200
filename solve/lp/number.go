package lp

import "math"

// number is what the solver computes with: Num while it is exact, real when it
// is not.
type number[F any] interface {
	Add(F) F
	Mul(F) F
	Quo(F) F
	Neg() F
	Sign() int
	Cmp(F) int
	// mulSub gives the receiver less a·b.
	mulSub(a, b F) F
	// weak says that the receiver is too small beside b to divide by.
	weak(b F) bool
}

func (n Num) mulSub(a, b Num) Num {
	if b.wide == nil {
		return n.Add(a.Mul(b.Neg()))
	}
	return n.Add(a.Neg().Mul(b))
}

func (n Num) weak(Num) bool { return false }

// real is a float64 whose differences are 0 as soon as they are rounding noise.
// The measure is relative, because in a rig of many stages the last tension may
// be many powers of ten below the first and is still no noise.
type real float64

// noise is the part of an operand below which a difference counts as 0.
const noise = 1e-9

func (r real) Add(s real) real { return settle(r+s, r, s) }
func (r real) Mul(s real) real { return real(float64(r) * float64(s)) }
func (r real) Quo(s real) real { return r / s }
func (r real) Neg() real       { return -r }

func (r real) Sign() int {
	switch {
	case r > 0:
		return 1
	case r < 0:
		return -1
	}
	return 0
}

func (r real) Cmp(s real) int { return settle(r-s, r, s).Sign() }

// mulSub rounds the product first, as Mul does: a fused operation would make the
// choice of pivots depend on the machine.
func (r real) mulSub(a, b real) real {
	product := real(float64(a) * float64(b))
	return settle(r-product, r, product)
}

func (r real) weak(b real) bool { return math.Abs(float64(r)) < 0.01*math.Abs(float64(b)) }

// settle gives the difference or sum d of two numbers, 0 if it is noise.
func settle(d, a, b real) real {
	if math.Abs(float64(d)) <= noise*max(math.Abs(float64(a)), math.Abs(float64(b))) {
		return 0
	}
	return d
}

// one gives 1 in either kind of number.
func one[F number[F]]() F {
	var f F
	switch p := any(&f).(type) {
	case *Num:
		*p = Int(1)
	case *real:
		*p = 1
	}
	return f
}

// toNum gives a number of either kind to the caller.
func toNum[F number[F]](f F) Num {
	switch v := any(f).(type) {
	case Num:
		return v
	case real:
		return inexact(float64(v))
	}
	panic("lp: unknown kind of number")
}

// fromNum takes a number of the caller into either kind. Among exact numbers an
// inexact one is taken at its word.
func fromNum[F number[F]](n Num) F {
	var f F
	switch p := any(&f).(type) {
	case *Num:
		*p = n.rationalised()
	case *real:
		*p = real(n.Float())
	}
	return f
}

// negligible says whether a sum of shortfalls is none beside the scale of the
// numbers that were to be met.
func negligible[F number[F]](short, scale F) bool {
	if s, ok := any(short).(real); ok {
		return math.Abs(float64(s)) <= tolerance*math.Abs(float64(any(scale).(real)))
	}
	return short.Sign() == 0
}

// rounds says whether numbers of this kind round.
func rounds[F number[F]]() bool {
	var f F
	_, ok := any(f).(real)
	return ok
}
