package rules

import (
	"embed"
	"slices"

	"fairlead/lint"
)

//go:embed *.md
var pages embed.FS

// faults explain why a rig does not do its job, in the order in which the first
// that can does.
var faults = []*lint.Rule{
	hitchBackward,
	hitchOnWrongStrand,
	jammed,
	unbalanced,
	runsAwayUpward,
	notHeldWhileHauling,
	haulRaisesNothing,
}

// hazards are found in rigs that work.
var hazards = []*lint.Rule{
	noCapture,
	redirectLoadsAnchor,
	idleHitch,
	slackStrand,
	straightThrough,
}

// claims are about what authors expect of their rigs.
var claims = []*lint.Rule{
	expectationFailed,
	figureUnknown,
	notComputedYet,
}

// All lists every rule, in the order in which lint.Run wants them; those without
// Check come from reading the text and from settling the claims about findings.
func All() []*lint.Rule {
	list := slices.Concat(faults, hazards, claims, lint.ClaimRules())
	for _, r := range lint.TextRules() {
		if !slices.ContainsFunc(list, func(known *lint.Rule) bool { return known.Name == r.Name }) {
			list = append(list, r)
		}
	}
	return list
}

// Page gives the page of a rule as Markdown; ok is false if there is no such rule.
func Page(name string) (markdown string, ok bool) {
	text, err := pages.ReadFile(name + ".md")
	return string(text), err == nil
}
