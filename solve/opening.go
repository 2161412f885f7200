package solve

import (
	"math/big"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// EvenAngle is the included angle in degrees, 120, at which the resultant of two equal
// tensions is one tension: two even legs carry the whole load each, and a bend carries as
// much as its rope. It is where 2·cos(θ/2) = 1.
var EvenAngle = lp.Int(120)

// Opening is how far the legs of a focal point open.
type Opening struct {
	Focal *model.Part
	// Left and Right are the outermost legs of those that only pull, or of those that may push,
	// and Angle the degrees between them.
	Left, Right *model.Part
	Angle       lp.Num
	// Phase is the one in which the focal point carries most: Load, of which the two legs
	// carry OnLeft and OnRight. Nil if no phase tells; the loads are then unknown.
	Phase                 *Phase
	Load, OnLeft, OnRight PartLoad
}

// Openings gives the opening of each focal point at which two or more legs pull, or may
// push, in file order. One that pulls and one that may push do not count together: the one
// holds the other up.
func (r *Result) Openings() []Opening {
	var list []Opening
	for _, focal := range r.Rig.Parts {
		if focal.Kind != model.Focal {
			continue
		}
		for _, strut := range []bool{false, true} {
			if o, ok := openingOf(r.Rig, focal, strut); ok {
				r.loadOpening(&o)
				list = append(list, o)
			}
		}
	}
	return list
}

func openingOf(rig *model.Rig, focal *model.Part, strut bool) (o Opening, ok bool) {
	o.Focal = focal
	var left, right *big.Rat
	for _, leg := range legsOf(rig, focal) {
		if leg.Values.Strut != strut {
			continue
		}
		angle := new(big.Rat)
		if leg.Values.Angle != nil {
			angle = leg.Values.Angle.Middle()
		}
		if o.Left == nil || angle.Cmp(left) < 0 {
			o.Left, left = leg, angle
		}
		if o.Right == nil || angle.Cmp(right) > 0 {
			o.Right, right = leg, angle
		}
	}
	if o.Left == o.Right {
		return o, false
	}
	o.Angle = lp.FromRat(new(big.Rat).Sub(right, left))
	return o, true
}

// loadOpening finds the phase in which the focal point carries most.
func (r *Result) loadOpening(o *Opening) {
	for _, ph := range r.Bearing() {
		parts, _ := ph.Loads()
		load := parts[o.Focal.Index]
		if load.Known() && load.Most().Sign() > 0 && (o.Phase == nil || load.Most().Cmp(o.Load.Most()) > 0) {
			o.Phase, o.Load = ph, load
			o.OnLeft, o.OnRight = parts[o.Left.Index], parts[o.Right.Index]
		}
	}
}
