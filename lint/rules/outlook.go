package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lint"
)

// outlook is a change that mends a rig, as it looks before the text is changed.
type outlook[change any] struct {
	*lint.Outlook
	change change
}

// bestFirst sorts changes by the advantage that they give, the highest first; equals
// stay in their order.
func bestFirst[change any](list []outlook[change]) []outlook[change] {
	slices.SortStableFunc(list, func(a, b outlook[change]) int {
		switch {
		case a.Better(b.Outlook):
			return -1
		case b.Better(a.Outlook):
			return 1
		}
		return 0
	})
	return list
}

// explain reports why the rig does not do its job, with a fix if the trial of it proves
// that it mends the rig.
func explain(p *lint.Pass, t *lint.Trial, d diag.Diagnostic) {
	if !p.Proves(t, d) {
		d.Fixes = nil
	}
	p.Explain(d)
}
