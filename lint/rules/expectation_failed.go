package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
)

var expectationFailed = &lint.Rule{
	Name:     "expectation-failed",
	Severity: diag.Error,
	Summary:  "a claim about the rig's figures that does not come true",
	Check:    checkExpectationFailed,
	Final:    true,
}

func checkExpectationFailed(p *lint.Pass) {
	for _, c := range p.Rig.Claims {
		if c.Broken {
			continue
		}
		v := p.Judge(c)
		if v.Holds || v.Unknown || v.Missing != "" {
			continue
		}
		p.Report(diag.Diagnostic{Place: c.Place, Subject: subject(c), Message: v.Message + p.InRig(c.Place), Related: v.Related})
	}
}

// subject gives the name of the part that a claim is about; empty if it names none.
func subject(c *model.Claim) string {
	switch {
	case c.Of != nil:
		return c.Of.Name
	case c.By != nil:
		return c.By.Name
	}
	return ""
}
