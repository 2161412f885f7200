package rules

import (
	"slices"

	"fairlead/lint"
	"fairlead/solve"
)

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
