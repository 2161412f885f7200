package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// addLegs shares the load of each focal point among its legs, and adds each
// leg's load to the anchor that it comes from.
func (l *loads) addLegs(list []PartLoad) {
	for _, focal := range l.rig.Parts {
		if focal.Kind != model.Focal {
			continue
		}
		legs := legsOf(l.rig, focal)
		shares, ok := legShares(legs)
		for i, leg := range legs {
			var force Force
			if ok {
				force = shares[i].of(list[focal.Index].Force)
			}
			list[leg.Index].Force = force
			if from := leg.Values.From; from != nil {
				list[from.Index] = withLeg(list[from.Index], force)
			}
		}
	}
}

// withLeg adds a leg's force to what an anchor carries otherwise.
func withLeg(anchor PartLoad, leg Force) PartLoad {
	if !anchor.Known() || !leg.Known() {
		return PartLoad{Part: anchor.Part}
	}
	anchor.AtMost = anchor.AtMost || (anchor.Value.Sign() != 0 && leg.Value.Sign() != 0)
	value, low := anchor.Value.Add(*leg.Value), anchor.Low.Add(*leg.Low)
	sum := Force{Value: &value, Low: &low}
	if anchor.High != nil && leg.High != nil {
		high := anchor.High.Add(*leg.High)
		sum.High = &high
	}
	anchor.Force = sum
	return anchor
}

// legsOf gives the legs of a focal point in file order.
func legsOf(rig *model.Rig, focal *model.Part) []*model.Part {
	var legs []*model.Part
	for _, p := range rig.Parts {
		if p.Kind == model.Leg && p.Values.To == focal {
			legs = append(legs, p)
		}
	}
	return legs
}

// share is the smallest and the largest part of a focal point's load that a leg
// carries, as fractions; limited is false if there is no largest.
type share struct {
	low, high lp.Num
	limited   bool
}

// legShares gives the share of each leg. With two legs at α and β on the two
// sides of the line they are sin β / sin(α+β) and sin α / sin(α+β) (the triangle
// of forces); with more, statics leaves them open and two linear programs a leg
// give the ends. ok is false if the legs cannot balance the load.
func legShares(legs []*model.Part) (shares []share, ok bool) {
	program := &lp.Program{RHS: []lp.Num{lp.Int(1), lp.Int(0)}}
	columns := make([][]lp.Term, len(legs))
	across := slants(legs)
	for i, leg := range legs {
		along := lp.Int(1)
		if leg.Values.Angle != nil && len(legs) > 1 { // a single leg swings into the line
			along = cosine(leg.Values.Angle.Middle())
		}
		signs := []int64{1}
		if leg.Values.Strut {
			signs = append(signs, -1) // it may push
		}
		for _, sign := range signs {
			s := lp.Int(sign)
			column := program.Add(lp.Num{}, lp.Entry{Row: 0, Value: along.Mul(s)}, lp.Entry{Row: 1, Value: across[i].Mul(s)})
			columns[i] = append(columns[i], lp.Term{Column: column, Value: s})
		}
	}
	solved := lp.Solve(program)
	if solved.Status != lp.Optimal {
		return nil, false
	}
	for _, form := range columns {
		low, high, _, limited := solved.Range(form)
		shares = append(shares, share{low, high, limited})
	}
	return shares, true
}

// slants gives how far each leg pulls across the line for a unit of its tension, in
// one unit for all: the sines of their angles, or ±1 where those are of one size,
// which keeps a symmetric anchor exact.
func slants(legs []*model.Part) []lp.Num {
	across, size, alike := make([]lp.Num, len(legs)), lp.Num{}, true
	for i, leg := range legs {
		if leg.Values.Angle == nil || len(legs) == 1 {
			continue
		}
		across[i] = sine(leg.Values.Angle.Middle())
		if across[i].Sign() == 0 {
			continue
		}
		alike = alike && (size.Sign() == 0 || size.Cmp(across[i].Abs()) == 0)
		size = across[i].Abs()
	}
	for i := range across {
		if alike {
			across[i] = lp.Int(int64(across[i].Sign()))
		}
	}
	return across
}

// of gives the share of a force, its range the widest of both.
func (s share) of(f Force) Force {
	if !f.Known() {
		return f
	}
	mean := s.low
	if s.limited {
		mean = s.low.Add(s.high).Mul(lp.Frac(1, 2))
	}
	value, low := f.Value.Mul(mean), f.Low.Mul(s.low)
	part := Force{Value: &value, Low: &low}
	if f.High != nil && s.limited {
		high := f.High.Mul(s.high)
		part.High = &high
	}
	return part
}
