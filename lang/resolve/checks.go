package resolve

import (
	"slices"

	"fairlead/lang/model"
)

// checkParts reports the lines without a reeving line and the parts that have
// nothing to do.
func (r *rigWork) checkParts() {
	for _, p := range r.order {
		if p.needsReeve() {
			r.read(p.entry)
			r.checkReeved(p)
		}
	}
	if r.rig.Incomplete || r.spoilt {
		return // what is wrong may be where the part is used
	}
	for _, p := range r.order {
		if !p.needsReeve() && !p.works() && !r.pullsItself(p) && (p.copy == "" || p.stranded) {
			r.read(p.entry)
			r.reportUnlessShared(r.compose(unusedPart, p.NamePlace.Span, p.Name,
				"%s touches no rope and carries nothing", p.Name), p.shared && p.copy == "")
		}
	}
}

// needsReeve says whether a part is a line that its reeving line puts to use.
func (p *partWork) needsReeve() bool { return p.Kind.IsLine() && !p.saysOn() }

// works says whether a part has something to do: a rope touches it, something is
// on it, a leg uses it, or its weight hangs on another part.
func (p *partWork) works() bool {
	weighs := p.saysOn() && (p.Kind.IsWeight() || p.saysMass())
	return p.nodes > 0 || p.named || p.leg || weighs || p.Kind == model.Leg
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
	if p.shared && p.copy != "" && p.nodes == 0 && !p.named { // its rig does without it
		return
	}
	remedy := phrase("write reeve " + clipped(p.Name) + ": …")
	if p.nodes > 0 || p.named {
		remedy = phrase("write on and the part that it hangs from, or reeve " + clipped(p.Name) + ": …")
	}
	r.reportUnlessShared(r.compose(missingReeve, p.NamePlace.Span, p.Name,
		"%s is %s without a reeving line; %s", p.Name, article(p.Kind), remedy), p.shared && p.copy == "")
	if !p.shared || p.nodes > 0 || p.named { // else this rig does without it
		r.rig.Incomplete = true
	}
}

// dropIdle takes out of the rig what stands before the first rig of its file and has
// nothing to do here: a load that no rope holds would fall. What a claim names stays.
func (r *rigWork) dropIdle() {
	if r.rig.Incomplete || r.spoilt {
		return
	}
	kept := map[*model.Part]bool{}
	var keep func(p *model.Part)
	keep = func(p *model.Part) {
		if p == nil || kept[p] {
			return
		}
		kept[p] = true
		for _, q := range []*model.Part{p.On, p.Values.From, p.Values.To, p.Values.HoldsEnd} {
			keep(q)
		}
	}
	for _, p := range r.order {
		idle := !p.works() && !p.claimed && r.reeves[p.Name] == nil
		if !idle || !p.shared {
			keep(p.Part)
		}
	}
	if len(kept) == len(r.order) {
		return
	}
	r.rig.Parts = slices.DeleteFunc(r.rig.Parts, func(p *model.Part) bool { return !kept[p] })
	r.rig.Seal()
}
