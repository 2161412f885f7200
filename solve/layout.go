package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Where a part is that belongs to no moving body.
const (
	ground  = -1 // an anchor, an edge, a focal point, or clipped to one
	nowhere = -2 // people on the ground, lines, legs, the part that is lost
)

// layout says which parts move together once something is lost.
type layout struct {
	rig    *model.Rig
	lost   Lost
	at     []int // by Part.Index: the body, ground or nowhere
	bodies []*Body
}

// newLayout joins the parts that are clipped to one another into bodies.
func newLayout(rig *model.Rig, lost Lost, w *weights) *layout {
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
	for p.On != nil && !l.lost.unclips(p) && !l.gone(p.On) {
		p = p.On
	}
	return p
}

// gone says whether a part is lost with its ties.
func (l *layout) gone(p *model.Part) bool { return l.lost.takes(p) }

// place gives ground or nowhere, or 0 for a part of some moving body.
func (l *layout) place(p, root *model.Part) int {
	switch {
	case l.gone(p):
		return nowhere
	case root.Kind.IsFixed():
		if l.stands(root) {
			return ground
		}
		return 0
	case root.Kind.IsPerson(), root.Kind == model.Leg, root.IsReeved():
		return nowhere
	}
	return 0
}

// stands says whether a fixed point is still one. A focal point is while a leg
// holds it that comes from something fixed other than itself; on are the focal
// points that are asked about.
func (l *layout) stands(point *model.Part, on ...*model.Part) bool {
	if point.Kind != model.Focal || l.lost.Kind == LostNothing {
		return !l.lost.unclips(point)
	}
	legs := legsOf(l.rig, point)
	if len(legs) == 0 {
		return !l.lost.unclips(point)
	}
	on = append(on, point)
	for _, leg := range legs {
		from := leg.Values.From
		if l.gone(leg) || from != nil && l.gone(from) {
			continue
		}
		if from == nil {
			return true
		}
		if root := l.root(from); root.Kind.IsFixed() && !slices.Contains(on, root) && l.stands(root, on...) {
			return true
		}
	}
	return false
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
