package solve_test

import (
	"math"

	"fairlead/lang/model"
	"fairlead/solve"
)

// strokes raises a load stroke by stroke in floating point, where no capture gives
// anything back. At each reset the parts move as the ropes let them, with the loads at
// rest, so that the next stroke is as long as it can be; the program for it is that of an
// independent library.
type strokes struct {
	res  *solve.Result
	ph   *solve.Phase
	s    *solve.Stroke
	rate map[*model.Part]float64 // of moving bodies, by the root, where it is known
	up   map[*model.Part]float64 // how far each is from its start
}

func newStrokes(res *solve.Result, ph *solve.Phase) *strokes {
	g := &strokes{res: res, ph: ph, s: ph.Stroke, rate: map[*model.Part]float64{}, up: map[*model.Part]float64{}}
	for _, m := range ph.Motion {
		if !m.Free {
			g.rate[m.Body.Parts[0].Root()] = m.Rise.Mul(ph.Stroke.Travel).Float()
		}
	}
	return g
}

// raise counts the resets that a height takes, and how far it comes; ok is false where
// it takes very many, or the library gives up.
func (g *strokes) raise(height float64) (resets int, top float64, ok bool) {
	rise := g.s.Stage.Meets.Float()
	for {
		top += rise
		for root, rate := range g.rate {
			g.up[root] += rate * rise
		}
		if top >= height-1e-3 {
			return resets, top, true
		}
		if rise, ok = g.reset(); !ok || resets > 50 {
			return resets, top, false
		}
		if rise < 1e-6 {
			return resets, top, true
		}
		resets++
	}
}

// reset moves the parts for the next stroke and gives its rise.
func (g *strokes) reset() (rise float64, ok bool) {
	m := resetProgram(g.res, g.ph, g.s.Stage)
	m.rows, m.limits = m.rows[1:], m.limits[1:] // not the one pair alone
	for j := range m.cost {
		m.cost[j] = 0
	}
	next := len(m.cost)
	m.cost = append(m.cost, -1)
	first := g.s.Stage.Meets.Float()
	m.rows, m.limits = append(m.rows, map[int]float64{next: 1}), append(m.limits, first)
	closes := func(lower, upper *model.Part, room float64) map[int]float64 {
		row := map[int]float64{}
		m.moves(row, lower, 1)
		m.moves(row, upper, -1)
		m.rows, m.limits = append(m.rows, row), append(m.limits, math.Max(0, room))
		return row
	}
	for _, p := range g.s.Pairs {
		if p.Resettable {
			closes(p.Lower, p.Upper, g.gap(p.Lower, p.Upper, true))[next] = p.Rate.Float()
			wide := map[int]float64{} // of equal motions the one that opens most
			m.moves(wide, p.Lower, 1e-3)
			m.moves(wide, p.Upper, -1e-3)
			for j, v := range wide {
				m.cost[j] += v
			}
		}
	}
	g.eachStrand(func(lower, upper *model.Part) {
		least := math.Min(0, g.gap(lower, upper, false))
		closes(lower, upper, g.gap(lower, upper, true)-least)
	})
	_, x, err := m.best()
	if err != nil {
		return 0, false
	}
	for root, column := range m.bodies {
		g.up[root] += x[column] - x[column+1]
	}
	return x[next], true
}

func (g *strokes) eachStrand(do func(lower, upper *model.Part)) {
	for _, r := range g.res.Rig.Ropes {
		for i, stroke := range r.Strokes {
			lower, upper := r.Nodes[i].Part, r.Nodes[r.After(i)].Part
			if stroke == model.Down {
				lower, upper = upper, lower
			}
			if g.known(lower) && g.known(upper) && lower.Root() != upper.Root() {
				do(lower, upper)
			}
		}
	}
}

func (g *strokes) known(part *model.Part) bool {
	_, moves := g.rate[part.Root()]
	return part.Fixed() || moves
}

// gap gives the way between two parts, at the start or now.
func (g *strokes) gap(lower, upper *model.Part, now bool) float64 {
	at := func(p *model.Part) float64 {
		n, _ := g.res.Position(p)
		if now {
			return n.Float() + g.up[p.Root()]
		}
		return n.Float()
	}
	long := 0.0
	for _, p := range []*model.Part{lower, upper} {
		if p.Values.Length != nil {
			f, _ := p.Values.Length.Middle().Float64()
			long += f
		}
	}
	return at(upper) - at(lower) - long
}
