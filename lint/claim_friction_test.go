package lint_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lint"
)

// Rigs of one load of 100 kg, 980.665 N.

// known is 3:1 with every efficiency 90 %: 1 + 0.9 + 0.81 = 2.71, the pull 361.9 N.
const known = `anchor head strength 30 kN
load litter mass 100 kg
hauler team people 3
pulley top on head holds litter efficiency 90 % strength 20 kN
hitch grab slips 5 to 8 kN
pulley runner on grab efficiency 90 %
rope long strength 20 kN
reeve long: litter (retains 60 to 70 %) / grab / top \ runner / team
`

// ranged is the same with 85 to 95 %: 2.5725 to 2.8525, the pull 343.8 N to 381.2 N.
var ranged = strings.ReplaceAll(known, "efficiency 90 %", "efficiency 85 to 95 %")

// half is the same, the efficiency of runner not known.
var half = strings.Replace(known, "grab efficiency 90 %", "grab", 1)

// brake lowers on a hand: a fifth of the load, 196.1 N.
const brake = `anchor head
load litter mass 100 kg
hauler team people 2
device brake on head efficiency 50 % lowering 20 % holds litter releasable
rope long
reeve long: litter / brake \ team
`

var (
	brakeUnknown = strings.Replace(brake, "efficiency 50 % lowering 20 %", "", 1) +
		"anchor tree\nsling tie friction 0.3\nreeve tie: tree ~ litter\n"
	brakeIdeal = strings.Replace(brake, "efficiency 50 % lowering 20 %", "", 1)
)

// two has two haulers, each with a friction of its own: red's 3:1 with 90 %, blue's
// redirect with an efficiency that is not known.
const two = `anchor head
anchor tree
load platform mass 100 kg
hauler red people 2 to 3
hauler blue people 4
pulley top on head holds platform efficiency 90 %
hitch grab
pulley runner on grab efficiency 90 %
pulley side on tree holds platform
rope r
rope b
reeve r: platform / grab / top \ runner / red
reeve b: platform / side \ blue
`

func TestClaimsWithFrictionThatHold(t *testing.T) {
	for rig, claims := range map[string][]string{
		known: {
			"expect actual advantage over 2.7", "expect actual advantage 2.71", "expect actual advantage 271:100",
			"expect actual advantage under 2.72:1", "expect pull under 362 N", "expect pull over 361 N",
			"expect pull under 121 N per person", "expect load on head under 981 N", "expect load on top under 981 N",
			"expect load on runner under 690 N", "expect load on runner over 680 N",
			"expect factor over 7.2", "expect factor under 7.3", "expect factor of head over 30",
			"expect factor of long over 12", "expect factor of long under 12.3", "expect factor of grab over 7",
			"expect advantage 3:1",
		},
		ranged: {
			"expect actual advantage over 2.57", "expect actual advantage under 2.86", "expect pull under 382 N",
			"expect pull over 343 N", "expect pull under 128 N per person", "expect load on runner under 716 N",
		},
		half: { // whatever the friction is
			"expect actual advantage under 3.01", "expect pull over 326 N", "expect load on head over 980 N",
			"expect factor of head under 31", "expect factor under 31", "expect load on head over 0.9",
			"expect advantage 3:1",
		},
		brake: {"expect lower hand under 197 N", "expect lower hand over 196 N", "expect pull under 2 kN", "expect pull over 1.9 kN"},
		brakeIdeal: {
			"expect lower hand under 981 N", "expect lower hand over 980 N", "expect load on brake under 2 kN",
		},
		brakeUnknown: {"expect lower hand under 1 kN", "expect pull over 980 N"},
		two: {
			"expect actual advantage over 2.7 by red", "expect pull under 182 N per person by red",
			"expect load on tree under 1 kN by red", "expect actual advantage under 3.01",
		},
	} {
		for _, claim := range claims {
			v := judged(t, rig, claim)
			assert.True(t, v.Holds, "%s: %s%s", claim, v.Message, v.Missing)
			assert.False(t, v.Unknown)
		}
	}
}

