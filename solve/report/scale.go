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
// the rig, in fractions of the load.
type scale struct {
	// unit is the word of the unit, empty without a mass.
	unit string
	// whole is the load's weight in that unit.
	whole *big.Float
	// load names what the fractions are of: "the load", or its name where a rig
	// has several.
	load string
}

func scaleOf(res *solve.Result) scale {
	s := scale{load: "the load"}
	if res.Reference != nil && loads(res.Rig) > 1 {
		s.load = res.Reference.Name
	}
	if res.WeightNewtons == nil {
		return s
	}
	unit := forceUnit(res.Rig)
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

// forceUnit gives the unit of force that the rig's "units" names, else kN.
func forceUnit(r *model.Rig) quantity.Unit {
	for _, word := range r.Units {
		if u, ok := quantity.UnitNamed(word); ok && u.Dimension == quantity.Force {
			return u
		}
	}
	u, _ := quantity.UnitNamed("kN")
	return u
}

// weighs says whether forces can be given in a unit.
func (s scale) weighs() bool { return s.unit != "" }

// figure gives a force without its unit, for the line under the strokes.
func (s scale) figure(n lp.Num) string {
	if s.weighs() {
		return s.measured(n)
	}
	return number(n)
}

// measured gives a force in the unit, without its word.
func (s scale) measured(n lp.Num) string {
	return decimal(new(big.Float).Mul(float(n), s.whole))
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
	if !f.Ranges() {
		return span(f, s.say)
	}
	unit := "of " + s.load
	if s.weighs() {
		unit = s.unit
	}
	return span(f, s.figure) + " " + unit
}

// share gives a force as a part of the load in words: "1/3 of the load".
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
	return number(n) + " of " + s.load
}

func (s scale) all() string {
	if s.load == "the load" {
		return "the whole load"
	}
	return "all of " + s.load
}
