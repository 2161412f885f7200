package lp

// proven says whether the vertex proves its status. It asks everything anew from
// the program, so that it does not matter how the basis was found.
func (v *vertex[F]) proven(p plan) bool {
	for place, j := range v.basic {
		if s := v.values[place].Sign(); s < 0 || s > 0 && v.mustVanish(j) {
			return false
		}
	}
	switch v.status {
	case Unbounded:
		return v.rayProven(p.entering)
	case Infeasible:
		if dot(v.y, v.rhs).Sign() >= 0 {
			return false
		}
		for i, b := range v.rhs {
			if s := b.Sign(); s != 0 && v.y[i].Mul(v.unit(i)).Add(one[F]()).Sign() < 0 {
				return false
			}
		}
	}
	for _, r := range v.reduced {
		if r.Sign() < 0 {
			return false
		}
	}
	return true
}

// rayProven says whether the ray of column j goes up for ever.
func (v *vertex[F]) rayProven(j int) bool {
	for _, r := range v.ray {
		if r.Sign() < 0 {
			return false
		}
	}
	meets := make([]F, len(v.rhs))
	for k, r := range v.ray {
		if r.Sign() == 0 {
			continue
		}
		for _, c := range v.columns[k] {
			meets[c.at] = meets[c.at].mulSub(c.value, r.Neg())
		}
	}
	for _, m := range meets {
		if m.Sign() != 0 {
			return false
		}
	}
	return v.reduced[j].Sign() < 0
}
