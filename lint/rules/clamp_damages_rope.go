package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var clampDamagesRope = &lint.Rule{
	Name:     "clamp-damages-rope",
	Severity: diag.Warning,
	Summary:  "a clamp that grips more than the force at which it harms its rope",
	Check:    checkClampDamagesRope,
}

func checkClampDamagesRope(p *lint.Pass) {
	for _, b := range burdens(p) {
		if damages(b) && !b.byShare() {
			p.Report(diag.Diagnostic{
				Place: p.OnRope(b.Part), Subject: b.Part.Name,
				Message: fmt.Sprintf("%s %s, and damages its rope from %s on", lint.NameOf(b.Part),
					b.carries(p, "grips", "grip"), p.NewtonsFrom(*b.Strength, *b.Load)),
			})
		}
	}
}

// damages says whether a clamp grips more than the force at which it harms its rope, and
// neither slips nor breaks before that.
func damages(b burden) bool { return b.Limit == solve.Damages && b.grade() == broken }
