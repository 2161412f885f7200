package resolve

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/syntax"
)

// Rule is one kind of fault that this package reports.
type Rule struct {
	// Name is what stands in Diagnostic.Rule.
	Name string
	// Severity is the usual one; a finding may be milder where it says so.
	Severity diag.Severity
	// Summary says in one line what is wrong.
	Summary string
}

var (
	unknownPart        = Rule{"unknown-part", diag.Error, "a name that no part of the rig has"}
	unknownRig         = Rule{"unknown-rig", diag.Error, "an include of a rig that neither the file nor one that it uses has"}
	unknownModel       = Rule{"unknown-model", diag.Advice, "a model that no stock statement defines; its values stay unset"}
	duplicateName      = Rule{"duplicate-name", diag.Error, "a name that is given twice"}
	missingReeve       = Rule{"missing-reeve", diag.Error, "a line without a reeving line, or (advice) a reeving line whose rope has no statement"}
	duplicateUnits     = Rule{"duplicate-units", diag.Error, "a second units statement for one rig"}
	duplicateReeve     = Rule{"duplicate-reeve", diag.Error, "a second reeving line for one rope"}
	unusedPart         = Rule{"unused-part", diag.Advice, "a part that no rope touches and that carries nothing"}
	duplicateHouseRule = Rule{"duplicate-house-rule", diag.Warning, "a line of house rules that a later one of the same house rules makes void"}
	clipCircle         = Rule{"clip-circle", diag.Error, "parts clipped to one another in a circle"}
	onPerson           = Rule{"on-person", diag.Error, "a part clipped to people who stand on the ground"}
	wrongKind          = Rule{"wrong-kind", diag.Error, "a part named where its kind cannot be"}
	strokeAgainst      = Rule{"stroke-against-position", diag.Error, "a stroke that contradicts the positions of its two parts"}
	reevedBackward     = Rule{"reeved-backward", diag.Error, "a rope written from its pulled end to its loaded end"}
	hitchTurnsRope     = Rule{"hitch-turns-rope", diag.Error, "a hitch or clamp at which the rope turns back"}
	bendCannotTie      = Rule{"bend-cannot-tie", diag.Error, "a rope that ends at an edge, where nothing can be tied"}
	nodeNeedsEnd       = Rule{"node-needs-end", diag.Error, "a load, people or a loose end in mid rope"}
	looseBesideSlack   = Rule{"loose-beside-slack", diag.Error, "a bend beside slack rope, which would run over it"}
	wrongAngle         = Rule{"wrong-angle", diag.Error, "an angle that cannot be, or where there is none, or (warning) that stands at a fixed end alone"}
	badValue           = Rule{"bad-value", diag.Error, "a value that the part cannot have"}
	massMissing        = Rule{"mass-missing", diag.Error, "a load without mass in a rig where another part has one"}
	holdAmbiguous      = Rule{"hold-ambiguous", diag.Error, "a holds that does not say which side of which pass it holds"}
	misplacedClause    = Rule{"misplaced-clause", diag.Error, "a clause where it can do nothing"}
	missingClause      = Rule{"missing-clause", diag.Error, "a part without a clause that its kind needs"}
	tooLarge           = Rule{"too-large", diag.Error, "a file with more common parts or copies than are computed"}
	unusableFile       = Rule{"unusable-file", diag.Error, "a use of a file that cannot be read, has errors or leads back to its user"}
	usedTwice          = Rule{"used-twice", diag.Advice, "a use of a file that is used already"}
	ambiguousName      = Rule{"ambiguous-name", diag.Error, "a rig or model that two used files define"}
	includeCircle      = Rule{"include-circle", diag.Error, "a rig that includes itself in the end"}
	leftOutNeeded      = Rule{"left-out-needed", diag.Error, "a part left out of a copy that another part of it needs"}
	wrongJoin          = Rule{"wrong-join", diag.Error, "a join of two ends that cannot be one body"}
	joinUnplaced       = Rule{"join-unplaced", diag.Advice, "a join that does not say where the one rig lies to the other"}
)

// repeatedClause is the rule of lang/syntax, for what only the meaning shows to be said
// twice.
var repeatedClause = Rule{Name: syntax.RuleRepeatedClause, Severity: diag.Error}

// Rules lists every rule of this package, in the order of the reference.
func Rules() []Rule { return slices.Clone(rules) }

var rules = []Rule{
	unknownPart, unknownRig, unknownModel, duplicateName, duplicateUnits, missingReeve, duplicateReeve,
	duplicateHouseRule, unusedPart,
	clipCircle, onPerson, wrongKind, strokeAgainst, reevedBackward, hitchTurnsRope, bendCannotTie,
	nodeNeedsEnd, looseBesideSlack, wrongAngle, badValue, massMissing, holdAmbiguous, misplacedClause,
	missingClause, unusableFile, usedTwice, ambiguousName, includeCircle, leftOutNeeded, wrongJoin, joinUnplaced,
	tooLarge,
}
