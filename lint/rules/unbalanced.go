package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var unbalanced = &lint.Rule{
	Name:     "unbalanced",
	Severity: diag.Error,
	Summary:  "a part that the rope pulls one way and nothing pulls the other way",
	Check:    checkUnbalanced,
}

func checkUnbalanced(p *lint.Pass) {
	if p.Fault() != solve.Unbalanced {
		return
	}
	main := p.Result.Main()
	loose := lint.Moving(main.Ray, 0)
	if len(loose) == 0 {
		return
	}
	how, why := " runs up the line", "nothing pulls it back down"
	if len(lint.Moving(main.Ray, -1)) > 0 {
		loose = lint.Moving(main.Ray, -1)
		how, why = " sinks", "nothing holds it up"
	}
	name := lint.BodyName(loose[0])
	part := loose[0].Parts[0]
	p.Explain(diag.Diagnostic{
		Place: p.OnRope(part), Subject: part.Name, Also: lint.NamesIn(loose),
		Message: name + how + " without end while " + lint.NameOf(main.Hauler) + " hauls: " + why,
	})
}
