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

// Group is a section of the catalogue.
type Group struct {
	// Title says what its rules are about, as a heading.
	Title string
	Rules []*lint.Rule
}

// Groups gives the catalogue. Every rule is in one group; the rules of all groups,
// one after another, are in the order in which lint.Run wants them.
func Groups() []Group {
	groups := []Group{
		{"The rig does not do its job", faults},
		{"It works, but", hazards},
		{"What the rig claims", slices.Concat(claims, lint.ClaimRules())},
	}
	return append(groups, Group{"The text itself", textRules(groups)})
}

// textRules gives the rules of the text that are in none of the groups.
func textRules(groups []Group) []*lint.Rule {
	return slices.DeleteFunc(lint.TextRules(), func(r *lint.Rule) bool {
		return slices.ContainsFunc(groups, func(g Group) bool {
			return slices.ContainsFunc(g.Rules, func(known *lint.Rule) bool { return known.Name == r.Name })
		})
	})
}

// All lists every rule, in the order in which lint.Run wants them; those without
// Check come from reading the text and from settling the claims about findings.
func All() []*lint.Rule {
	var list []*lint.Rule
	for _, g := range Groups() {
		list = append(list, g.Rules...)
	}
	return list
}

// Page gives the page of a rule as Markdown; ok is false if there is no such rule.
func Page(name string) (markdown string, ok bool) {
	text, err := pages.ReadFile(name + ".md")
	return string(text), err == nil
}
