package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var stageRunsOutFirst = &lint.Rule{
	Name:     "stage-runs-out-first",
	Severity: diag.Advice,
	Summary:  "a stage that has run out when the next one still has most of its way to go",
	Check:    checkStageRunsOutFirst,
}

func checkStageRunsOutFirst(p *lint.Pass) {
	s := strokeOf(p)
	if s == nil || s.Stage == nil || s.Stage != s.First || winsTooLittle(p, s) || raisesInOneStroke(s) {
		return
	}
	if s.Raise != nil && s.Raise.EndedBy != nil && s.Raise.EndedBy != s.Stage {
		return // another pair ends the raise
	}
	next, reaches := nextStage(s)
	limit := p.House.Limit(house.Figure{Name: "stage"})
	if next == nil || limit.Allows(s.Stage.Meets.Quo(reaches)) {
		return
	}
	d := meeting(p, s, s.Stage)
	d.Also = append(d.Also, next.Lower.Name, next.Upper.Name)
	d.Related = append([]diag.Related{{Place: pairPlace(p, next), Message: "the next stage"}}, limit.Related()...)
	d.Message = fmt.Sprintf("%s when %s has risen %s, %s of the %s that the next stage lasts, until %s",
		met(s.Stage), lint.BodyName(s.Load), p.Length(*s.Stage.Meets), lint.Percent(s.Stage.Meets.Quo(reaches)),
		p.Length(reaches), met(next))
	if start := betterStart(p, s); start != "" {
		d.Message += "; " + start
	}
	p.Report(d)
}

// nextStage gives the stage that runs out after the first one, and the rise at which it
// does, or at which the raise is over, if that comes first; nil without one.
func nextStage(s *solve.Stroke) (next *solve.Pair, reaches lp.Num) {
	for _, pair := range s.Pairs {
		if pair == s.Stage || !pair.Resettable {
			continue
		}
		reaches = *pair.Meets
		if s.End != nil {
			reaches = lp.Min(reaches, *s.End.Meets)
		}
		if s.Raise != nil {
			reaches = lp.Min(reaches, s.Raise.Reached)
		}
		return pair, reaches
	}
	return nil, reaches
}

// betterStart says from where the stroke is the longest.
func betterStart(p *lint.Pass, s *solve.Stroke) string {
	best := s.LongestStart()
	if best == nil {
		return ""
	}
	var starts []string
	for _, start := range best.Starts {
		starts = append(starts, lint.NameOf(start.Part)+" at "+p.Length(start.At))
	}
	return "with " + lint.List(starts) + " a stroke raises it " + p.Length(best.Rise)
}
