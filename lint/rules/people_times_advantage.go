package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var peopleTimesAdvantage = &lint.Rule{
	Name:     "people-times-advantage",
	Severity: diag.Advice,
	Summary:  "more people on more advantage than the rule of thumb allows; a warning where the house says so",
	Check:    checkPeopleTimesAdvantage,
}

// checkPeopleTimesAdvantage applies the rule of thumb, where what the team can overload is
// not known better.
func checkPeopleTimesAdvantage(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "people times advantage"})
	if limit == nil {
		return
	}
	for _, haul := range p.Result.Hauls() {
		who := haul.Hauler
		people := who.Values.People
		if haul.Status != solve.OK || haul.Ideal == nil || p.Result.Brakes(haul) || people == nil || p.Reported(teamCanOverload, who.Name) {
			continue
		}
		product := lp.FromRat(people.High).Mul(*haul.Ideal)
		if limit.Allows(product) {
			continue
		}
		d := diag.Diagnostic{Place: p.OnRope(who), Subject: who.Name, Related: limit.Related()}
		d.Message = fmt.Sprintf("%s has %s people at %s, which makes %s, where %s", lint.NameOf(who), people, lint.Ratio(*haul.Ideal),
			lint.From(product, lp.FromRat(limit.High)), required(limit))
		if fewer := allowed(limit, *haul.Ideal); fewer > 0 {
			d.Message += fmt.Sprintf("; %d would keep to it", fewer)
		}
		severity := diag.Warning
		if limit.Line.Usual() {
			severity = diag.Advice
		}
		p.ReportAs(severity, d)
	}
}

// allowed gives how many people at an advantage keep to a limit of the one times the
// other, 0 if not even one does.
func allowed(limit *house.Limit, advantage lp.Num) int64 {
	most := lp.FromRat(limit.High).Quo(advantage).Float()
	n := int64(min(most, mostPeople))
	for n > 0 && !limit.Allows(lp.Int(n).Mul(advantage)) {
		n--
	}
	return n
}
