package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var sharedAnchorBackup = &lint.Rule{
	Name:     "shared-anchor-backup",
	Severity: diag.Advice,
	Summary:  "a fixed point on which both the main line and its backup hang; a warning where people hang on the load or stand below it",
	Check:    checkSharedAnchorBackup,
	Latent:   true,
}

// checkSharedAnchorBackup looks for a fixed point whose loss takes both of two lines, and
// with it for what is fixed to that point.
func checkSharedAnchorBackup(p *lint.Pass) {
	reportShared(p, func(shared []solve.Loss) []solve.Loss {
		if !slices.ContainsFunc(shared, isFixedPoint) {
			return nil
		}
		return slices.DeleteFunc(shared, func(l solve.Loss) bool { return !isFixedPoint(l) && !l.Part.Fixed() })
	})
}
