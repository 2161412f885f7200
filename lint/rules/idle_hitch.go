package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var idleHitch = &lint.Rule{
	Name:     "idle-hitch",
	Severity: diag.Advice,
	Summary:  "a hitch or clamp that grips a rope for nothing, or on which something hangs though it grips none",
	Check:    checkIdleHitch,
}

func checkIdleHitch(p *lint.Pass) {
	if p.Result.Status == solve.Unsolved {
		return
	}
	for _, h := range hitches(p.Rig) {
		d := diag.Diagnostic{Place: p.OnRope(h.part), Subject: h.part.Name}
		name := lint.NameOf(h.part)
		switch why := h.forgotten(); {
		case p.Reported(hitchOnWrongStrand, h.part.Name), bearsPeople(p, h.part):
			continue
		case why != "":
			d.Message = name + " grips no rope, though " + why
		case h.hangsFree() && gripsNothing(p, h.part):
			d.Message = name + " grips " + lint.NameOf(h.ropes[0].Line) +
				" for nothing: it is on no part, and nothing hangs on it"
		default:
			continue
		}
		p.Report(d)
	}
}

// bearsPeople says whether it has been reported that people are on a part.
func bearsPeople(p *lint.Pass, part *model.Part) bool {
	for _, who := range p.Rig.Parts {
		if who.On == part && p.Reported(pullsItself, who.Name) {
			return true
		}
	}
	return false
}

// gripsNothing says whether a part carries nothing in every phase.
func gripsNothing(p *lint.Pass, part *model.Part) bool {
	for _, ph := range p.Result.Every() {
		if part.Index < len(ph.Parts) && !ph.Parts[part.Index].Most().IsZero() {
			return false
		}
	}
	return true
}

// hitch is a hitch or clamp with what touches it.
type hitch struct {
	part *model.Part
	// ropes are those that touch it, one entry for each pass, of which grips are such
	// that run through it.
	ropes []*model.Rope
	grips int
	// hangs is the first part on it that does something; nil without one.
	hangs *model.Part
}

// hitches lists the hitches and clamps of a rig in file order.
func hitches(rig *model.Rig) []*hitch {
	var list []*hitch
	of := map[*model.Part]*hitch{}
	for _, part := range rig.Parts {
		if part.Kind.IsGrip() {
			of[part] = &hitch{part: part}
			list = append(list, of[part])
		}
	}
	if len(list) == 0 {
		return nil
	}
	busy := map[*model.Part]bool{} // what a rope touches, or weighs something, and what that is on
	for _, r := range rig.Ropes {
		for _, n := range r.Nodes {
			mark(busy, n.Part)
			if h := of[n.Part]; h != nil {
				h.ropes = append(h.ropes, r)
				if n.Role == model.Grip {
					h.grips++
				}
			}
		}
	}
	for _, part := range rig.Parts {
		if part.Kind.IsWeight() || part.Values.Mass != nil {
			mark(busy, part)
		}
	}
	for _, part := range rig.Parts {
		if h := of[part.On]; h != nil && h.hangs == nil && busy[part] {
			h.hangs = part
		}
	}
	return list
}

// mark notes a part and all that it is on.
func mark(busy map[*model.Part]bool, p *model.Part) {
	for ; p != nil && !busy[p]; p = p.On {
		busy[p] = true
	}
}

// forgotten says in a clause what hangs on a hitch that no rope runs through; empty if
// nothing does or one runs through it. What is tied to one that is itself on a part, or
// holds something else, is tied well enough.
func (h *hitch) forgotten() string {
	switch {
	case h.grips > 0:
		return ""
	case len(h.ropes) == 0 && h.hangs != nil:
		return lint.NameOf(h.hangs) + " hangs on it"
	case len(h.ropes) == 1 && h.hangs == nil && h.part.On == nil:
		return lint.NameOf(h.ropes[0].Line) + " is tied to it"
	}
	return ""
}

// hangsFree says whether a hitch is on one rope only, and on nothing else.
func (h *hitch) hangsFree() bool {
	return h.grips == 1 && len(h.ropes) == 1 && h.hangs == nil && h.part.On == nil && h.part.Values.Mass == nil
}