func TestClaimsWithFrictionThatFail(t *testing.T) {
	for _, c := range []struct{ rig, claim, message string }{
		{known, "expect actual advantage over 2.71", "actual advantage is 2.71:1, not over 2.71"},
		{known, "expect actual advantage over 2.7101", "actual advantage is 2.71:1, not over 2.7101"},
		{known, "expect actual advantage 3:1", "actual advantage is 2.71:1, not 3:1"},
		{known, "expect pull under 360 N", "pull is 362 N, not under 360 N"},
		{known, "expect pull 120 N per person", "pull is 121 N per person, not 120 N per person"},
		{known, "expect load on runner under 650 N", "load on runner is 688 N, not under 650 N (hauling)"},
		{known, "expect load on head under 0.5", "load on head is 1 × the load, not under 0.5 (held)"},
		{known, "expect factor over 8", "factor is 7.27 at grab, not over 8 (slips at 5 kN, carries 0.688 kN hauling)"},
		{known, "expect factor of head under 30", "factor of head is 30.6, not under 30 (bears 30 kN, carries 0.981 kN held)"},
		{known, "expect factor of long over 13", "factor of long is 12.2, not over 13 (bears 12 kN, carries 0.981 kN held)"},
		{known, "expect lower hand under 300 N", "lower hand is none, not under 300 N: top holds and is not releasable"},
		{ranged, "expect actual advantage over 2.6", "actual advantage is 2.57:1 to 2.85:1, not over 2.6"},
		{ranged, "expect actual advantage under 2.8", "actual advantage is 2.57:1 to 2.85:1, not under 2.8"},
		{ranged, "expect actual advantage 2.71", "actual advantage is 2.57:1 to 2.85:1, not 2.71"},
		{ranged, "expect pull under 380 N", "pull is 344 N to 381 N, not under 380 N"},
		{ranged, "expect pull over 350 N", "pull is 344 N to 381 N, not over 350 N"},
		{half, "expect actual advantage over 3", "actual advantage is at most 3:1, that without friction, not over 3"},
		{half, "expect actual advantage 4", "actual advantage is at most 3:1, that without friction, not 4"},
		{half, "expect pull under 300 N", "pull is 327 N without friction, not under 300 N"},
		{half, "expect load on head under 900 N", "load on head is 981 N without friction, not under 900 N (held)"},
		{half, "expect factor of head over 31", "factor of head is 30.6 without friction, not over 31 (bears 30 kN, carries 0.981 kN held)"},
		{brake, "expect lower hand under 190 N", "lower hand is 196 N, not under 190 N"},
		{brakeUnknown, "expect lower hand over 1 kN", "lower hand is 0.981 kN without friction, not over 1 kN"},
		{two, "expect actual advantage over 2.71 by red", "actual advantage by red is 2.71:1, not over 2.71"},
		{two, "expect actual advantage over 2", "actual advantage by blue is at most 1:1, that without friction, not over 2"},
		{two, "expect load on tree over 2 kN by red", "load on tree is 0 kN to 0.981 kN, not over 2 kN (held)"},
	} {
		v := judged(t, c.rig, c.claim)
		assert.False(t, v.Holds || v.Unknown, c.claim)
		assert.Equal(t, c.message, v.Message, c.claim)
	}
}

func TestClaimsThatAreNotConfirmed(t *testing.T) {
	for _, c := range []struct{ rig, claim, message, lacking string }{
		{half, "expect actual advantage over 2.4",
			"actual advantage over 2.4 is not confirmed: it is 3:1 without friction, but runner has no efficiency", "runner"},
		{half, "expect actual advantage 3:1",
			"actual advantage 3:1 is not confirmed: it is 3:1 without friction, but runner has no efficiency", "runner"},
		{half, "expect pull under 400 N",
			"pull under 400 N is not confirmed: it is 327 N without friction, but runner has no efficiency", "runner"},
		{half, "expect pull under 200 N per person",
			"pull under 200 N per person is not confirmed: it is 109 N per person without friction, but runner has no efficiency", "runner"},
		{half, "expect load on head under 1 kN",
			"load on head under 1 kN is not confirmed: it is 0.981 kN without friction (held), but runner has no efficiency", "runner"},
		{half, "expect factor over 7",
			"factor over 7 is not confirmed: it is 7.65 at grab without friction (slips at 5 kN, carries 0.654 kN hauling), but runner has no efficiency", "runner"},
		{half, "expect factor of runner over 2", "factor of runner over 2 is not confirmed: runner has no strength", "runner"},
		{threeToOne, "expect factor over 2", "factor over 2 is not confirmed: no part has a strength", ""},
		{threeToOne, "expect actual advantage over 2",
			"actual advantage over 2 is not confirmed: it is 3:1 without friction, but top and runner have no efficiency", "top runner"},
		{brakeUnknown, "expect lower hand under 300 N",
			"lower hand under 300 N is not confirmed: it is 981 N without friction, but brake has no efficiency", "brake"},
		{two, "expect actual advantage over 0.5",
			"actual advantage by blue over 0.5 is not confirmed: it is 1:1 without friction, but side has no efficiency", "side"},
		{two, "expect load on platform under 3 kN",
			"load on platform under 3 kN is not confirmed: it is 0.981 kN without friction (held), but side has no efficiency", "side"},
		{redAndBlue, "expect pull under 9 kN per person",
			"pull by blue under 9 kN per person is not confirmed: blue does not say how many people pull", "blue"},
		{"anchor head\nload a\nrope r\nreeve r: a / head\n", "expect load on head under 3 kN",
			"load on head under 3 kN is not confirmed: it is the weight of the load (held), but a has no mass", "a"},
		{threeToOne, "expect stroke over 2 m", "stroke over 2 m is not confirmed: head, litter and grab have no position", "head litter grab"},
		{strings.Replace(placed, "grab at 4 m", "grab", 1), "expect stroke over 2 m",
			"stroke over 2 m is not confirmed: grab has no position", "grab"},
		{"anchor head strength 9 kN\nload a\nrope r\nreeve r: a / head\n", "expect factor over 3",
			"factor over 3 is not confirmed: a has no mass", "a"},
	} {
		v := judged(t, c.rig, c.claim)
		assert.True(t, v.Unknown, c.claim)
		assert.False(t, v.Holds, c.claim)
		assert.Equal(t, c.message, v.Message, c.claim)
		assert.Equal(t, c.lacking, names(v.Lacking), c.claim)
	}
}

func names(lacking []lint.Lack) string {
	var list []string
	for _, l := range lacking {
		list = append(list, l.Part.Name)
	}
	return strings.Join(list, " ")
}
