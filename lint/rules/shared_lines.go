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

var commonLink = &lint.Rule{
	Name:     "common-link",
	Severity: diag.Advice,
	Summary:  "a part on which two lines depend that could each hold the load; a warning where people hang on it or stand below it",
	Check:    checkCommonLink,
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

// isFixedPoint says whether a fixed point is lost, or a leg, with which the last leg of
// one goes.
func isFixedPoint(l solve.Loss) bool { return l.Kind == solve.LostAnchor || l.Kind == solve.LostLeg }

// reportShared reports, for each load with two lines, the losses that let it fall all the
// same and that are of the kind looked for.
func reportShared(p *lint.Pass, of func([]solve.Loss) []solve.Loss) {
	all := criticals(p)
	if len(all) == 0 {
		return
	}
	for _, b := range p.Result.Backups() {
		shared := slices.DeleteFunc(slices.Clone(all), func(l solve.Loss) bool {
			return !slices.Contains(loadsOf([]solve.Loss{l}), b.Load)
		})
		reportLosses(p, of(shared), func(losses []solve.Loss) string {
			return lossWords(p, losses) + ": " + depend(b, losses)
		})
	}
}

// depend says in a clause that two lines depend on what is lost.
func depend(b solve.Backup, losses []solve.Loss) string {
	same := b.Main.Rope == b.Second.Rope
	main, second := lint.NameOf(b.Main.Rope.Line), lint.NameOf(b.Second.Rope.Line)
	switch {
	case same && len(losses) == 1 && losses[0].Part == b.Main.Rope.Line:
		return "main line and backup are one rope"
	case same:
		return "both runs of " + main + " hang on " + it(losses) + ", though either alone would hold"
	}
	return "both " + main + " and " + second + " hang on " + it(losses) + ", though either alone would hold"
}

// it is the pronoun for what is lost.
func it(losses []solve.Loss) string {
	if len(losses) > 1 {
		return "them"
	}
	return "it"
}
