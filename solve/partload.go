package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// touch is one node of one rope at a part.
type touch struct {
	rope *model.Rope
	node int
}

// loads works out what every part carries in one phase.
type loads struct {
	*tensions
	weight  func(*model.Part) lp.Num
	hauler  *model.Part
	touches [][]touch       // by Part.Index
	hung    [][]*model.Part // by Part.Index: what is clipped to it
	groups  [][]int         // by Part.Index: the grip groups that it is of
	summed  []*clip         // by Part.Index, filled as asked
}

// clip is the net force of a part and all that hangs on it, which its clip
// carries to what it is on.
type clip struct {
	along, size linear
	oblique     bool
	// several says that more than one force was added up.
	several bool
}

func newLoads(t *tensions, hauler *model.Part, weight func(*model.Part) lp.Num) *loads {
	n := len(t.rig.Parts)
	l := &loads{tensions: t, hauler: hauler, weight: weight, touches: make([][]touch, n),
		hung: make([][]*model.Part, n), groups: make([][]int, n), summed: make([]*clip, n)}
	for _, p := range t.rig.Parts {
		if p.On != nil {
			l.hung[p.On.Index] = append(l.hung[p.On.Index], p)
		}
	}
	for _, r := range t.rig.Ropes {
		for i, node := range r.Nodes {
			if node.Part != nil && !r.Broken {
				l.touches[node.Part.Index] = append(l.touches[node.Part.Index], touch{r, i})
			}
		}
	}
	for i, g := range t.network.grips {
		for _, node := range g.nodes {
			part := g.rope.Nodes[node].Part
			l.groups[part.Index] = append(l.groups[part.Index], i)
		}
	}
	return l
}

// all gives the load of every part in file order.
func (l *loads) all() []PartLoad {
	list := make([]PartLoad, len(l.rig.Parts))
	for i, p := range l.rig.Parts {
		list[i] = l.of(p)
	}
	l.addLegs(list)
	return list
}

// of gives the load of one part by its kind.
func (l *loads) of(p *model.Part) PartLoad {
	switch {
	case p.Kind == model.Hauler && l.layout.of(p) == nowhere:
		return l.pull(p)
	case p.IsReeved():
		return l.line(p)
	case p.Kind == model.Leg, p.Kind == model.Tender:
		return zeroLoad(p)
	case p.Kind.IsGrip() && len(l.groups[p.Index]) > 0:
		return l.grip(p)
	case p.Root() == p && p.Kind.IsFixed():
		return l.fixedPoint(p)
	}
	return l.through(p)
}

func zeroLoad(p *model.Part) PartLoad {
	zero := lp.Num{}
	return PartLoad{Part: p, Force: Force{Value: &zero, Low: &zero, High: &zero}}
}

// pull is the sum of the tensions on the ends that people hold.
func (l *loads) pull(p *model.Part) PartLoad {
	var sum linear
	for _, t := range l.touches[p.Index] {
		sum.plus(l.contact(t.rope, t.node, true).size, lp.Int(1))
	}
	return PartLoad{Part: p, Force: l.force(sum)}
}

// line is the largest tension anywhere in a line. Its lower end is the largest of
// the strands' lower ends.
func (l *loads) line(p *model.Part) PartLoad {
	load := zeroLoad(p)
	for _, r := range l.rig.Ropes {
		if r.Line != p {
			continue
		}
		for i := range r.Strokes {
			load.Force = larger(load.Force, l.strand(r, i))
		}
	}
	return load
}

// larger gives the larger of two forces, end by end.
func larger(a, b Force) Force {
	value, low := lp.Max(*a.Value, *b.Value), lp.Max(*a.Low, *b.Low)
	f := Force{Value: &value, Low: &low}
	if a.High != nil && b.High != nil {
		high := lp.Max(*a.High, *b.High)
		f.High = &high
	}
	return f
}

// grip is what a hitch or clamp holds, over all its passes.
func (l *loads) grip(p *model.Part) PartLoad {
	var sum linear
	for _, group := range l.groups[p.Index] {
		sum.add(l.program.grip[group], lp.Int(1))
	}
	return PartLoad{Part: p, Force: l.force(sum)}
}

// fixedPoint is the net force of everything tied to, bent round and clipped to a
// fixed part; where the forces are not parallel, the sum of their sizes.
func (l *loads) fixedPoint(p *model.Part) PartLoad {
	c := l.clip(p)
	if !c.oblique {
		return PartLoad{Part: p, Force: l.size(c.along)}
	}
	return PartLoad{Part: p, Force: l.force(c.size), AtMost: c.several}
}

// through is the force that goes through a part: of the forces on it, those up
// and those down balance, with its clip's; the larger sum is what it carries.
func (l *loads) through(p *model.Part) PartLoad {
	var up, down linear
	oblique, forces := false, 0
	add := func(along, size linear, slanted bool) {
		forces++
		if slanted {
			oblique = true
			up.plus(size, lp.Int(1))
			down.plus(size, lp.Int(1))
			return
		}
		if along.at(l.shown).Sign() >= 0 {
			up.plus(along, lp.Int(1))
		} else {
			down.plus(along, lp.Int(-1))
		}
	}
	for _, t := range l.touches[p.Index] {
		c := l.contact(t.rope, t.node, true)
		add(c.along, c.size, c.oblique)
	}
	for _, child := range l.hung[p.Index] {
		c := l.clip(child)
		add(c.along, c.size, c.oblique)
	}
	if w := l.weight(p); w.Sign() != 0 {
		add(linear{constant: w.Neg()}, linear{constant: w}, false)
	}
	if up.at(l.shown).Cmp(down.at(l.shown)) < 0 {
		up = down
	}
	return PartLoad{Part: p, Force: l.force(up), AtMost: oblique && forces > 1}
}

// clip sums up the forces on a part and on all that hangs on it.
func (l *loads) clip(p *model.Part) *clip {
	if c := l.summed[p.Index]; c != nil {
		return c
	}
	c := &clip{}
	l.summed[p.Index] = c
	forces := 0
	for _, t := range l.touches[p.Index] {
		got := l.contact(t.rope, t.node, true)
		c.along.plus(got.along, lp.Int(1))
		c.size.plus(got.size, lp.Int(1))
		c.oblique = c.oblique || got.oblique
		forces++
	}
	for _, child := range l.hung[p.Index] {
		below := l.clip(child)
		c.along.plus(below.along, lp.Int(1))
		c.size.plus(below.size, lp.Int(1))
		c.oblique = c.oblique || below.oblique
		c.several = c.several || below.several
		forces++
	}
	if w := l.weight(p); w.Sign() != 0 {
		c.along.constant = c.along.constant.Sub(w)
		c.size.constant = c.size.constant.Add(w)
		forces++
	}
	c.several = c.several || forces > 1
	return c
}
