package seeding

import (
	"fmt"
	"strings"

	"fairlead/lang/model"
	"fairlead/lang/source"
)

// clipLost takes "on PART" away.
func clipLost(b *board) []Seed {
	var list []Seed
	for p, body := range b.inOrder() {
		if body.On == nil || p.Kind.IsPerson() {
			continue
		}
		on := b.onWord(p)
		list = append(list, seed(p.Name+" is clipped to nothing", []*model.Part{p, p.On}, b.cut(on)))
	}
	return list
}

// onWord gives the place of "on PART" in a statement.
func (b *board) onWord(p *model.Part) source.Span {
	s := p.OnPlace.Span
	s.Start = len(strings.TrimRight(b.file.File.Text[:s.Start], " \t")) - len("on")
	return s
}

// clipMoved clips each part to each other one that could carry it.
func clipMoved(b *board) []Seed {
	var list []Seed
	for p, body := range b.inOrder() {
		if body.On == nil || p.Kind.IsPerson() {
			continue
		}
		for _, to := range b.rig.Parts {
			if to == p || to == p.On || to.Root() == p || !carries(to) || to.Fixed() == p.On.Fixed() && to.Kind != p.On.Kind {
				continue
			}
			done := p.Name + " is on " + to.Name + " instead of " + p.On.Name
			list = append(list, seed(done, []*model.Part{p, p.On, to}, replace(p.OnPlace, to.Name)))
		}
	}
	return list
}

// carries says whether people clip something to such a part.
func carries(p *model.Part) bool {
	switch p.Kind {
	case model.Anchor, model.Focal, model.Load, model.Carabiner, model.Ring, model.Hitch, model.Clamp:
		return true
	}
	return false
}

// pulleyToCarabiner puts a locked carabiner where a pulley was, on the same part and as
// strong.
func pulleyToCarabiner(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if p.Kind != model.Pulley {
			continue
		}
		clauses := b.kept(p, "strength", "holds", "sideways", "at", "mass")
		if p.Values.Efficiency != nil {
			clauses = append(clauses, "efficiency 55 %")
		}
		clauses = append(clauses, "locking")
		list = append(list, seed(p.Name+" is a carabiner", []*model.Part{p}, b.rewrite(p, "carabiner", clauses)))
	}
	return list
}

// ropeOnTextile runs the rope over a sling where a pulley was. A capture is no sling.
func ropeOnTextile(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if p.Kind != model.Pulley || p.On == nil || p.Values.Holds || b.holdsSomewhere(p) {
			continue
		}
		clauses := append(b.kept(p, "at"), "strength 22 kN")
		list = append(list, seed(p.Name+" is a sling", []*model.Part{p}, b.rewrite(p, "sling", clauses)))
	}
	return list
}

func (b *board) holdsSomewhere(p *model.Part) bool {
	found := false
	b.eachNode(func(_ *model.Rope, _ int, n model.Node) { found = found || n.Part == p && n.Holds != model.NoSide })
	return found
}

// sheaveMissing gives a block that the rope passes more than once one sheave less.
func sheaveMissing(b *board) []Seed {
	passes := map[*model.Part]int{}
	b.eachNode(func(_ *model.Rope, _ int, n model.Node) {
		if n.Role == model.Bend || n.Role == model.Capture {
			passes[n.Part]++
		}
	})
	var list []Seed
	for p := range b.inOrder() {
		if n := passes[p]; n > 1 && p.Kind == model.Pulley {
			done := fmt.Sprintf("%s has %d sheaves", p.Name, n-1)
			list = append(list, seed(done, []*model.Part{p}, b.set(p, "sheaves", fmt.Sprint(n-1))))
		}
	}
	return list
}

// pulleysSwapped exchanges the efficiencies of two bends of one line, as if each hung in
// the other's place.
func pulleysSwapped(b *board) []Seed {
	var list []Seed
	for _, r := range b.rig.Ropes {
		var bends []*model.Part
		for i, n := range r.Nodes {
			if between(r, i) && n.Part.Values.Efficiency != nil && written(n.Part) {
				bends = append(bends, n.Part)
			}
		}
		for i, p := range bends {
			for _, q := range bends[i+1:] {
				x, y := p.Values.Efficiency, q.Values.Efficiency
				if p == q || x.Low.Cmp(y.Low) == 0 && x.High.Cmp(y.High) == 0 {
					continue
				}
				list = append(list, seed(p.Name+" and "+q.Name+" have changed places", []*model.Part{p, q},
					b.set(p, "efficiency", y.String()), b.set(q, "efficiency", x.String())))
			}
		}
	}
	return list
}

func gateUnlocked(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if at, ok := b.clause(p, "locking"); ok {
			list = append(list, seed(p.Name+" does not lock", []*model.Part{p}, replace(at, "plain")))
		}
	}
	return list
}

func edgeUnpadded(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if edit, ok := b.drop(p, "padded"); ok {
			list = append(list, seed(p.Name+" is not padded", []*model.Part{p}, edit))
		} else if edit, ok := b.drop(p, "efficiency"); ok && p.Kind == model.Edge {
			list = append(list, seed(p.Name+" is no roller but bare", []*model.Part{p}, edit))
		}
	}
	return list
}

// kept gives those clauses of a part, as written, that another kind takes too.
func (b *board) kept(p *model.Part, words ...string) []string {
	var list []string
	for _, w := range words {
		if at, ok := b.clause(p, w); ok {
			list = append(list, at.Text())
		} else if w == "strength" && p.Values.Strength != nil {
			v := p.Values.Strength
			list = append(list, "strength "+in(v.Low, 1, v.Unit, v.Dimension))
		}
	}
	return list
}
