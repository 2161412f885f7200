package solve

import (
	"math"
	"math/big"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve/lp"
)

// level says which end of a range of efficiency or friction to take.
type level int

const (
	worst   level = iota // the most friction
	typical              // the middle
	best                 // the least friction
)

// efficiency takes an efficiency, which is worst when it is low.
func (l level) efficiency(q *quantity.Quantity) *big.Rat {
	return [...]*big.Rat{q.Low, q.Middle(), q.High}[l]
}

// friction takes a friction coefficient, which is worst when it is high.
func (l level) friction(q *quantity.Quantity) *big.Rat {
	return [...]*big.Rat{q.High, q.Middle(), q.Low}[l]
}

// Hardware is what a bend is made of, as far as friction goes.
type Hardware struct {
	// Kind says whether it rolls (a pulley) or rope slides over it.
	Kind model.Kind
	// Efficiency is that of a full turn; nil if it is not known.
	Efficiency *quantity.Quantity
}

// HardwareOf gives what a part is made of.
func HardwareOf(p *model.Part) Hardware { return Hardware{p.Kind, p.Values.Efficiency} }

// efficiency gives that of rope that turns by so many degrees, half being the cosine
// of half the included angle.
func (h Hardware) efficiency(wrap *big.Rat, half lp.Num, at level) (eta lp.Num, known bool) {
	switch {
	case wrap.Sign() == 0:
		return lp.Int(1), true
	case h.Efficiency == nil:
		return eta, false
	case h.Kind == model.Pulley:
		return rolling(lp.FromRat(at.efficiency(h.Efficiency)), half), true
	}
	return sliding(at.efficiency(h.Efficiency), wrap), true
}

// bendEfficiency gives the tension that is left past a bend over the tension that
// comes, while the rope runs; known is false if neither clause nor model says.
//
// A rolling bend (pulley) has its efficiency for a full turn; its loss scales with
// the resultant: 1/η_θ = 1 + (1/η − 1)·cos(θ/2). A sliding bend follows the capstan
// law, T₂/T₁ = e^(μ·wrap): η_θ = η^((180° − θ)/180°), or from a coefficient of
// friction e^(−μ·wrap). Whole turns add 360° each to the wrap. A device may have an
// efficiency of its own for lowering.
func bendEfficiency(r *model.Rope, node int, at level, lowering bool) (eta lp.Num, known bool) {
	n := r.Nodes[node]
	if lowering && n.Lowering != nil {
		n.Efficiency, n.Friction = n.Lowering, nil
	}
	wrap := wrapDegrees(r, node)
	slides := wrap.Sign() != 0 && n.Part.Kind != model.Pulley
	switch line := r.Line.Values.Friction; {
	case slides && n.Friction != nil:
		return byFriction(at.friction(n.Friction), wrap), true
	case slides && n.Efficiency == nil && line != nil:
		return byFriction(at.friction(line), wrap), true
	}
	return Hardware{n.Part.Kind, n.Efficiency}.efficiency(wrap, included(r, node), at)
}

// Growth gives the tension past a bend over the tension before it while rope runs over
// it, 1/η: Low with its friction at the least, High at the most. It is unknown if
// neither clause nor model says.
func Growth(r *model.Rope, node int) Force {
	usual, known := bendEfficiency(r, node, typical, false)
	if !known {
		return Force{}
	}
	least, _ := bendEfficiency(r, node, best, false)
	most, _ := bendEfficiency(r, node, worst, false)
	value, low, high := usual.Inv(), least.Inv(), most.Inv()
	return Force{Value: &value, Low: &low, High: &high}
}

// wrapDegrees is how far the rope turns round a bend: 180° less the included
// angle, and 360° for each whole turn.
func wrapDegrees(r *model.Rope, node int) *big.Rat {
	n := r.Nodes[node]
	wrap := new(big.Rat)
	switch {
	case n.Angle != nil:
		wrap.Sub(big.NewRat(180, 1), n.Angle.Middle())
	case r.Turns(node):
		wrap.SetInt64(180)
	}
	if n.Turns != nil {
		wrap.Add(wrap, new(big.Rat).Mul(big.NewRat(360, 1), n.Turns.Middle()))
	}
	return wrap
}

func rolling(eta, half lp.Num) lp.Num {
	return lp.Int(1).Add(eta.Inv().Sub(lp.Int(1)).Mul(half)).Inv()
}

// sliding is exact where the wrap is a whole number of half turns.
func sliding(eta *big.Rat, wrap *big.Rat) lp.Num {
	halves := new(big.Rat).Quo(wrap, big.NewRat(180, 1))
	if halves.IsInt() && halves.Num().IsInt64() && halves.Num().Int64() <= 16 {
		power := lp.Int(1)
		for range halves.Num().Int64() {
			power = power.Mul(lp.FromRat(eta))
		}
		return power
	}
	base, _ := eta.Float64()
	exponent, _ := halves.Float64()
	return lp.Approx(math.Pow(base, exponent))
}

func byFriction(mu, wrap *big.Rat) lp.Num {
	if mu.Sign() == 0 {
		return lp.Int(1)
	}
	m, _ := mu.Float64()
	degrees, _ := wrap.Float64()
	return lp.Approx(math.Exp(-m * degrees * math.Pi / 180))
}
