package lint

import (
	"math/big"
	"strconv"
	"strings"
	"unicode/utf8"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// NameOf gives the name of a part as a message writes it.
func NameOf(p *model.Part) string { return Clipped(p.Name) }

// longestName is how many letters of a name a message repeats.
const longestName = 60

// Clipped shortens a very long name so that a message stays a sentence.
func Clipped(name string) string {
	if utf8.RuneCountInString(name) <= longestName {
		return name
	}
	return string([]rune(name)[:longestName-1]) + "…"
}

// StrandName gives a strand as it is written: "litter / top".
func StrandName(r *model.Rope, stroke int) string {
	return Clipped(r.Nodes[stroke].Name()) + " " + r.Strokes[stroke].String() + " " +
		Clipped(r.Nodes[r.After(stroke)].Name())
}

// List joins names as a sentence does: "a, b and c".
func List(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}

// BodyName names a body by what a rigger looks at: its loads, else its first part.
func BodyName(b *solve.Body) string {
	if len(b.Loads) == 0 {
		return NameOf(b.Parts[0])
	}
	names := make([]string, len(b.Loads))
	for i, p := range b.Loads {
		names[i] = NameOf(p)
	}
	return List(names)
}

// Bodies names several bodies.
func Bodies(list []*solve.Body) string {
	names := make([]string, len(list))
	for i, b := range list {
		names[i] = BodyName(b)
	}
	return List(names)
}

// Several says whether a verb after Bodies stands in the plural.
func Several(list []*solve.Body) bool {
	return len(list) > 1 || len(list) == 1 && len(list[0].Loads) > 1
}

// Ratio gives an advantage as a message writes it: "3:1", "5:2", "≈2.73:1".
func Ratio(n lp.Num) string {
	if exact := n.Rat(); exact != nil && len(exact.RatString()) <= 15 {
		return exact.Num().String() + ":" + exact.Denom().String()
	}
	return "≈" + decimal(float(n)) + ":1"
}

// Times gives a multiple: "3 times", "1.41 times", "twice".
func Times(n lp.Num) string {
	if n.IsExact() && n.Cmp(lp.Int(2)) == 0 {
		return "twice"
	}
	return decimal(float(n)) + " times"
}

// Force gives a force of the rig, in fractions of the reference weight, in words:
// "0.588 kN", in the rig's unit, or "1/3 of the load" where no mass is written.
func (p *Pass) Force(n lp.Num) string { return forceOf(p.Result, n) }

func forceOf(res *solve.Result, n lp.Num) string {
	if res.WeightNewtons == nil {
		return share(res, n)
	}
	return newtons(res, n.Mul(*res.WeightNewtons))
}

// Newtons gives a force in newtons in words, in the rig's unit: "0.27 kN".
func (p *Pass) Newtons(n lp.Num) string { return measured(n, forceUnit(p.Rig)) }

// newtons gives a force in newtons in the rig's unit.
func newtons(res *solve.Result, n lp.Num) string { return measured(n, forceUnit(res.Rig)) }

// NewtonsFrom gives a force in newtons in the rig's unit, with as many digits as it takes
// to tell it from another.
func (p *Pass) NewtonsFrom(n, other lp.Num) string {
	return inUnit(n, forceUnit(p.Rig).Word, other)
}

// Between gives a force in newtons that lies between two: "1.1 to 1.3 kN".
func (p *Pass) Between(low, high lp.Num) string {
	least, most := p.Newtons(low), p.Newtons(high)
	if least == most {
		return most
	}
	return strings.TrimSuffix(least, " "+forceUnit(p.Rig).Word) + " to " + most
}

// From gives a plain number with as many digits as it takes to tell it from another.
func From(n, other lp.Num) string { return inUnit(n, "", other) }

// share gives a force as a part of the load's weight.
func share(res *solve.Result, n lp.Num) string {
	load := "the load"
	loads := 0
	for _, p := range res.Rig.Parts {
		if p.Kind == model.Load {
			loads++
		}
	}
	if loads > 1 && res.Reference != nil {
		load = NameOf(res.Reference)
	}
	exact := n.Rat()
	switch {
	case exact == nil || len(exact.RatString()) > 7:
		return "≈" + decimal(float(n)) + " of " + load
	case exact.Cmp(big.NewRat(1, 1)) == 0:
		return "the weight of " + load
	case exact.IsInt() && exact.Sign() != 0:
		return exact.RatString() + " times " + load
	}
	return exact.RatString() + " of " + load
}

// forceUnit gives the unit of force that the rig's "units" names, else kN.
func forceUnit(r *model.Rig) quantity.Unit { return unitOf(r, quantity.Force, "kN") }

// unitOf gives the unit of a dimension that the rig's "units" names, else the usual one.
func unitOf(r *model.Rig, of quantity.Dimension, usual string) quantity.Unit {
	for _, word := range r.Units {
		if u, ok := quantity.UnitNamed(word); ok && u.Dimension == of {
			return u
		}
	}
	u, _ := quantity.UnitNamed(usual)
	return u
}

// Length gives metres in words, in the rig's unit of length: "3.5 m".
func (p *Pass) Length(metres lp.Num) string { return length(p.Rig, metres) }

// LengthBeside gives metres as Length does, with as many digits as it takes to tell them
// from another length.
func (p *Pass) LengthBeside(metres, other lp.Num) string {
	unit := unitOf(p.Rig, quantity.Length, "m")
	return apart(metres, other, unit.SI) + " " + unit.Word
}

// Percent gives a part of a whole in words: "42 %".
func Percent(n lp.Num) string {
	return decimal(new(big.Float).Mul(float(n), big.NewFloat(100))) + " %"
}

// length gives metres in the rig's unit of length.
func length(r *model.Rig, metres lp.Num) string {
	return measured(metres, unitOf(r, quantity.Length, "m"))
}

// measured gives a figure in SI units in a unit, for a message without a claim.
func measured(n lp.Num, unit quantity.Unit) string {
	return decimal(new(big.Float).Quo(float(n), new(big.Float).SetRat(unit.SI))) + " " + unit.Word
}

// inUnit gives a figure in SI units in a unit, "3 kN", with as many digits as it
// takes to tell it from the claimed one.
func inUnit(n lp.Num, unit string, claimed lp.Num) string {
	factor := big.NewRat(1, 1)
	if u, ok := quantity.UnitNamed(unit); ok {
		factor = u.SI
	}
	return strings.TrimSpace(apart(n, claimed, factor) + " " + unit)
}

// most is how many digits of a figure are printed at the most.
const most = 12

// apart gives a figure in a unit of the given size.
func apart(n, claimed lp.Num, unit *big.Rat) string {
	scaled := func(n lp.Num) *big.Float { return new(big.Float).Quo(float(n), new(big.Float).SetRat(unit)) }
	exact := rounded(scaled(n), most)
	for d := digits; d < most; d++ {
		s := rounded(scaled(n), d)
		if s == exact || n.Cmp(claimed) != 0 && s != rounded(scaled(claimed), d) {
			return s
		}
	}
	return exact
}

// float gives the number without the limits of float64.
func float(n lp.Num) *big.Float {
	if exact := n.Rat(); exact != nil {
		return new(big.Float).SetPrec(128).SetRat(exact)
	}
	return big.NewFloat(n.Float())
}

// digits is how many digits of a figure are printed: no scale on a rope shows more.
const digits = 3

// decimal gives a number with three significant digits and every digit before
// the point, up to 10^15.
func decimal(f *big.Float) string { return rounded(f, digits) }

// rounded gives a number with some significant digits and every digit before the
// point, up to 10^15.
func rounded(f *big.Float, digits int) string {
	if f.Sign() == 0 {
		return "0"
	}
	_, power, _ := strings.Cut(f.Text('e', digits-1), "e")
	exponent, _ := strconv.Atoi(power)
	if exponent > 15 || exponent < -15 {
		return f.Text('g', digits)
	}
	s := f.Text('f', max(0, digits-1-exponent))
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// Number gives a plain number as it is read aloud: "3", "1/2", "≈0.866".
func Number(n lp.Num) string {
	if exact := n.Rat(); exact != nil && len(exact.RatString()) <= 7 {
		return exact.RatString()
	}
	return "≈" + decimal(float(n))
}

// NamesIn lists the names of the loads of bodies, then of their other parts: what
// "at PART" may say of a finding about them.
func NamesIn(list []*solve.Body) []string {
	var loads, others []string
	for _, b := range list {
		for _, p := range b.Parts {
			if p.Kind.IsWeight() {
				loads = append(loads, p.Name)
			} else {
				others = append(others, p.Name)
			}
		}
	}
	return append(loads, others...)
}
