package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
)

var figureUnknown = &lint.Rule{
	Name:     "figure-unknown",
	Severity: diag.Warning,
	Summary:  "a claim that is not confirmed, since the rig does not say what it takes, such as an efficiency",
	Check:    checkFigureUnknown,
}

// checkFigureUnknown reports each claim once, with the parts that do not say enough.
func checkFigureUnknown(p *lint.Pass) {
	for _, c := range p.Rig.Claims {
		if c.Broken {
			continue
		}
		v := p.Judge(c)
		if !v.Unknown {
			continue
		}
		d := diag.Diagnostic{Place: c.Place, Subject: subject(c), Message: v.Message + p.InRig(c.Place)}
		for _, l := range v.Lacking {
			d.Also = append(d.Also, l.Part.Name)
			d.Related = append(d.Related, diag.Related{
				Place: l.Part.NamePlace, Message: lint.NameOf(l.Part) + " has no " + l.What})
		}
		p.Report(d)
	}
}
