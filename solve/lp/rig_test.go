package lp

import "math/rand/v2"

// randomRig gives the tension program of a rig of random ropes: each runs over
// bodies and fixed points, with grips that hold either way and knots; several
// bodies have weight, a few ropes are hauled. Whether it holds, jams or falls is
// up to chance.
func randomRig(random *rand.Rand, bodies, ropes, nodes int) *Program {
	p := &Program{}
	for range bodies {
		weight := int64(0)
		if random.IntN(4) == 0 {
			weight = random.Int64N(3) + 1
		}
		p.Row(Int(weight))
	}
	for range ropes {
		p.randomRope(random, bodies, nodes)
	}
	return p
}

func (p *Program) randomRope(random *rand.Rand, bodies, nodes int) {
	const fixed = -1
	node := func() int {
		if random.IntN(3) == 0 {
			return fixed
		}
		return random.IntN(bodies)
	}
	piece := []Entry(nil)
	at, up := node(), random.IntN(2) == 0
	for k := range nodes {
		to := node()
		stroke := int64(1)
		if !up {
			stroke = -1
		}
		// The piece pulls the node it leaves along the stroke, the one it reaches
		// against it: what it lifts counts positive.
		if at != fixed {
			piece = append(piece, Entry{at, Int(stroke)})
		}
		if to != fixed {
			piece = append(piece, Entry{to, Int(-stroke)})
		}
		at = to
		switch random.IntN(6) {
		case 0, 1: // straight through a grip
			if k < nodes-1 {
				piece = p.randomGrip(random, piece)
			}
		default:
			up = !up
		}
	}
	cost := int64(0)
	if random.IntN(2) == 0 {
		cost = 1
	}
	p.Add(Int(cost), piece...)
}

// randomGrip ends a piece at a grip and gives the start of the next.
func (p *Program) randomGrip(random *rand.Rand, piece []Entry) []Entry {
	grip := p.Row(Int(0))
	p.Add(Num{}, append(piece, Entry{grip, Int(1)})...)
	holds := int64(random.IntN(3) - 1)
	if holds != 0 {
		p.Add(Num{}, Entry{grip, Int(-holds)})
	} else {
		p.Add(Num{}, Entry{grip, Int(-1)})
		p.Add(Num{}, Entry{grip, Int(1)})
	}
	return []Entry{{grip, Int(-1)}}
}
