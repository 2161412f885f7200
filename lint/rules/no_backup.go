package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var noBackup = &lint.Rule{
	Name:     "no-backup",
	Severity: diag.Advice,
	Summary:  "parts whose loss alone lets the load fall; a warning where people hang on it or stand below it",
	Check:    checkNoBackup,
	Latent:   true,
}

// checkNoBackup asks the critical-point test: each part lost alone, hands off.
func checkNoBackup(p *lint.Pass) {
	left := slices.DeleteFunc(criticals(p), func(l solve.Loss) bool { return explainedByLines(p, l) })
	reportLosses(p, left, func(losses []solve.Loss) string {
		return lossWords(p, losses) + ": nothing else holds " + them(losses)
	})
}

// explainedByLines says whether it has been reported that two lines depend on what is
// lost.
func explainedByLines(p *lint.Pass, l solve.Loss) bool {
	for _, r := range []*lint.Rule{sharedAnchorBackup, commonLink} {
		if p.ReportedAt(r, partsOf(l)[0].Name) {
			return true
		}
	}
	return false
}
