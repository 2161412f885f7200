package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var notHeldWhileHauling = &lint.Rule{
	Name:     "not-held-while-hauling",
	Severity: diag.Error,
	Summary:  "a load that falls though somebody hauls",
	Check:    checkNotHeldWhileHauling,
}

func checkNotHeldWhileHauling(p *lint.Pass) {
	if p.Fault() != solve.Falls {
		return
	}
	main := p.Result.Main()
	down := lint.Moving(main.Ray, -1)
	message := p.Trouble()
	also := lint.NamesIn(down)
	if flying := main.Unpinned; len(flying) > 0 {
		message += ": nothing pulls " + lint.Bodies(flying) + " back down the line"
		also = append(also, lint.NamesIn(flying)...)
	}
	part := down[0].Loads[0]
	p.Explain(diag.Diagnostic{Place: p.OnRope(part), Message: message, Subject: part.Name, Also: also})
}
