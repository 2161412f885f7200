package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var noCapture = &lint.Rule{
	Name:     "no-capture",
	Severity: diag.Advice,
	Summary:  "hands off, the load falls; a warning where people hang on it or stand below it",
	Check:    checkNoCapture,
}

// checkNoCapture asks the whistle test: everyone lets go. A load that stops where parts
// jam, or that a capture would hold if hands did their share, has a rule of its own.
func checkNoCapture(p *lint.Pass) {
	d, severity, ok := unheld(p)
	if !ok || p.Result.Released.Answer == solve.Jams || p.Reported(captureOffLoad, d.Subject) {
		return
	}
	d.Message = released(p) + ofHouse(p)
	if len(p.Result.Hauls()) == 0 {
		d.Message += ": nothing holds the rope"
	}
	d.Severity = severity
	offerCapture(p, &d)
	p.ReportAs(severity, d)
}
