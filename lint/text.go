package lint

import (
	"fairlead/lang/diag"
	"fairlead/lang/resolve"
	"fairlead/lang/syntax"
)

// TextRules lists the rules whose findings come from reading a file: its text
// first, then its names and values.
func TextRules() []*Rule {
	list := []*Rule{
		{Name: syntax.RuleSyntax, Severity: diag.Error, Summary: "something stands where it cannot, or is missing"},
		{Name: syntax.RuleUnknownStatement, Severity: diag.Error, Summary: "a line that begins with no keyword"},
		{Name: syntax.RuleUnknownClause, Severity: diag.Error, Summary: "a clause that is misspelt or that the kind of part does not take"},
		{Name: syntax.RuleRepeatedClause, Severity: diag.Error, Summary: "a clause that stands twice"},
		{Name: syntax.RuleReservedName, Severity: diag.Error, Summary: "a word of the notation that stands as a name"},
		{Name: syntax.RuleBadUnit, Severity: diag.Error, Summary: "a unit that is unknown, missing or of another kind"},
		{Name: syntax.RuleBadCharacter, Severity: diag.Error, Summary: "a character or byte that no rig file holds"},
		{Name: syntax.RuleGluedStroke, Severity: diag.Advice, Summary: "a stroke without white space around it"},
	}
	for _, r := range resolve.Rules() {
		list = append(list, &Rule{Name: r.Name, Severity: r.Severity, Summary: r.Summary})
	}
	return list
}
