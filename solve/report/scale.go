package report

import (
	"math/big"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// scale turns fractions of the load's weight into the forces that a rig's
// reader wants: in the unit that "units" names, else in kN; without any mass in
// the rig, in fractions of the load. It turns metres into the unit of length in
// the same way.
type scale struct {
	// unit is the word of the unit, empty without a mass.
	unit string
	// whole is the load's weight in that unit.
	whole *big.Float
	// load names what the fractions are of: "the load", or its name where a rig
	// has several.
	load string
	// length is the unit of length.
	length quantity.Unit
	// rough says that the figures come from measured ones, so that a fraction would
	// promise too much.
	rough bool
}

func scaleOf(res *solve.Result) scale {
	s := scale{load: "the load", length: unitOf(res.Rig, quantity.Length, "m")}
	if res.Reference != nil && loads(res.Rig) > 1 {
		s.load = res.Reference.Name
	}
	if res.WeightNewtons == nil {
		return s
	}
	unit := unitOf(res.Rig, quantity.Force, "kN")
	s.unit = unit.Word
	s.whole = new(big.Float).Quo(float(*res.WeightNewtons), new(big.Float).SetRat(unit.SI))
	return s
}

func loads(r *model.Rig) int {
	n := 0
	for _, p := range r.Parts {
		if p.Kind == model.Load {
			n++
		}
	}
	return n
}

// unitOf gives the unit of a dimension that the rig's "units" names, else the
// usual one.
func unitOf(r *model.Rig, of quantity.Dimension, usual string) quantity.Unit {
	for _, word := range r.Units {
		if u, ok := quantity.UnitNamed(word); ok && u.Dimension == of {
			return u
		}
	}
	u, _ := quantity.UnitNamed(usual)
	return u
}

// in gives the scale for the forces of a phase: rough where friction is in them.
func (s scale) in(p *solve.Phase) scale {
	s.rough = rubbed(p)
	return s
}

// weighs says whether forces can be given in a unit.
func (s scale) weighs() bool { return s.unit != "" }

// figure gives a force without its unit, for the line under the strokes.
func (s scale) figure(n lp.Num) string {
	switch {
	case s.weighs():
		return s.measured(n)
	case s.rough:
		return decimal(float(n))
	}
	return number(n)
}

// measured gives a force in the unit, without its word.
func (s scale) measured(n lp.Num) string {
	return decimal(new(big.Float).Mul(float(n), s.whole))
}

// pure gives a fraction of the load without words.
func (s scale) pure(n lp.Num) string {
	if s.rough {
		return rounded(n)
	}
	return number(n)
}

// say gives a force in words: "0.588 kN", or "1/3 of the load".
func (s scale) say(n lp.Num) string {
	switch {
	case n.IsZero():
		return "nothing"
	case s.weighs():
		return s.measured(n) + " " + s.unit
	}
	return s.share(n)
}

// sayForce gives a force that may be unknown or open in words.
func (s scale) sayForce(f solve.Force) string {
	switch {
	case !f.Ranges():
		return span(f, s.say)
	case f.High == nil:
		return s.say(*f.Value) + " or more"
	case s.weighs():
		return span(f, s.figure) + " " + s.unit
	}
	return span(f, s.figure) + " of " + s.load
}

// share gives a force as a part of the load in words: "1/3 of the load", "3 times the load".
func (s scale) share(n lp.Num) string {
	whole := n.IsExact() && n.Rat().IsInt()
	switch {
	case n.IsZero():
		return "nothing"
	case whole && n.Cmp(lp.Int(1)) == 0:
		return s.all()
	case whole:
		return number(n) + " times " + s.load
	}
	return s.pure(n) + " of " + s.load
}

// shareForce gives a force that may be open as a part of the load in words.
func (s scale) shareForce(f solve.Force) string {
	if f.Ranges() {
		return span(f, s.pure) + " of " + s.load
	}
	return s.share(*f.Value)
}

func (s scale) all() string {
	if s.load == "the load" {
		return "the whole load"
	}
	return "all of " + s.load
}

// metres gives a length in the rig's unit: "5 m".
func (s scale) metres(n lp.Num) string {
	return short(decimal(new(big.Float).Quo(float(n), new(big.Float).SetRat(s.length.SI)))) + " " + s.length.Word
}

// newtons gives a force of so many newtons: "30 kN".
func (s scale) newtons(n lp.Num) string {
	unit, _ := quantity.UnitNamed(s.unit)
	return short(decimal(new(big.Float).Quo(float(n), new(big.Float).SetRat(unit.SI)))) + " " + s.unit
}
