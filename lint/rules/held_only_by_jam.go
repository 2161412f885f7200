package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var heldOnlyByJam = &lint.Rule{
	Name:     "held-only-by-jam",
	Severity: diag.Advice,
	Summary:  "hands off, the load drops until parts jam; a warning where people hang on it or stand below it",
	Check:    checkHeldOnlyByJam,
}

// checkHeldOnlyByJam says which parts meet when everyone lets go, and after what way.
func checkHeldOnlyByJam(p *lint.Pass) {
	stay := p.Result.Released
	d, severity, ok := unheld(p)
	if !ok || stay.Answer != solve.Jams || p.Reported(captureOffLoad, d.Subject) {
		return
	}
	d.Message = released(p) + ": only that keeps " + them([]solve.Loss{{Stay: stay}}) + ofHouse(p)
	for _, pair := range stay.Meeting {
		for _, part := range pair {
			if part == nil {
				continue
			}
			d.Also = append(d.Also, part.Name)
			if at, known := p.Result.Position(part); known {
				d.Related = append(d.Related, diag.Related{Place: p.OnRope(part), Message: lint.NameOf(part) + " is at " + p.Length(at)})
			}
		}
	}
	d.Severity = severity
	offerCapture(p, &d)
	p.ReportAs(severity, d)
}
