package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
)

var twoBlocked = &lint.Rule{
	Name:     "two-blocked",
	Severity: diag.Error,
	Summary:  "two blocks that are drawn together before the load is as high as asked",
	Check:    checkTwoBlocked,
}

func checkTwoBlocked(p *lint.Pass) {
	s, pair, how := raiseEnd(p)
	if how != atBlock {
		return
	}
	lower, upper := blockOf(p, pair.Lower), blockOf(p, pair.Upper)
	d := endsBy(p, s, pair, lint.NameOf(lower)+" meets "+lint.NameOf(upper), "and no reset draws the two blocks apart")
	d.Also = append(d.Also, d.Subject, upper.Name)
	d.Subject = lower.Name
	p.Report(d)
}
