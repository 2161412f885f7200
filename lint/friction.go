package lint

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/solve"
)

// inDoubt says why the figures of a phase with friction are not known; nil if they
// are, and in an ideal rig, where those without friction are the figures.
func inDoubt(res *solve.Result, ph *solve.Phase) *doubt {
	if !rubs(res.Rig) {
		return nil
	}
	return frictionDoubt(ph)
}

// Settled says whether the forces of a phase are what claims are judged by: with friction
// where it is known, without it in a rig that says nothing of any.
func (p *Pass) Settled(ph *solve.Phase) bool { return inDoubt(p.Result, ph) == nil }

// frictionDoubt says why the figures of a phase with friction are not known; nil if
// they are.
func frictionDoubt(ph *solve.Phase) *doubt {
	switch a := ph.Actual; {
	case a.Known():
		return nil
	case a == nil:
		return &doubt{says: "friction is not worked out where nothing needs to be pulled"}
	case a.Stuck:
		return &doubt{says: "no forces balance once friction is counted"}
	default:
		return frictionless(a.Unknown)
	}
}

// rubs says whether anything is said of the friction of a rope: an efficiency, a
// coefficient or turns, at a place that a rope passes or by the rope itself. In a rig
// without any of it the author reckons without friction.
func rubs(rig *model.Rig) bool {
	for _, r := range rig.Ropes {
		if r.Line.Values.Friction != nil {
			return true
		}
		for _, n := range r.Nodes {
			if n.Efficiency != nil || n.Lowering != nil || n.Friction != nil && !isWeight(n) || n.Turns != nil {
				return true
			}
		}
	}
	return false
}

// WithoutFriction stands in a message after a force that is reckoned without friction,
// where the rig says something of it, so that the true force is another one; it is
// empty in an ideal rig.
func (p *Pass) WithoutFriction() string {
	if rubs(p.Rig) {
		return " without friction"
	}
	return ""
}

// Frictionless stands in a message after a force of a phase that is reckoned without
// friction though the rig says something of it; it is empty where friction is known, where
// nothing is pulled, and in an ideal rig.
func (p *Pass) Frictionless(ph *solve.Phase) string {
	if ph == nil || ph.Hauler == nil || ph.Actual.Known() || ph.Pull == nil || ph.Pull.IsZero() {
		return ""
	}
	return p.WithoutFriction()
}

// isWeight says whether a node is a load, whose friction is on the ground.
func isWeight(n model.Node) bool { return n.Part != nil && n.Part.Kind.IsWeight() }

// frictionless doubts figures for want of what says how rope runs over some parts.
func frictionless(parts []*model.Part) *doubt {
	return withoutClause(parts, func(p *model.Part) string {
		if slices.Contains(syntax.ClausesOf(string(p.Kind)), "efficiency") {
			return "efficiency"
		}
		return "friction"
	})
}
