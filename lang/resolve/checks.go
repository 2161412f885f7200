package resolve

import (
	"slices"

	"fairlead/lang/model"
)

// checkParts reports the lines without a reeving line and the parts that have
// nothing to do.
func (r *rigWork) checkParts() {
	r.checkJoins()
	for _, p := range r.order {
		if p.needsReeve() {
			r.checkReeved(p)
		}
	}
	if r.rig.Incomplete || r.spoilt {
		return // what is wrong may be where the part is used
	}
	for _, p := range r.order {
		if !p.needsReeve() && !p.works() && !r.pullsItself(p) {
			r.reportUnlessShared(r.compose(unusedPart, p.NamePlace.Span, p.Name,
				"%s touches no rope and carries nothing", p.Name), p.shared)
		}
	}
}

// needsReeve says whether a part is a line that its reeving line puts to use.
func (p *partWork) needsReeve() bool { return p.Kind.IsLine() && !p.saysOn() }

// works says whether a part has something to do: a rope touches it, something is
// on it, a leg or a join uses it, or its weight hangs on another part.
func (p *partWork) works() bool {
	weighs := p.saysOn() && (p.Kind.IsWeight() || p.saysMass())
	return p.nodes > 0 || p.named || p.leg || p.joined || weighs || p.Kind == model.Leg
}

// pullsItself says whether a part is people on what moves and bears no weight: of them the
// rule of that name says more.
func (r *rigWork) pullsItself(p *partWork) bool {
	if p.Kind != model.Hauler || p.On == nil || p.Fixed() {
		return false
	}
	return !slices.ContainsFunc(r.order, func(q *partWork) bool {
		return q.Root() == p.Root() && (q.Kind.IsWeight() || q.saysMass())
	})
}

// checkReeved reports a line that no reeving line is of.
func (r *rigWork) checkReeved(p *partWork) {
	if r.reeves[p.Name] != nil || r.lostReeve || r.ghosts[p.Name] || r.meant[p.Name] {
		return
	}
	remedy := phrase("write reeve " + clipped(p.Name) + ": …")
	if p.nodes > 0 || p.named {
		remedy = phrase("write on and the part that it hangs from, or reeve " + clipped(p.Name) + ": …")
	}
	r.reportUnlessShared(r.compose(missingReeve, p.NamePlace.Span, p.Name,
		"%s is %s without a reeving line; %s", p.Name, article(p.Kind), remedy), p.shared)
	if !p.shared || p.nodes > 0 || p.named { // else this rig does without it
		r.rig.Incomplete = true
	}
}
