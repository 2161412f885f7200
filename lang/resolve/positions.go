package resolve

import (
	"math/big"

	"fairlead/lang/model"
)

// checkPositions reports the strokes that contradict the positions of their two
// parts: a rope that runs up leads to what is not lower.
func (l *ropeWork) checkPositions() {
	rope := l.rope
	if len(rope.Nodes) < 2 {
		return
	}
	for i, stroke := range rope.Strokes {
		if stroke == model.Slack || i >= len(rope.Nodes) || !rope.Loop && i == len(rope.Nodes)-1 {
			continue
		}
		from, to := rope.Nodes[i].Part, rope.Nodes[rope.After(i)].Part
		if from == nil || to == nil || from.Values.At == nil || to.Values.At == nil {
			continue
		}
		lower, upper := from, to
		if stroke == model.Down {
			lower, upper = to, from
		}
		if upper.Values.At.High.Cmp(lower.Values.At.Low) >= 0 {
			continue
		}
		l.spoilt = true
		direction := map[model.Stroke]phrase{model.Up: "up", model.Down: "down"}[stroke]
		d := l.report(strokeAgainst, rope.StrokePlaces[i].Span, from.Name,
			"%s at %s lies %s %s at %s, yet the stroke leads %s",
			from.Name, from.Values.At.String(), beside(from.Values.At.Low, to.Values.At.Low), to.Name,
			to.Values.At.String(), direction)
		related(d, from.Values.Places["at"], "the position of %s", from.Name)
		if to != from {
			related(d, to.Values.Places["at"], "the position of %s", to.Name)
		}
	}
}

// beside says where the first position lies, seen from the second.
func beside(first, second *big.Rat) phrase {
	if first.Cmp(second) < 0 {
		return "below"
	}
	return "above"
}
