package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
)

var pullOverLimit = &lint.Rule{
	Name:     "pull-over-limit",
	Severity: diag.Warning,
	Summary:  "a pull of the whole team that is over what the house allows, however many pull",
	Check:    checkPullOverLimit,
}

func checkPullOverLimit(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "pull"})
	for _, haul := range p.Result.Hauls() {
		pull := p.Result.PullNewtons(haul)
		if haul.Status != solve.OK || p.Result.Brakes(haul) || pull == nil || limit.Allows(*pull.High) {
			continue
		}
		p.Report(diag.Diagnostic{
			Place: p.OnRope(haul.Hauler), Subject: haul.Hauler.Name, Related: limit.Related(),
			Message: fmt.Sprintf("%s has to pull %s%s, where %s", lint.NameOf(haul.Hauler),
				p.Between(*pull.Low, *pull.High), p.Frictionless(haul), required(limit)),
		})
	}
}
