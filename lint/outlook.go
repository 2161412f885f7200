package lint

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// Outlook is what a change makes of a rig: whether its load rises, how, and whether it
// stays up hands off.
type Outlook struct {
	Status solve.Status
	ideal  *lp.Num
	stays  func() solve.Answer
}

// Look gives the outlook of a rig made by changing the ropes of this one. No text is
// read and no force computed, so that many changes can be looked at before one is
// tried; what the text would have against one is not seen. ok is false if no more can be
// afforded.
func (p *Pass) Look(changed *model.Rig) (o *Outlook, ok bool) {
	if p.inTrial || !p.affordGlance() {
		return nil, false
	}
	seen := solve.LookAt(changed)
	return &Outlook{Status: seen.Status, ideal: seen.Ideal, stays: seen.Released}, true
}

// outlookOf gives that of a solved rig.
func outlookOf(res *solve.Result) *Outlook {
	return &Outlook{Status: res.Status, ideal: ideal(res), stays: func() solve.Answer { return res.Released.Answer }}
}

func ideal(res *solve.Result) *lp.Num {
	if main := res.Main(); main != nil {
		return main.Ideal
	}
	return nil
}

// Released gives the answer when everyone lets go.
func (o *Outlook) Released() solve.Answer { return o.stays() }

// Mends says whether a change makes a rig that does not do its job do it: the load
// rises, and hands off it stays up no worse than before.
func (o *Outlook) Mends(p *Pass) bool {
	if o.Status != solve.OK {
		return false
	}
	before := p.Result.Released.Answer
	return !Stops(before) || !Weaker(o.Released(), before)
}

// Compare gives -1, 0 or 1 as the advantage is below, equal to or above that of the
// unchanged rig. No single figure is below every figure.
func (o *Outlook) Compare(p *Pass) int { return compareIdeals(o.ideal, ideal(p.Result)) }

// Better says whether the advantage is higher than in another outlook; anything is
// better than none.
func (o *Outlook) Better(other *Outlook) bool {
	return other == nil || compareIdeals(o.ideal, other.ideal) > 0
}

func compareIdeals(x, y *lp.Num) int {
	switch {
	case x == nil && y == nil:
		return 0
	case x == nil:
		return -1
	case y == nil:
		return 1
	}
	return x.Cmp(*y)
}

// Rises says what the load does: "it is 3:1", or that it rises where that is no
// single figure.
func (o *Outlook) Rises() string {
	if o.ideal != nil {
		return "it is " + Ratio(*o.ideal)
	}
	return "the load rises"
}

// Rises says what the load does in the rig, which raises it.
func (p *Pass) Rises() string { return outlookOf(p.Result).Rises() }
