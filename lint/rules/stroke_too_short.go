package rules

import (
	"fmt"
	"strconv"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var strokeTooShort = &lint.Rule{
	Name:     "stroke-too-short",
	Severity: diag.Warning,
	Summary:  "strokes that win nothing, or less than the house requires; an error where a height is asked for that they never reach",
	Check:    checkStrokeTooShort,
}

func checkStrokeTooShort(p *lint.Pass) {
	s := strokeOf(p)
	if s == nil || s.First == nil || s.Raise != nil && s.Raise.EndedBy != nil {
		return // what ends the raise says more
	}
	d := meeting(p, s, s.First)
	why, nothing := winsNothing(p, s)
	switch {
	case s.Raise != nil && s.Raise.Endless:
		d.Message = fmt.Sprintf("%s, and %s never comes to %s", why, lint.BodyName(s.Load), p.Length(s.Raise.Height))
		p.ReportAs(diag.Error, d)
	case nothing:
		d.Message = why + ", and a stroke wins nothing"
		p.Report(d)
	default:
		underHouse(p, s, d)
	}
}

// winsTooLittle says whether this rule finds something: then nothing else need be said
// about what a stroke loses.
func winsTooLittle(p *lint.Pass, s *solve.Stroke) bool {
	if s.Raise != nil && s.Raise.EndedBy != nil {
		return false
	}
	_, nothing := winsNothing(p, s)
	return nothing || s.Raise != nil && s.Raise.Endless
}

// winsNothing says why strokes win nothing, from the first on or where the load is nearly
// up; nothing is false if the first ones win something.
func winsNothing(p *lint.Pass, s *solve.Stroke) (why string, nothing bool) {
	whole, back, known := s.GivenBack()
	switch {
	case s.First.Gap.Sign() == 0:
		return met(s.First) + " from the start", true
	case s.First.Meets.Sign() == 0:
		return met(s.First) + " before " + names(s.Slipping) + " holds", true
	case known && s.Stage == s.First && back.Cmp(whole) >= 0:
		return fmt.Sprintf("%s after %s, and %s back %s at each reset", met(s.Stage), p.Length(*s.Stage.Meets),
			give(s.SettingBack), p.Length(s.SetBack)), !raisesInOneStroke(s)
	case s.Raise == nil || !s.Raise.Endless:
		return "", false
	}
	return fmt.Sprintf("from %s on a stroke until %s wins no more than %s back",
		p.Length(s.Raise.Reached), met(s.Stage), give(givers(s))), false
}

// underHouse reports a stroke shorter, or resets more, than the house allows.
func underHouse(p *lint.Pass, s *solve.Stroke, d diag.Diagnostic) {
	load := lint.BodyName(s.Load)
	if limit := p.House.Limit(house.Figure{Name: "stroke"}); !limit.Allows(*s.Rise) && !raisesInOneStroke(s) {
		d := d
		d.Message = fmt.Sprintf("%s after %s: a stroke raises %s less than %s", met(s.First), p.Length(*s.Rise), load, limit)
		d.Related = append(d.Related, limit.Related()...)
		p.Report(d)
	}
	if s.Raise == nil {
		return
	}
	if limit := p.House.Limit(house.Figure{Name: "resets"}); !limit.Allows(lp.Int(int64(s.Raise.Resets))) {
		d.Message = fmt.Sprintf("%s after %s: raising %s by %s takes %s resets, more than %s",
			met(s.First), p.Length(*s.Rise), load, p.Length(s.Raise.Height), strconv.Itoa(s.Raise.Resets), limit)
		d.Related = append(d.Related, limit.Related()...)
		p.Report(d)
	}
}
