package quantity

import (
	"math/big"
	"strings"
)

// Dimension says what kind of thing a unit measures.
type Dimension int

const (
	// None is a plain number: counts and coefficients.
	None Dimension = iota
	// Mass is in kilograms.
	Mass
	// Force is in newtons.
	Force
	// Length is in metres.
	Length
	// Angle is in degrees: the one exception to SI, since the angles that keep
	// a rig exact (0, 60, 90, 120, 180) are whole degrees and irrational radians.
	Angle
	// Ratio is written in per cent and kept as a plain fraction: 92 % is 0.92.
	Ratio
)

// Unit is one unit of the notation.
type Unit struct {
	// Word is the unit as written, such as "kN".
	Word string
	// Dimension is what it measures.
	Dimension Dimension
	// SI is the exact factor to the SI unit (to degrees for angles).
	SI *big.Rat
}

// Quantity is a number or a range, in SI units.
type Quantity struct {
	// Low and High are the ends in SI units; equal when no range was written.
	// High may be smaller than Low when the range was written backward.
	Low, High *big.Rat
	// Dimension is that of the unit, None without one.
	Dimension Dimension
	// Unit is the unit's word as written; empty without one.
	Unit string
	// Written is the number, or the range with its "to", without the unit.
	Written string
}

// IsRange says whether two different ends were written.
func (q Quantity) IsRange() bool { return q.Low.Cmp(q.High) != 0 }

// Middle gives the mean of the two ends, the value itself when there is no range.
func (q Quantity) Middle() *big.Rat {
	if !q.IsRange() {
		return q.Low
	}
	sum := new(big.Rat).Add(q.Low, q.High)
	return sum.Quo(sum, big.NewRat(2, 1))
}

// String gives the quantity as the formatter writes it: "0.85 to 0.95", "30 kN".
func (q Quantity) String() string {
	if q.Unit == "" {
		return q.Written
	}
	return q.Written + " " + q.Unit
}

// units is the one table of units. Sources: SI brochure 9th edition for the SI
// units; lb and ft by the international yard and pound agreement of 1959; lbf is
// the pound under standard gravity, 9.80665 m/s².
var units = []Unit{
	{"kg", Mass, fraction("1")},
	{"g", Mass, fraction("1/1000")},
	{"t", Mass, fraction("1000")},
	{"lb", Mass, fraction("45359237/100000000")},
	{"lbf", Force, fraction("4.4482216152605")},
	{"N", Force, fraction("1")},
	{"kN", Force, fraction("1000")},
	{"daN", Force, fraction("10")},
	{"m", Length, fraction("1")},
	{"cm", Length, fraction("1/100")},
	{"mm", Length, fraction("1/1000")},
	{"ft", Length, fraction("0.3048")},
	{"in", Length, fraction("0.0254")},
	{"deg", Angle, fraction("1")},
	{"%", Ratio, fraction("1/100")},
}

// Gravity is standard gravity in m/s², exact (3rd General Conference on
// Weights and Measures, 1901).
func Gravity() *big.Rat { return fraction("9.80665") }

// Units lists every unit of the notation, in the order of the reference.
func Units() []Unit { return append([]Unit(nil), units...) }

// UnitNamed finds a unit by its word, case counting.
func UnitNamed(word string) (Unit, bool) {
	for _, u := range units {
		if u.Word == word {
			return u, true
		}
	}
	return Unit{}, false
}

// New makes a quantity of the digits of one number, or of a range when high is
// not empty, and a unit's word, which may be empty. ok is false if a number or
// the unit is none. A number is [-] digits [. digits]: an exponent could make the
// arithmetic endless.
func New(low, high, unit string) (q Quantity, ok bool) {
	q.Written, q.Unit = low, unit
	if high == "" {
		high = low
	} else {
		q.Written = low + " to " + high
	}
	factor := big.NewRat(1, 1)
	if unit != "" {
		u, known := UnitNamed(unit)
		if !known {
			return q, false
		}
		q.Dimension, factor = u.Dimension, u.SI
	}
	if !isNumber(low) || !isNumber(high) {
		return q, false
	}
	q.Low, q.High = fraction(low), fraction(high)
	q.Low.Mul(q.Low, factor)
	q.High.Mul(q.High, factor)
	return q, true
}

// isNumber says whether a text is a number of the notation.
func isNumber(s string) bool {
	whole, part, point := strings.Cut(strings.TrimPrefix(s, "-"), ".")
	return isDigits(whole) && (!point || isDigits(part))
}

func isDigits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

func fraction(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("quantity: bad factor " + s)
	}
	return r
}
