package solve_test

import (
	"math"

	"fairlead/lang/model"
	"fairlead/solve"
)

// strokes raises a load stroke by stroke in floating point. At each reset every part of a
// stage goes back to where it started, or as low as what is below it lets it.
type strokes struct {
	res  *solve.Result
	s    *solve.Stroke
	rate map[*model.Part]float64 // of moving bodies, by the root, where it is known
	// stage are the roots of what is sent down.
	stage map[*model.Part]bool
}

func newStrokes(res *solve.Result, ph *solve.Phase) *strokes {
	g := &strokes{res: res, s: ph.Stroke, rate: map[*model.Part]float64{}, stage: map[*model.Part]bool{}}
	for _, m := range ph.Motion {
		if !m.Free {
			g.rate[m.Body.Parts[0].Root()] = m.Rise.Mul(ph.Stroke.Travel).Float()
		}
	}
	if joint := res.Rig.Part("joint"); joint != nil {
		g.rate[joint] = 1
	}
	for _, p := range ph.Stroke.Pairs {
		for _, part := range []*model.Part{p.Lower, p.Upper} {
			g.stage[part.Root()] = g.stage[part.Root()] || p.Resettable && part.Moves() && !loaded(res, part)
		}
	}
	return g
}

func loaded(res *solve.Result, part *model.Part) bool {
	for _, b := range res.Bodies {
		if b.Parts[0].Root() == part.Root() {
			return len(b.Loads) > 0
		}
	}
	return false
}

// raise counts the resets that a height takes, and how far it comes.
func (g *strokes) raise(height float64) (resets int, top float64) {
	top = g.s.Stage.Meets.Float()
	for top < height-1e-3 {
		start := top - g.s.SetBack.Float()
		then := start + g.next(start)
		if then-top < 1e-7 {
			break
		}
		top = then
		resets++
	}
	return resets, top
}

// next gives the rise of the stroke that begins with the load at a height.
func (g *strokes) next(height float64) float64 {
	up := map[*model.Part]float64{}
	for root, rate := range g.rate {
		if !g.stage[root] {
			up[root] = rate * height
		}
	}
	for range g.res.Bodies {
		for _, r := range g.res.Rig.Ropes {
			for i, stroke := range r.Strokes {
				lower, upper := r.Nodes[i].Part, r.Nodes[r.After(i)].Part
				if stroke == model.Down {
					lower, upper = upper, lower
				}
				if !g.known(lower) || !g.known(upper) || lower.Root() == upper.Root() {
					continue
				}
				least := math.Min(0, g.gap(lower, upper, nil))
				if lack := least - g.gap(lower, upper, up); lack > 1e-9 {
					if !g.stage[upper.Root()] {
						return 0
					}
					up[upper.Root()] += lack
				}
			}
		}
	}
	rise := g.s.Stage.Meets.Float()
	for _, p := range g.s.Pairs {
		if p.Resettable {
			rise = math.Min(rise, math.Min(p.Gap.Float(), g.gap(p.Lower, p.Upper, up))/p.Rate.Float())
		}
	}
	return math.Max(0, rise)
}

func (g *strokes) known(part *model.Part) bool {
	_, moves := g.rate[part.Root()]
	return part.Fixed() || moves
}

func (g *strokes) gap(lower, upper *model.Part, up map[*model.Part]float64) float64 {
	at := func(p *model.Part) float64 {
		n, _ := g.res.Position(p)
		return n.Float() + up[p.Root()]
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
