package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
)

var notComputedYet = &lint.Rule{
	Name:     "not-computed-yet",
	Severity: diag.Advice,
	Summary:  "a claim that is read but not computed yet",
	Check:    checkNotComputedYet,
}

// checkNotComputedYet reports the claims, and that not every loss was asked for.
func checkNotComputedYet(p *lint.Pass) {
	for _, c := range p.Rig.Claims {
		if c.Broken {
			continue
		}
		if v := p.Judge(c); v.Missing != "" {
			p.ReportAs(diag.Advice, diag.Diagnostic{
				Place: c.Place, Subject: subject(c),
				Message: v.Missing + " is not computed yet: the claim is not judged",
			})
		}
	}
	if p.LossesCut() {
		p.ReportAs(diag.Advice, diag.Diagnostic{
			Place: p.Rig.NamePlace, Message: "the loss of so many parts of so large a rig is not computed yet: no-backup may miss some",
		})
	}
}
