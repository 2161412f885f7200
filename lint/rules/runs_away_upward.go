package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var runsAwayUpward = &lint.Rule{
	Name:     "runs-away-upward",
	Severity: diag.Error,
	Summary:  "a load that a heavier weight draws up without anybody hauling",
	Check:    checkRunsAwayUpward,
}

func checkRunsAwayUpward(p *lint.Pass) {
	if p.Fault() != solve.RunsUp {
		return
	}
	main := p.Result.Main()
	up, down := lint.Moving(main.Ray, +1), lint.Moving(main.Ray, -1)
	message := p.Trouble()
	if len(down) > 0 {
		message += ": " + lint.Bodies(down) + " outweighs it"
	}
	part := up[0].Loads[0]
	p.Explain(diag.Diagnostic{
		Place: p.OnRope(part), Message: message, Subject: part.Name, Also: lint.NamesIn(append(up, down...)),
	})
}
