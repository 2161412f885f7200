package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// carryKnots gives a motion to knots on slack rope. Forces leave them free, but
// whoever minds that rope keeps it straight: a knot keeps its distance along the
// rope from what the rope is tied to. A knot that would have to keep two different
// ones stays free.
func (c *closing) carryKnots() {
	c.tight = map[*piece]bool{}
	free := map[int]bool{}
	for i, b := range c.bodies {
		if c.rise[i] == nil && !slices.ContainsFunc(b.Parts, func(p *model.Part) bool { return p.Kind != model.Knot }) {
			free[i] = true
		}
	}
	for len(free) > 0 {
		found := c.carried(free)
		for body, carrier := range found {
			delete(free, body)
			if carrier.torn {
				continue
			}
			c.rise[body] = &carrier.rise
			for _, p := range carrier.pieces {
				c.tight[p] = true
			}
		}
		if len(found) == 0 {
			return
		}
	}
}

// carrier is the rope that carries a knot along; torn says that two pieces would
// carry it differently.
type carrier struct {
	rise   lp.Num
	pieces []*piece
	torn   bool
}

// carried gives what carries the free bodies that a single step reaches.
func (c *closing) carried(free map[int]bool) map[int]*carrier {
	found := map[int]*carrier{}
	for _, p := range c.pulled.pieces {
		if p.start.cut != fast || p.end.cut != fast || p.fresh() {
			continue
		}
		body, rise, ok := c.keeping(p.form(), free)
		if !ok {
			continue
		}
		if found[body] == nil {
			found[body] = &carrier{rise: rise}
		}
		found[body].torn = found[body].torn || found[body].rise.Cmp(rise) != 0
		found[body].pieces = append(found[body].pieces, p)
	}
	return found
}

// keeping gives the motion of the one free body of a form that keeps its value; ok
// is false if there is not exactly one, or another motion is unknown.
func (c *closing) keeping(f form, free map[int]bool) (body int, rise lp.Num, ok bool) {
	body = nowhere
	var own, sum lp.Num
	for _, t := range f {
		switch {
		case c.rise[t.body] != nil:
			sum = sum.Add(t.factor.Mul(*c.rise[t.body]))
		case !free[t.body] || body != nowhere:
			return body, rise, false
		default:
			body, own = t.body, t.factor
		}
	}
	if body == nowhere {
		return body, rise, false
	}
	return body, sum.Neg().Quo(own), true
}
