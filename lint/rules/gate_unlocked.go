package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lint"
	"fairlead/solve"
)

var gateUnlocked = &lint.Rule{
	Name:     "gate-unlocked",
	Severity: diag.Warning,
	Summary:  "a plain carabiner at a place where its loss lets the load fall",
	Latent:   true,
	Check:    checkGateUnlocked,
}

// checkGateUnlocked loses each carabiner of which the rig says that it does not lock. Of
// one that says neither nothing is known.
func checkGateUnlocked(p *lint.Pass) {
	if p.Explained() || p.Result.Status == solve.Unsolved || !p.Keeps(p.Result.Released) {
		return // it falls with all its parts
	}
	for _, part := range p.Rig.Parts {
		if part.Kind != model.Carabiner || !part.Values.Plain || part.Values.Locking || !p.AffordLosses(1) {
			continue
		}
		lost := p.Result.Without(part)
		if p.Keeps(lost) || lint.Stops(lost.Answer) {
			continue
		}
		p.Report(diag.Diagnostic{
			Place: plainPlace(part), Subject: part.Name, Also: lint.NamesIn(lost.Sinking),
			Message: lint.NameOf(part) + " is plain, with a gate that does not lock: " +
				lint.Fall(p.Rig, lost, "without it"),
		})
	}
}

// plainPlace is where a carabiner says that it does not lock, or its name where its model
// says so.
func plainPlace(part *model.Part) source.Place {
	if place, written := part.Values.Places["plain"]; written && part.FromStock("plain") == nil {
		return place
	}
	return part.NamePlace
}
