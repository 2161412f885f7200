package lp

import (
	"math"
	"math/big"
)

// Sqrt gives the square root of n: exact if n is the square of a fraction, else
// inexact. It panics if n is negative.
func Sqrt(n Num) Num {
	switch sign := n.Sign(); {
	case sign < 0:
		panic("lp: square root of a negative number")
	case !n.IsExact():
		return inexact(math.Sqrt(max(0, n.Float())))
	case sign == 0:
		return Num{}
	}
	w, out := n.wideOf(), new(wide)
	out.num.Sqrt(&w.num)
	out.den.Sqrt(&w.den)
	if isSquareOf(&w.num, &out.num) && isSquareOf(&w.den, &out.den) {
		return out.narrow()
	}
	root := new(big.Float).SetPrec(128).SetRat(w.rat())
	f, _ := root.Sqrt(root).Float64()
	return inexact(f)
}

func isSquareOf(n, root *big.Int) bool {
	return new(big.Int).Mul(root, root).Cmp(n) == 0
}
