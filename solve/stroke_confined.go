package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Confined is a grip that pulls between a capture and the bend beyond it, both at one fixed
// point: at a reset it can be sent down no farther than to the capture. A capture at a
// fixed point of its own leaves the way between the two.
type Confined struct {
	Rope *model.Rope
	// Grip, Capture and Bend are nodes of Rope.
	Grip, Capture, Bend int
	// Rise is the most that a stroke can raise the load by: the way from capture to bend,
	// less the lengths of capture, grip and bend, at the rate at which the grip nears the
	// bend. Nil if it is unknown.
	Rise *lp.Num
}

// addConfined finds the grips that pull so confined.
func (c *closing) addConfined() []Confined {
	var list []Confined
	for i, g := range c.ph.program.grips {
		node := g.nodes[0]
		if c.pulled.of(g.rope.Nodes[node].Part) < 0 || !holdsShown(c.ph.holds[i]) {
			continue
		}
		step := +1 // away from the held side
		if g.holds == model.LastSide {
			step = -1
		}
		k := Confined{Rope: g.rope, Grip: node, Capture: -1, Bend: -1}
		c.along(&k, node, -step, func(at int) bool {
			n := g.rope.Nodes[at]
			holds := (n.Role == model.Grip || n.Role == model.Capture) && n.Holds == g.holds
			if holds && c.pulled.of(n.Part) == ground && g.rope.RunsOn(at) {
				k.Capture = at
			}
			return k.Capture >= 0
		})
		c.along(&k, node, step, func(at int) bool {
			if !g.rope.Turns(at) || c.pulled.of(g.rope.Nodes[at].Part) != ground {
				return false
			}
			k.Bend = at
			return true
		})
		if k.Capture >= 0 && k.Bend >= 0 && g.rope.Nodes[k.Capture].Part.Root() == g.rope.Nodes[k.Bend].Part.Root() {
			k.Rise = c.riseBetween(k)
			list = append(list, k)
		}
	}
	return list
}

// along walks from a node as long as the rope runs straight on, until found says so of a
// node; the first node at which it does not run on is asked last.
func (c *closing) along(k *Confined, node, step int, found func(at int) bool) {
	for at := node + step; at >= 0 && at < len(k.Rope.Nodes); at += step {
		if !k.Rope.RunsOn(at) {
			found(at)
			return
		}
		if found(at) {
			return
		}
	}
}

// riseBetween gives how far the load rises while the grip goes from capture to bend.
func (c *closing) riseBetween(k Confined) *lp.Num {
	nodes := k.Rope.Nodes
	grip, capture, bend := nodes[k.Grip].Part, nodes[k.Capture].Part, nodes[k.Bend].Part
	low, lowKnown := c.place.of(capture)
	up, upKnown := c.place.of(bend)
	speed, moves := c.motionOf(grip)
	if !lowKnown || !upKnown || !moves || speed.IsZero() {
		return nil
	}
	way := up.Sub(low).Abs()
	for _, p := range []*model.Part{capture, grip, bend} {
		way = way.Sub(lengthOf(p))
	}
	rise := lp.Max(lp.Num{}, way).Mul(c.load).Quo(speed.Abs())
	return &rise
}
