package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var commonLink = &lint.Rule{
	Name:     "common-link",
	Severity: diag.Advice,
	Summary:  "a part on which two lines depend that could each hold the load; a warning where people hang on it or stand below it",
	Check:    checkCommonLink,
	Latent:   true,
}

// checkCommonLink looks for what takes both of two lines that no loss of a fixed point
// does.
func checkCommonLink(p *lint.Pass) {
	reportShared(p, func(shared []solve.Loss) []solve.Loss {
		if slices.ContainsFunc(shared, isFixedPoint) {
			return nil
		}
		return slices.DeleteFunc(shared, func(l solve.Loss) bool { return p.ReportedAt(sharedAnchorBackup, partsOf(l)[0].Name) })
	})
}
