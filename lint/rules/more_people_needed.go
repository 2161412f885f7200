package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve/lp"
)

var morePeopleNeeded = &lint.Rule{
	Name:     "more-people-needed",
	Severity: diag.Warning,
	Summary:  "a pull that takes more people than there are; advice where only the usual figure or the lower end of one says so",
	Check:    checkMorePeopleNeeded,
}

func checkMorePeopleNeeded(p *lint.Pass) {
	for _, haul := range p.Result.Hauls() {
		t, ok := teamOf(p, haul)
		pull := p.Result.PullNewtons(haul)
		if !ok || pull == nil || p.Reported(pullOverLimit, haul.Hauler.Name) {
			continue
		}
		need := t.need(*pull.High)
		if own := p.House.PerPerson(); t.limit == nil && own != nil && !own.Line.Usual() {
			// the house may ask for less of each than they could give
			if h := t.byHouse(own); h.need(*pull.High) > need {
				t, need = h, h.need(*pull.High)
			}
		}
		if lp.Int(need).Cmp(t.fewest) > 0 && !(t.usual() && t.gives().Cmp(*pull.Low) >= 0) {
			t.reportFew(p, need, *pull.Low, *pull.High)
		}
	}
}

// reportFew reports a team that is too small for a pull between two ends.
func (t team) reportFew(p *lint.Pass, need int64, low, high lp.Num) {
	who, has := t.haul.Hauler, t.haul.Hauler.Values.People.String()
	severity, needs := diag.Warning, "needs"
	switch {
	case t.gets(low.Quo(t.most)) || t.limit == nil && t.gives().Cmp(low) >= 0:
		severity, needs = diag.Advice, "may need"
	case t.usual():
		severity = diag.Advice // nobody said what these people give
	}
	if t.limit == nil || t.usual() {
		give := ", who give "
		if has == "1" {
			give = ", who gives "
		}
		has += give + p.Between(t.fewest.Mul(t.low), t.gives())
	}
	p.ReportAs(severity, diag.Diagnostic{
		Place: p.OnRope(who), Subject: who.Name, Related: t.limit.Related(),
		Message: fmt.Sprintf("%s %s %d people to pull %s%s at %s, and has %s", lint.NameOf(who), needs, need,
			p.Between(low, high), p.Frictionless(t.haul), t.each(p), has),
	})
}
