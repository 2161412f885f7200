package report

import (
	"math/big"
	"strconv"
	"strings"

	"fairlead/solve"
	"fairlead/solve/lp"
)

// digits is how many digits of a measured figure are printed: no scale on a
// rope shows more.
const digits = 3

// longest is how many characters a fraction may take before it is printed as a
// rounded decimal.
const longest = 7

// number gives a pure number as it is read aloud: a whole number, a short
// fraction, else a decimal. "≈" stands before what is rounded or not exact.
func number(n lp.Num) string {
	if n.IsZero() {
		return "0"
	}
	if exact := n.Rat(); exact != nil {
		if s := exact.RatString(); len(s) <= longest || exact.IsInt() && len(s) <= 15 {
			return s
		}
	}
	return "≈" + short(decimal(float(n)))
}

// ratio gives an advantage as "3 : 1", "5 : 2" or "≈ 2.73 : 1".
func ratio(n lp.Num) string {
	if exact := n.Rat(); exact != nil && len(exact.RatString()) <= 15 {
		return exact.Num().String() + " : " + exact.Denom().String()
	}
	return "≈ " + short(decimal(float(n))) + " : 1"
}

// rounded gives a figure that rests on measured ones, such as an advantage with
// friction: three digits at most, and no sign that it is not exact.
func rounded(n lp.Num) string { return short(decimal(float(n))) }

// float gives the number without the limits of float64.
func float(n lp.Num) *big.Float {
	if exact := n.Rat(); exact != nil {
		return new(big.Float).SetPrec(128).SetRat(exact)
	}
	return big.NewFloat(n.Float())
}

// decimal gives a number with three significant digits and, below 10^15, every
// digit before the point; what is smaller than 10^-6 has an exponent.
func decimal(f *big.Float) string {
	if f.Sign() == 0 {
		return "0"
	}
	size := magnitude(f)
	if size > 15 || size < -5 {
		return f.Text('g', digits)
	}
	return f.Text('f', max(0, digits-size))
}

// short leaves out zeros that say nothing: "1.5" of "1.50".
func short(decimal string) string {
	if !strings.Contains(decimal, ".") {
		return decimal
	}
	return strings.TrimRight(strings.TrimRight(decimal, "0"), ".")
}

// magnitude gives the number of digits before the decimal point once the
// number is rounded: 1 for 9.99, 2 for 9.999, 0 for 0.5, -1 for 0.05.
func magnitude(f *big.Float) int {
	_, power, _ := strings.Cut(f.Text('e', digits-1), "e")
	exponent, _ := strconv.Atoi(power)
	return exponent + 1
}

// times gives a factor as it is read aloud, rounded down so that it never promises
// more than there is: "5.7", from 10 on "17".
func times(n lp.Num) string {
	f, steps := float(n), int64(10)
	if f.Cmp(big.NewFloat(10)) >= 0 {
		steps = 1
	}
	// A float's noise must not turn 3 into 2.9.
	f.Mul(f, big.NewFloat(float64(steps)*(1+1e-12)))
	whole, _ := f.Int(nil)
	return short(new(big.Rat).SetFrac(whole, big.NewInt(steps)).FloatString(1))
}

// span gives a force that statics or friction leaves open as "0.5 (0 to 1)", with
// words for an upper end that does not exist; write gives one figure.
func span(f solve.Force, write func(lp.Num) string) string {
	switch {
	case !f.Known():
		return "unknown"
	case !f.Ranges():
		return write(*f.Value)
	case f.High == nil:
		return write(*f.Value) + " or more"
	}
	return write(*f.Value) + " (" + write(*f.Low) + " to " + write(*f.High) + ")"
}
