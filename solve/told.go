package solve

import (
	"slices"

	"fairlead/lang/model"
)

// answers in their order, the worst last.
var answers = []Answer{Held, Caught, Jams, Down}

// WorseThan says whether an answer is worse than another: falls is the worst, then
// jams, then caught.
func (a Answer) WorseThan(b Answer) bool { return slices.Index(answers, a) > slices.Index(answers, b) }

// Whole says whether a part or line is lost as such, and not only its hold, its clip or
// a tie.
func (l Lost) Whole() bool {
	switch l.Kind {
	case LostHold, LostClip, LostTie:
		return false
	}
	return true
}

// TellingLosses is Losses without what a larger loss says: a part's hold or clip where
// losing the part is as bad, a tie where losing the line or the part is. What cannot be
// told for that reason is not asked for.
//
// Afford, unless it is nil, is asked before each question that takes a program to answer.
// When it says no, the rest is left out, and all is false.
func (r *Result) TellingLosses(afford func() bool) (list []Loss, all bool) {
	if r.Status == Unsolved {
		return nil, true
	}
	every := everyLost(r.Rig)
	known := map[Lost]Stay{}
	whole := map[*model.Part]Answer{}
	for _, wholes := range []bool{true, false} {
		for _, lost := range every {
			if lost.Whole() != wholes || !wholes && untold(lost, Down, whole) {
				continue
			}
			if afford != nil && !r.answered(lost) && !afford() {
				return inOrder(every, known), false
			}
			stay := r.After(lost)
			if wholes {
				whole[lost.Part] = stay.Answer
			}
			if wholes || !untold(lost, stay.Answer, whole) {
				known[lost] = stay
			}
		}
	}
	return inOrder(every, known), true
}

// untold says whether a larger loss is at least as bad.
func untold(l Lost, answer Answer, whole map[*model.Part]Answer) bool {
	as := func(p *model.Part) bool {
		larger, asked := whole[p]
		return asked && !answer.WorseThan(larger)
	}
	return as(l.Part) || l.Rope != nil && as(l.Rope.Line)
}

// answered says whether a question needs no program: it was asked before, or what is
// lost carries nothing.
func (r *Result) answered(lost Lost) bool {
	known := &r.system.stays
	known.Lock()
	defer known.Unlock()
	if known.answers == nil {
		return false
	}
	_, asked := known.answers[question{lost: lost}]
	return asked || known.unchanged(question{lost: lost}) != nil
}

func inOrder(every []Lost, known map[Lost]Stay) []Loss {
	var list []Loss
	for _, lost := range every {
		if stay, ok := known[lost]; ok {
			list = append(list, Loss{Lost: lost, Stay: stay})
		}
	}
	return list
}
