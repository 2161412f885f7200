package syntax

// The names under which faults of the text are reported. GluedStroke is advice,
// all others are errors.
const (
	// RuleSyntax: something stands where it cannot, or is missing.
	RuleSyntax = "syntax"
	// RuleBadUnit: a unit that is unknown, missing or of another dimension.
	RuleBadUnit = "bad-unit"
	// RuleUnknownClause: a clause that is misspelt or that the kind does not take.
	RuleUnknownClause = "unknown-clause"
	// RuleRepeatedClause: a clause, or "on", stands twice.
	RuleRepeatedClause = "repeated-clause"
	// RuleReservedName: a word of the notation stands as a name.
	RuleReservedName = "reserved-name"
	// RuleUnknownStatement: a line that begins with no keyword.
	RuleUnknownStatement = "unknown-statement"
	// RuleGluedStroke: a stroke without white space around it.
	RuleGluedStroke = "glued-stroke"
	// RuleBadCharacter: a character or byte that no rig file holds.
	RuleBadCharacter = "bad-character"
)
