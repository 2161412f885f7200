package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var ropeTooShort = &lint.Rule{
	Name:     "rope-too-short",
	Severity: diag.Warning,
	Summary:  "a line that is shorter than the rig needs",
	Check:    checkRopeTooShort,
}

func checkRopeTooShort(p *lint.Pass) {
	for _, need := range p.Result.Rope {
		if !need.Short {
			continue
		}
		length := need.Rope.Line.Values.Length
		most := lp.FromRat(length.High)
		if most.Cmp(*need.Needed) >= 0 {
			continue // it may be long enough
		}
		line := need.Rope.Line
		d := diag.Diagnostic{
			Place: line.NamePlace, Subject: line.Name,
			Message: fmt.Sprintf("%s lacks %s: %s, and it has %s", lint.NameOf(line),
				p.Length(need.Needed.Sub(most)), needed(p, need), p.LengthBeside(most, *need.Needed)),
			Related: []diag.Related{{Place: need.Rope.Place, Message: "the strands of " + lint.NameOf(line)}},
		}
		if line.FromStock("length") == nil {
			d.Place = line.Values.Places["length"]
		}
		p.Report(d)
	}
}

// needed says what takes so much rope.
func needed(p *lint.Pass, need solve.RopeNeed) string {
	has := lp.FromRat(need.Rope.Line.Values.Length.High)
	words := "its strands take " + p.LengthBeside(*need.Strands, has)
	if need.PaidOut != nil && need.PaidOut.Sign() > 0 {
		words += " and the haul draws in " + p.Length(*need.PaidOut) + " more"
	}
	return words
}
