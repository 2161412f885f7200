package rules

import (
	"embed"
	"slices"

	"fairlead/lint"
)

//go:embed *.md
var pages embed.FS

// faults explain why a rig does not do its job, in the order in which the first
// that can does. A rope written backward (reeved-backward) comes before all of them: the
// reading of the text finds it, and then no rule is asked.
var faults = []*lint.Rule{
	pullsItself,
	hitchBackward,
	hitchOnWrongStrand,
	opposedTeams,
	jammed,
	unbalanced,
	runsAwayUpward,
	notHeldWhileHauling,
	haulRaisesNothing,
	tiedBetweenFixed,
	noLoad,
}

// catches are about what keeps the load when hands let go or a part fails. Of those on the
// whistle test the first that fits explains the rig, and so of those on lines that a loss
// takes together.
var catches = []*lint.Rule{
	captureOffLoad,
	heldOnlyByJam,
	noCapture,
	sharedAnchorBackup,
	commonLink,
	noBackup,
	backupDrop,
	backupLoaded,
	looseEnd,
	cannotBeLowered,
	brakeHandTooWeak,
	haulerInFallLine,
}

// forces are about what anchors, hardware and people must bear.
var forces = []*lint.Rule{
	redirectLoadsAnchor,
	partOverloaded,
	hitchSlips,
	clampDamagesRope,
	loadSharedUnknown,
	wideAnchorAngle,
	anchorPulledTwoWays,
	pullOverLimit,
	morePeopleNeeded,
	teamCanOverload,
	peopleTimesAdvantage,
}

// places are about parts where they stand.
var places = []*lint.Rule{
	idleHitch,
	slackStrand,
	straightThrough,
	moreBendsThanSheaves,
	gateUnlocked,
	threeWayCarabiner,
	ropeOnTextile,
	bareEdge,
	ropeOutsideDevice,
	cordToRope,
	carabinerForPulley,
	bestPulleyElsewhere,
	redirectBeforeCapture,
}

// travel is about how far a haul goes, and on how much rope.
var travel = []*lint.Rule{
	strokeAgainstPosition,
	knotMeetsBend,
	twoBlocked,
	cannotReset,
	strokeTooShort,
	setback,
	stageRunsOutFirst,
	tractorAboveCapture,
	ropeTooShort,
}

// claims are about what authors expect of their rigs.
var claims = []*lint.Rule{
	expectationFailed,
	figureUnknown,
	notComputedYet,
}

// Group is some rules about one concern, as a list of rules shows them.
type Group struct {
	Title string
	Rules []*lint.Rule
}

// Groups lists every rule under its concern, in the order in which lint.Run wants them;
// those without Check come from reading the text and from settling the claims about
// findings. No rule stands twice.
func Groups() []Group {
	groups := []Group{
		{"The rig does not do its job", faults},
		{"Nothing catches it", catches},
		{"Anchors, forces and people", forces},
		{"Parts at their places", places},
		{"Travel and rope", travel},
		{"Claims and house rules", slices.Concat(claims, lint.ClaimRules())},
		{"The text itself", nil},
	}
	var known []*lint.Rule
	for _, g := range groups {
		known = append(known, g.Rules...)
	}
	text := &groups[len(groups)-1].Rules
	for _, r := range lint.TextRules() {
		if !slices.ContainsFunc(known, func(k *lint.Rule) bool { return k.Name == r.Name }) {
			*text = append(*text, r)
		}
	}
	return groups
}

// All lists every rule in the order of Groups.
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
