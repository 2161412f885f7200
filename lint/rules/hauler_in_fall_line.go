package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var haulerInFallLine = &lint.Rule{
	Name:     "hauler-in-fall-line",
	Severity: diag.Warning,
	Summary:  "people whose position is below a load that the loss of one part drops",
	Check:    checkHaulerInFallLine,
	Latent:   true,
}

// checkHaulerInFallLine compares the positions of people with those that loads get to.
func checkHaulerInFallLine(p *lint.Pass) {
	all := criticals(p)
	for _, b := range peopleBelow(p, sinking(all)) {
		var drops []solve.Loss
		for _, l := range all {
			for _, load := range loadsOf([]solve.Loss{l}) {
				if load == b.load {
					drops = append(drops, l)
				}
			}
		}
		top := " at "
		if start, _ := p.Result.Position(b.load); start.Cmp(b.top) < 0 {
			top = ", which gets to "
		}
		d := diag.Diagnostic{
			Place: b.who.NamePlace, Subject: b.who.Name, Also: []string{b.load.Name},
			Message: lint.NameOf(b.who) + " at " + p.Length(b.at) + " is below " + lint.NameOf(b.load) + top + p.Length(b.top) +
				": " + lossWords(p, drops),
		}
		if place, ok := b.who.Values.Places["at"]; ok {
			d.Place = place
		}
		p.Report(d)
	}
}
