package lint

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
)

// Losses gives what can be lost and what comes of it, hands off, without what a larger
// loss says (solve.Result.TellingLosses). They are asked once for all rules; of a rig so
// large that it would take too long, only the first ones are.
func (p *Pass) Losses() []solve.Loss {
	if !p.lossesAsked {
		all := false
		p.losses, all = p.Result.TellingLosses(p.AffordFall)
		p.lossesAsked, p.lossesCut = true, !all
	}
	return p.losses
}

// LossesCut says whether some of what can be lost was not asked for.
func (p *Pass) LossesCut() bool { return p.lossesCut }

// Accepts says whether the author accepts what the running rule finds at a part. A rule
// that reports several parts together leaves those to a finding of their own, so that
// one acceptance does not take the rest along.
func (p *Pass) Accepts(part *model.Part) bool {
	for _, a := range p.Rig.Accepted {
		if !a.Broken && a.At != nil && a.At == part && a.Rule.Text == p.rule.Name {
			return true
		}
	}
	return false
}

// LostName names what is lost: "head", "the hold of top", "the tie of long at litter".
func LostName(l solve.Lost) string {
	name := NameOf(l.Part)
	switch l.Kind {
	case solve.LostHold:
		return "the hold of " + name
	case solve.LostClip:
		return "the clip of " + name
	case solve.LostTie:
		return "the tie of " + NameOf(l.Rope.Line) + " at " + name
	}
	return name
}

// OrList joins names as a choice: "a, b or c".
func OrList(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " or " + names[n-1]
	}
	return strings.Join(names, "")
}
