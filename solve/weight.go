package solve

import (
	"math"
	"math/big"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve/lp"
)

// weights gives the pull of the earth along the haul line on every part of a
// rig, in fractions of the reference weight.
type weights struct {
	// unit is the reference weight in newtons, or 1 where nothing has a mass.
	unit lp.Num
	// newtons says that unit is in newtons.
	newtons bool
	// fallback is what a load without mass or weight counts, in the unit of unit.
	fallback lp.Num
}

// newWeights reads the unit off the loads of the reference's body.
func newWeights(rig *model.Rig, reference *model.Part) *weights {
	w := &weights{unit: lp.Int(1), fallback: lp.Int(1)}
	for _, p := range rig.Parts {
		if own, ok := statedWeight(p); ok {
			w.newtons = true
			if p.Kind == model.Load {
				w.fallback = own
				break
			}
		}
	}
	if reference == nil {
		return w
	}
	sum := lp.Num{}
	for _, p := range rig.Parts {
		if p.Kind == model.Load && p.Root() == reference.Root() {
			sum = sum.Add(w.plumb(p))
		}
	}
	if sum.Sign() > 0 {
		w.unit = sum
	}
	return w
}

// statedWeight gives the weight of a part in newtons, hanging plumb, if its
// mass or weight is written.
func statedWeight(p *model.Part) (lp.Num, bool) {
	switch v := p.Values; {
	case v.Weight != nil:
		return lp.FromRat(v.Weight.Middle()), true
	case v.Mass != nil:
		g := quantity.Gravity()
		return lp.FromRat(g.Mul(g, v.Mass.Middle())), true
	}
	return lp.Num{}, false
}

// plumb gives the weight of a part in the unit of w.unit, no slope considered.
func (w *weights) plumb(p *model.Part) lp.Num {
	if own, ok := statedWeight(p); ok {
		return own
	}
	if p.Kind.IsWeight() {
		return w.fallback
	}
	return lp.Num{}
}

// of gives the weight of a part along the haul line in fractions of the
// reference weight: on a slope W·(sin α + μ·cos α) while it is hauled up, and
// max(0, W·(sin α − μ·cos α)) while it is held.
func (w *weights) of(p *model.Part, hauling bool) lp.Num {
	own := w.plumb(p).Quo(w.unit)
	if p.Values.Slope == nil || !p.Kind.IsWeight() {
		return own
	}
	sine, cosine := sine(p.Values.Slope.Middle()), cosine(p.Values.Slope.Middle())
	drag := lp.Num{}
	if p.Values.Friction != nil {
		drag = lp.FromRat(p.Values.Friction.Middle()).Mul(cosine)
	}
	if hauling {
		return own.Mul(sine.Add(drag))
	}
	return own.Mul(lp.Max(lp.Num{}, sine.Sub(drag)))
}

// cosine gives the cosine of an angle in degrees: exact at the multiples of 60
// and 90 degrees, the only whole degrees where it is a fraction (Niven 1956).
func cosine(degrees *big.Rat) lp.Num {
	if degrees.IsInt() {
		turn := new(big.Int).Mod(degrees.Num(), big.NewInt(360)).Int64()
		switch turn {
		case 0:
			return lp.Int(1)
		case 60, 300:
			return lp.Frac(1, 2)
		case 90, 270:
			return lp.Num{}
		case 120, 240:
			return lp.Frac(-1, 2)
		case 180:
			return lp.Int(-1)
		}
	}
	return lp.Approx(math.Cos(radians(degrees)))
}

// radians gives an angle in degrees in radians.
func radians(degrees *big.Rat) float64 {
	f, _ := degrees.Float64()
	return f * math.Pi / 180
}

// sine gives the sine of an angle in degrees, exact where cosine is.
func sine(degrees *big.Rat) lp.Num {
	return cosine(new(big.Rat).Sub(big.NewRat(90, 1), degrees))
}

// halfCosine gives the cosine of half an angle in degrees: the factor with which
// both strands of a bend with that included angle pull along its bisector.
func halfCosine(degrees *big.Rat) lp.Num {
	return cosine(new(big.Rat).Mul(degrees, big.NewRat(1, 2)))
}
