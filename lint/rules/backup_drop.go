package rules

import (
	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var backupDrop = &lint.Rule{
	Name:     "backup-drop",
	Severity: diag.Advice,
	Summary:  "one part lost, a load drops further than the house allows until it is caught; a warning where people hang on it or stand below it",
	Check:    checkBackupDrop,
	Latent:   true,
}

// checkBackupDrop compares the drop after each loss, the load being caught, with what the
// house allows. A drop that is not known is not allowed.
func checkBackupDrop(p *lint.Pass) {
	limit := p.DropLimit()
	if limit == nil || p.Result.Status == solve.Unsolved || !p.Keeps(p.Result.Released) {
		return
	}
	var known, unknown []solve.Loss
	for _, l := range p.Losses() {
		switch {
		case l.Answer != solve.Caught || p.Keeps(l.Stay):
		case l.Drop.Known():
			known = append(known, l)
		default:
			unknown = append(unknown, l)
		}
	}
	reportLosses(p, known, func(losses []solve.Loss) string {
		return lossWords(p, losses) + "; the house allows a drop " + limit.Wanted()
	}, limit.Related()...)
	reportLosses(p, unknown, func(losses []solve.Loss) string {
		return lossWords(p, losses) + ", and the house allows a drop " + limit.Wanted() + ": " + lint.WhyUnknown(losses[0].Drop)
	}, limit.Related()...)
}
