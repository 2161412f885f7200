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
	if s, pair, how := raiseEnd(p); how == atBlock {
		p.Report(endsBy(p, s, pair, met(pair), "and no reset draws the two blocks apart"))
	}
}
