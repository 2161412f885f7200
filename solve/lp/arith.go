package lp

import "math"

// tolerance is how near two inexact numbers count as equal.
const tolerance = 1e-9

// Add gives n + m.
func (n Num) Add(m Num) Num {
	switch {
	case n.d == inexactMark || m.d == inexactMark:
		return inexact(n.Float() + m.Float())
	case n.wide != nil && m.wide != nil:
		return n.wide.add(m.wide)
	case n.wide != nil:
		return n.wide.addWords(m.n, m.d+1)
	case m.wide != nil:
		return m.wide.addWords(n.n, n.d+1)
	}
	if n.d == 0 && m.d == 0 {
		if s := n.n + m.n; (s > n.n) == (m.n > 0) && s != math.MinInt64 {
			return Num{n: s}
		}
	} else if s, ok := addFractions(n.n, n.d+1, m.n, m.d+1); ok {
		return s
	}
	return n.wideOf().addWords(m.n, m.d+1)
}

// Sub gives n − m.
func (n Num) Sub(m Num) Num { return n.Add(m.Neg()) }

// Mul gives n·m.
func (n Num) Mul(m Num) Num {
	switch {
	case n.d == inexactMark || m.d == inexactMark:
		return inexact(n.Float() * m.Float())
	case n.wide != nil && m.wide != nil:
		return n.wide.mul(m.wide)
	case n.exactlyZero() || m.exactlyZero():
		return Num{}
	case n.wide != nil:
		return n.wide.mulWords(m.n, m.d+1)
	case m.wide != nil:
		return m.wide.mulWords(n.n, n.d+1)
	}
	if p, ok := mulFractions(n.n, n.d+1, m.n, m.d+1); ok {
		return p
	}
	return n.wideOf().mulWords(m.n, m.d+1)
}

// Quo gives n/m. It panics if m is 0.
func (n Num) Quo(m Num) Num {
	if m.exactlyZero() {
		panic("lp: division by 0")
	}
	if m.IsExact() {
		return n.Mul(m.Inv())
	}
	return inexact(n.Float() / m.Float())
}

// Inv gives 1/n. It panics if n is 0.
func (n Num) Inv() Num {
	switch {
	case n.exactlyZero():
		panic("lp: division by 0")
	case n.wide != nil:
		return n.wide.inv()
	case n.d == inexactMark:
		return inexact(1 / n.Float())
	case n.n < 0:
		return fraction(-n.d-1, -n.n)
	}
	return fraction(n.d+1, n.n)
}

// Neg gives −n.
func (n Num) Neg() Num {
	switch {
	case n.wide != nil:
		return n.wide.neg()
	case n.d == inexactMark:
		return inexact(-n.Float())
	}
	return Num{n: -n.n, d: n.d}
}

// Abs gives the size of n.
func (n Num) Abs() Num {
	if n.signBit() < 0 {
		return n.Neg()
	}
	return n
}

// Sign gives -1, 0 or 1; an inexact number counts as 0 within 1e-9.
func (n Num) Sign() int {
	if n.d == inexactMark && math.Abs(n.Float()) <= tolerance {
		return 0
	}
	return n.signBit()
}

// Cmp gives -1, 0 or 1 as n is below, equal to or above m. If one of them is
// inexact they count as equal within 1e-9 of the larger of 1, |n| and |m|.
func (n Num) Cmp(m Num) int {
	if n.IsExact() && m.IsExact() {
		if n.wide == nil && m.wide == nil {
			return cmpFractions(n.n, n.d+1, m.n, m.d+1)
		}
		return n.wideOf().cmp(m.wideOf())
	}
	a, b := n.Float(), m.Float()
	if math.Abs(a-b) <= tolerance*max(1, math.Abs(a), math.Abs(b)) {
		return 0
	}
	if a < b {
		return -1
	}
	return 1
}

// Max gives the larger of two numbers, a if they count as equal.
func Max(a, b Num) Num {
	if a.Cmp(b) < 0 {
		return b
	}
	return a
}

// Min gives the smaller of two numbers, a if they count as equal.
func Min(a, b Num) Num {
	if a.Cmp(b) > 0 {
		return b
	}
	return a
}

// signBit gives the sign without tolerance.
func (n Num) signBit() int {
	switch {
	case n.wide != nil:
		return n.wide.num.Sign()
	case n.d == inexactMark:
		switch f := n.Float(); {
		case f < 0:
			return -1
		case f > 0:
			return 1
		}
		return 0
	}
	return sign(n.n)
}

// sign gives the sign of a word.
func sign(n int64) int {
	switch {
	case n < 0:
		return -1
	case n > 0:
		return 1
	}
	return 0
}

func (n Num) exactlyZero() bool { return n.signBit() == 0 }
