package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Where a part is that belongs to no moving body.
const (
	ground  = -1 // an anchor, an edge, a focal point, or clipped to one
	nowhere = -2 // people on the ground, lines, legs, the part that is lost
)

// layout says which parts move together once a part is lost (nil: none is).
type layout struct {
	rig    *model.Rig
	lost   *model.Part
	at     []int // by Part.Index: the body, ground or nowhere
	bodies []*Body
}

// newLayout joins the parts that are clipped to one another into bodies.
func newLayout(rig *model.Rig, lost *model.Part, w *weights) *layout {
	l := &layout{rig: rig, lost: lost, at: make([]int, len(rig.Parts))}
	byRoot := map[*model.Part]*Body{}
	for _, p := range rig.Parts {
		root := l.root(p)
		l.at[p.Index] = l.place(p, root)
		if l.at[p.Index] != 0 {
			continue
		}
		body := byRoot[root]
		if body == nil {
			body = &Body{Index: len(l.bodies)}
			byRoot[root] = body
			l.bodies = append(l.bodies, body)
		}
		l.at[p.Index] = body.Index
		body.Parts = append(body.Parts, p)
		body.Weight = body.Weight.Add(w.of(p, false))
		if p.Kind.IsWeight() {
			body.Loads = append(body.Loads, p)
		}
	}
	return l
}

// root follows "on" up to the part that hangs on nothing, or on what is lost.
func (l *layout) root(p *model.Part) *model.Part {
	for p.On != nil && p != l.lost && !l.gone(p.On) {
		p = p.On
	}
	return p
}

// gone says whether a part is lost with its ties. Of a lost anchor only the
// fixed point is lost: what is clipped or tied to it stays together.
func (l *layout) gone(p *model.Part) bool {
	return p == l.lost && p.Kind != model.Anchor
}

// place gives ground or nowhere, or 0 for a part of some moving body.
func (l *layout) place(p, root *model.Part) int {
	switch {
	case l.gone(p):
		return nowhere
	case root.Kind.IsFixed():
		if root == l.lost || l.legless(root) {
			return 0
		}
		return ground
	case root.Kind.IsPerson(), root.Kind == model.Leg, root.IsReeved():
		return nowhere
	}
	return 0
}

// legless says whether a focal point has lost every leg that held it.
func (l *layout) legless(focal *model.Part) bool {
	if focal.Kind != model.Focal || l.lost == nil {
		return false
	}
	legs, left := 0, 0
	for _, p := range l.rig.Parts {
		if p.Kind != model.Leg || p.Values.To != focal {
			continue
		}
		legs++
		if p != l.lost && p.Values.From != l.lost {
			left++
		}
	}
	return legs > 0 && left == 0
}

// of gives the body of a part, ground or nowhere.
func (l *layout) of(p *model.Part) int {
	if p == nil {
		return nowhere
	}
	return l.at[p.Index]
}

// term is a body's motion times a factor.
type term struct {
	body   int
	factor lp.Num
}

// form is a sum of terms: how fast a length grows. One term a body, none zero.
type form []term

// plus adds a factor times a body's motion; the ground does not move.
func (f form) plus(body int, factor lp.Num) form {
	if body < 0 || factor.Sign() == 0 {
		return f
	}
	for i := range f {
		if f[i].body != body {
			continue
		}
		f[i].factor = f[i].factor.Add(factor)
		if f[i].factor.Sign() == 0 {
			return append(f[:i], f[i+1:]...)
		}
		return f
	}
	return append(f, term{body, factor})
}

// join adds another form.
func (f form) join(g form) form { return f.joinTimes(g, lp.Int(1)) }

// joinTimes adds a multiple of another form.
func (f form) joinTimes(g form, factor lp.Num) form {
	for _, t := range g {
		f = f.plus(t.body, t.factor.Mul(factor))
	}
	return f
}
