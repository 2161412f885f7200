package resolve

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
)

// clip makes the clips of "on", opens circles, and then drops the clips that
// cannot be made.
func (r *rigWork) clip() {
	for _, p := range r.doubles {
		if p.body.On != nil {
			r.read(p.entry)
			r.find(*p.body.On, nil)
		}
	}
	for _, p := range r.order {
		if p.body == nil || p.body.On == nil {
			continue
		}
		r.read(p.entry)
		if host := r.find(*p.body.On, canCarry); host != nil {
			p.On, host.named = host.Part, true
		} else {
			r.rig.Incomplete = true
		}
	}
	r.openCircles()
	for _, p := range r.order {
		if p.On != nil && !r.clips(p, r.work(p.On)) {
			p.On = nil
			r.rig.Incomplete = true
		}
	}
	r.checkFixed()
	for _, p := range r.order {
		if p.On != nil {
			r.work(p.On).carries++
		}
	}
}

// canCarry says whether a part is one that others are clipped to.
func canCarry(p *partWork) bool {
	return p.Kind != model.Leg && !(p.Kind.IsLine() && !p.saysOn())
}

// saysOn says whether the part's statement has "on", be it right or wrong.
func (p *partWork) saysOn() bool { return p.body != nil && p.body.On != nil || p.lost("on") }

// openCircles reports each circle of clips once, at the first of its parts in
// the file, and undoes that clip.
func (r *rigWork) openCircles() {
	seen := make([]int, len(r.order)) // the walk that met the part, counted from 1
	for walk, start := range r.order {
		p := start.Part
		for p != nil && seen[p.Index] == 0 {
			seen[p.Index] = walk + 1
			p = p.On
		}
		if p != nil && seen[p.Index] == walk+1 {
			r.openCircle(p)
		}
	}
}

// openCircle opens the circle of clips that a part is in.
func (r *rigWork) openCircle(member *model.Part) {
	first := member
	for p := member.On; p != member; p = p.On {
		if p.Index < first.Index {
			first = p
		}
	}
	body := r.work(first).body
	r.read(r.work(first).entry)
	var d *diag.Diagnostic
	if first.On == first {
		d = r.report(clipCircle, body.On.Span, first.Name, "%s is on itself", first.Name)
	} else {
		d = r.report(clipCircle, body.On.Span, first.Name,
			"%s is on %s, which in the end is on %s", first.Name, first.On.Name, first.Name)
	}
	for p, n := first.On, 0; p != first && n < maxRelated; p, n = p.On, n+1 {
		related(d, p.OnPlace, "%s is on %s", p.Name, p.On.Name)
	}
	first.On = nil
	r.rig.Incomplete = true
}

// maxRelated bounds the related places of one finding.
const maxRelated = 20

// clips says whether a part can be clipped to a host, and reports where not.
func (r *rigWork) clips(p, host *partWork) bool {
	on := *p.body.On
	r.read(p.entry)
	switch {
	case p.Kind == model.Leg:
		r.misfit(on, "%s is a leg, which is on nothing; from and to say where it runs", p.Name)
	case host.Kind == model.Leg:
		r.misfit(on, "%s is a leg, and %s cannot be clipped to it; clip it to the focal point", host.Name, p.Name)
	case host.Kind.IsLine() && host.saysOn():
		return true
	case host.Kind.IsLine() && r.reeves[host.Name] != nil:
		r.misfit(on, "%s is reeved, and %s cannot be clipped to it; write %s as a node of its reeving line",
			host.Name, p.Name, p.Name)
	case host.Kind.IsLine(): // reported at the line, which has no reeving line
		return false
	case host.Kind.IsPerson() && !host.saysOn():
		r.report(onPerson, on.Span, p.Name,
			"%s stands on the ground, and %s cannot be clipped to people; write a line: reeve strap: %s / %s",
			host.Name, p.Name, p.Name, host.Name)
	default:
		return true
	}
	return false
}

// checkFixed reports fixed points clipped to what is not fixed.
func (r *rigWork) checkFixed() {
	roots := r.roots()
	for _, p := range r.order {
		if p.On == nil || !p.Kind.IsFixed() || roots[p.Index].Kind.IsFixed() {
			continue
		}
		r.read(p.entry)
		r.misfit(*p.body.On, "%s is a fixed point and cannot be on %s, which is not fixed", p.Name, p.On.Name)
		r.rig.Incomplete = true
		p.On = nil
	}
}

// roots gives the part at the end of each part's chain of clips, by its index;
// each chain is walked once.
func (r *rigWork) roots() []*model.Part {
	roots := make([]*model.Part, len(r.order))
	for _, p := range r.order {
		end := p.Part
		for end.On != nil && roots[end.Index] == nil {
			end = end.On
		}
		if roots[end.Index] != nil {
			end = roots[end.Index]
		}
		for q := p.Part; q != nil && roots[q.Index] == nil; q = q.On {
			roots[q.Index] = end
		}
	}
	return roots
}
