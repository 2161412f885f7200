package lint

import (
	"slices"

	"fairlead/lang/diag"
)

// Rule is one kind of finding.
type Rule struct {
	// Name is what users write and read, such as "no-capture".
	Name string
	// Severity is the usual one. A finding may differ where the rule's page says so.
	Severity diag.Severity
	// Summary says in one line what is wrong.
	Summary string
	// Check looks at one rig and reports what it finds. It is nil for a rule whose
	// findings come from somewhere else: from reading the text, or from settling
	// the claims after all rules have run.
	Check func(*Pass)
	// Latent says that it looks only at rigs that stay up, hands off, so that its findings
	// come to light once a rig that does not do its job, or is not held, is mended: they
	// are no reason against a fix that does that.
	Latent bool
	// Final says that no author can expect or accept what it reports: it is about what
	// the file claims itself.
	Final bool
}

// Names lists, sorted, the name of every rule that may be reported when the given
// rules are run: those of the text and of the claims are among them.
func Names(rules []*Rule) []string {
	var names []string
	for _, list := range [][]*Rule{rules, TextRules(), ClaimRules()} {
		for _, r := range list {
			names = append(names, r.Name)
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}
