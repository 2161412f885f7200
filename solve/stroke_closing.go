package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// closing collects the pairs of parts that close in on each other during a haul.
type closing struct {
	*system
	ph *Phase
	// load is how far the load rises for one unit hauled.
	load lp.Num
	// rise is the motion of each body; nil where it is unknown, is not along the
	// line, or leaves the body free.
	rise []*lp.Num
	// bites is what closes before the grips that pull hold.
	bites biting
	// tight are the pieces that only the motion of knots keeps from going slack.
	tight map[*piece]bool

	pairs    []*Pair
	byBodies map[[2]int]*Pair
	// unknown are the pairs of which one strand has no length, missing what lacks a
	// position for it.
	unknown map[*Pair]bool
	missing map[*model.Part]bool
	against []Strand
}

func (s *system) newClosing(ph *Phase, load *Motion) *closing {
	c := &closing{system: s, ph: ph, load: load.Rise, rise: make([]*lp.Num, len(s.bodies)),
		byBodies: map[[2]int]*Pair{}, unknown: map[*Pair]bool{}, missing: map[*model.Part]bool{}}
	for i := range ph.Motion {
		if !ph.Motion[i].Free {
			c.rise[i] = &ph.Motion[i].Rise
		}
	}
	c.carryKnots()
	for _, r := range s.rig.Ropes {
		for _, n := range r.Nodes {
			if body := s.pulled.of(n.Part); n.Sideways && body >= 0 {
				c.rise[body] = nil // it moves across the line
			}
		}
	}
	return c
}

// addRope adds the pairs that a rope joins: the two ends of each strand, and the
// load with the first fixed part that its strand leads to past what moves on it.
func (c *closing) addRope(r *model.Rope) {
	for i, stroke := range r.Strokes {
		if stroke == model.Slack {
			continue
		}
		if length, known := c.place.strand(r, i); known && length.Sign() < 0 {
			c.against = append(c.against, Strand{Rope: r, Index: i})
		}
		c.add(r, i, r.Nodes[i].Part, r.Nodes[r.After(i)].Part, stroke)
	}
	for i, n := range r.Nodes {
		if body := c.pulled.of(n.Part); body >= 0 && c.raisable(c.bodies[body]) {
			c.beyond(r, i, +1)
			c.beyond(r, i, -1)
		}
	}
}

// beyond walks from the load at a node along the rope, as long as that runs
// straight on through what moves, and adds the pair with the first fixed part.
func (c *closing) beyond(r *model.Rope, node, step int) {
	leaves := r.Before(node)
	if step > 0 {
		leaves = node
	}
	if leaves < 0 || leaves >= len(r.Strokes) || r.Strokes[leaves] == model.Slack {
		return
	}
	load, at := r.Nodes[node].Part, node
	for range r.Nodes {
		if at += step; r.Loop {
			at = (at + len(r.Nodes)) % len(r.Nodes)
		}
		body := c.pulled.of(r.Nodes[at].Part)
		switch {
		case body == ground:
			c.add(r, leaves, load, r.Nodes[at].Part, r.Strokes[leaves]*model.Stroke(step))
			return
		case body < 0 || body == c.pulled.of(load) || !r.RunsOn(at):
			return
		}
	}
}

// add adds a pair of parts if it closes: stroke says which way the second part lies
// from the first. Two bodies are one pair: that of their parts that meet first.
func (c *closing) add(r *model.Rope, index int, from, to *model.Part, stroke model.Stroke) {
	lower, upper := from, to
	if stroke == model.Down {
		lower, upper = to, from
	}
	low, lowKnown := c.motionOf(lower)
	up, upKnown := c.motionOf(upper)
	if !lowKnown || !upKnown || low.Sub(up).Sign() <= 0 {
		return
	}
	pair := &Pair{Lower: lower, Upper: upper, Rope: r, Index: index, Rate: low.Sub(up).Quo(c.load),
		lower: c.pulled.of(lower), upper: c.pulled.of(upper)}
	c.setGap(pair)
	key := [2]int{pair.lower, pair.upper}
	old := c.byBodies[key]
	if old == nil {
		c.byBodies[key] = pair
		c.pairs = append(c.pairs, pair)
		old = pair
	}
	switch {
	case pair.Gap == nil:
		c.unknown[old] = true
	case old.Gap == nil || pair.apart.Cmp(old.apart) < 0:
		*old = *pair
	}
}

// motionOf gives the motion of a part; known is false for people on the ground,
// loose ends and what is free.
func (c *closing) motionOf(p *model.Part) (rise lp.Num, known bool) {
	switch body := c.pulled.of(p); {
	case body == ground:
		return rise, true
	case body < 0 || c.rise[body] == nil:
		return rise, false
	default:
		return *c.rise[body], true
	}
}

// setGap sets the way between two parts less the lengths of both, or notes which
// position it needs.
func (c *closing) setGap(p *Pair) {
	lower, upper := p.Lower, p.Upper
	low, lowKnown := c.place.of(lower)
	up, upKnown := c.place.of(upper)
	if !lowKnown {
		c.missing[lower.Root()] = true
	}
	if !upKnown {
		c.missing[upper.Root()] = true
	}
	if lowKnown && upKnown {
		p.apart = up.Sub(low).Sub(lengthOf(lower)).Sub(lengthOf(upper))
		gap := lp.Max(lp.Num{}, p.apart)
		p.Gap = &gap
	}
}

// lengthOf gives a part's own length, 0 if it has none.
func lengthOf(p *model.Part) lp.Num {
	if p.Values.Length == nil {
		return lp.Num{}
	}
	return lp.FromRat(p.Values.Length.Middle())
}

// sorted gives the pairs in the order in which they meet.
func (c *closing) sorted(load *Motion) []*Pair {
	for _, p := range c.pairs {
		if c.unknown[p] {
			p.Gap = nil
		}
		if p.Gap != nil {
			p.slip = c.bites.closes(p, load)
			meets := lp.Max(lp.Num{}, p.Gap.Sub(p.slip)).Quo(p.Rate)
			p.Meets = &meets
		}
	}
	slices.SortStableFunc(c.pairs, func(a, b *Pair) int {
		switch {
		case a.Meets != nil && b.Meets != nil:
			return a.Meets.Cmp(*b.Meets)
		case a.Meets != nil:
			return -1
		case b.Meets != nil:
			return 1
		}
		return 0
	})
	return c.pairs
}

// lacking lists the parts without a position that a pair needs, in file order.
func (c *closing) lacking() []*model.Part {
	var list []*model.Part
	for _, p := range c.rig.Parts {
		if c.missing[p] {
			list = append(list, p)
		}
	}
	return list
}
