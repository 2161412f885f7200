package lint

import (
	"math/big"
	"strings"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/resolve"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// Gain gives by how much an actual advantage is above another one, as a fraction of
// that. Of two ranges the ends are compared, each with its like, and the smallest gain
// counts: what else is a range in the rig is then the same on both sides.
func Gain(from, to solve.Force) lp.Num {
	over := func(a, b *lp.Num) lp.Num { return b.Quo(*a).Sub(lp.Int(1)) }
	return lp.Min(over(from.Value, to.Value), lp.Min(over(from.Low, to.Low), over(from.High, to.High)))
}

// UsualGain is Gain by the middle of both.
func UsualGain(from, to solve.Force) lp.Num { return to.Value.Quo(*from.Value).Sub(lp.Int(1)) }

// More says how much a gain is over an advantage: "8.12 % more", "at least 24.2 % more"
// where ranges leave it open.
func More(from, to solve.Force) string {
	least := ""
	if from.Ranges() || to.Ranges() {
		least = "at least "
	}
	return least + PerCent(Gain(from, to)) + " more"
}

// Advantage gives an actual advantage as a message writes it: "2.71:1", "2.57:1 to
// 2.85:1".
func Advantage(f solve.Force) string {
	return between(*f.Low, *f.High, func(n lp.Num) string { return decimal(float(n)) + ":1" })
}

// Multiple gives a factor as a message writes it, with its range: "1.52 times", "1.52 to
// 1.87 times".
func Multiple(f solve.Force) string {
	return between(*f.Low, *f.High, func(n lp.Num) string { return decimal(float(n)) }) + " times"
}

// PerCent gives a fraction as a message writes it: "45.5 %".
func PerCent(n lp.Num) string { return decimal(float(n.Mul(lp.Int(100)))) + " %" }

// Degrees gives an angle as a message writes it: "45 deg".
func Degrees(n lp.Num) string { return decimal(float(n)) + " deg" }

// InUnit gives a range in SI units in a unit: "6.6 to 8.8 mm".
func InUnit(low, high lp.Num, unit string) string {
	factor := big.NewRat(1, 1)
	if u, known := quantity.UnitNamed(unit); known {
		factor = u.SI
	}
	say := func(n lp.Num) string { return decimal(new(big.Float).Quo(float(n), new(big.Float).SetRat(factor))) }
	return strings.TrimSpace(between(low, high, say) + " " + unit)
}

// Each gives a ratio of two lengths in the rig's unit: "2 m for each m".
func (p *Pass) Each(n lp.Num) string {
	unit := unitOf(p.Rig, quantity.Length, "m").Word
	return decimal(float(n)) + " " + unit + " for each " + unit
}

// Stocked gives a model of the built-in stock; nil if there is none of that name.
func Stocked(kind model.Kind, name string) *model.Stock {
	for _, s := range resolve.Catalogue() {
		if s.Kind.Text == string(kind) && s.Model.Text == name {
			return s
		}
	}
	return nil
}
