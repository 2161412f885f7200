package lint_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/solve"
)

// threeToOne is a right rig: 3:1 simple, held by top, falls without head.
const threeToOne = `anchor head
load litter mass 180 kg
hauler team people 3
pulley top on head holds litter
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team
`

// redAndBlue has two haulers, 3:1 and 1:1.
const redAndBlue = `anchor head
anchor tree
load platform mass 150 kg
hauler red people 2 to 3
hauler blue
pulley top on head holds platform
hitch grab
pulley runner on grab
pulley side on tree holds platform
rope r
rope b
reeve r: platform / grab / top \ runner / red
reeve b: platform / side \ blue
`

// judged gives the verdict on one claim about a rig.
func judged(t *testing.T, rig, claim string) lint.Verdict {
	t.Helper()
	f := load.Text("yard.rig", rig+claim+"\n")
	require.Empty(t, f.Problems)
	require.Len(t, f.Model.Rigs[0].Claims, 1)
	return lint.Judge(solve.Rig(f.Model.Rigs[0]), lint.HouseOf(f), f.Model.Rigs[0].Claims[0])
}

func TestClaimsThatHold(t *testing.T) {
	for rig, claims := range map[string][]string{
		threeToOne: {
			"expect advantage 3:1", "expect advantage 6:2", "expect advantage 3", "expect advantage over 2.9",
			"expect advantage under 3.1:1", "expect class simple", "expect travel 3 m per 1 m",
			"expect travel 15 ft per 5 ft", "expect travel under 301 cm per 1 m",
			"expect held when released", "expect held", "expect not held without head", "expect not held without long",
			"expect held without grab", "expect load on head under 1.8 kN", "expect load on head under 1800 N",
			"expect load on head 1", "expect load on grab 2:3", "expect load on runner under 3:4", "expect load on head over 98:99",
			"expect load on runner under 0.7", "expect load on grab under 0.7",
			"expect load on long under 1.8 kN", "expect load on team under 600 N", "expect pull under 600 N",
			"expect pull under 200 N per person", "expect pull over 190 N per person", "expect pull under 140 lbf",
			"expect advantage 3:1 by team", "expect finding no-capture",
		},
		redAndBlue: {
			"expect advantage 3:1 by red", "expect advantage 1:1 by blue", "expect advantage under 4",
			"expect pull under 300 N per person by red", "expect held without head", "expect held without b",
			"expect load on tree under 3 kN",
		},
	} {
		for _, claim := range claims {
			v := judged(t, rig, claim)
			assert.True(t, v.Holds, "%s: %s%s", claim, v.Message, v.Missing)
		}
	}
}

func TestClaimsThatFail(t *testing.T) {
	const fallen = "anchor head\nload litter\nhauler team\nrope long\npulley top on head\npulley runner\n" +
		"reeve long: litter / top \\ runner / team\n"
	const apart = "anchor head\nload box\nload bag\nhauler team\npulley runner on box\nrope long\nrope tie\n" +
		"reeve long: head \\ runner / team\nreeve tie: bag / head\n"
	const slanted = "anchor head\nload box mass 100 kg\nhauler team\npulley runner on box holds head\nrope long\nrope also\n" +
		"reeve long: head (angle 60 deg) \\ runner / team\nreeve also: head (angle 30 deg) ~ box\n"
	for _, c := range []struct{ rig, claim, message string }{
		{threeToOne, "expect advantage 5:2", "advantage is 3:1, not 5:2"},
		{threeToOne, "expect advantage over 3", "advantage is 3:1, not over 3"},
		{threeToOne, "expect class complex", "class is simple, not complex"},
		{threeToOne, "expect travel 2 ft per 1 ft", "travel is 3 ft per 1 ft, not 2 ft per 1 ft"},
		{threeToOne, "expect not held when released", "hands off, the load is held"},
		{threeToOne, "expect held without top", "without top, litter falls"},
		{threeToOne, "expect load on head under 1.7 kN", "load on head is 1.77 kN, not under 1.7 kN (held)"},
		{threeToOne, "expect load on runner over 3000 N", "load on runner is 1177 N, not over 3000 N (hauling)"},
		{threeToOne, "expect load on grab 3:4", "load on grab is 2/3 × the load, not 3:4 (hauling)"},
		{threeToOne, "expect load on head over 1:1", "load on head is 1 × the load, not over 1:1 (held)"},
		{threeToOne, "expect load on head over 1", "load on head is 1 × the load, not over 1 (held)"},
		{threeToOne, "expect pull under 500 N", "pull is 588 N, not under 500 N"},
		{threeToOne, "expect pull 200 N per person", "pull is 196 N per person, not 200 N per person"},
		{threeToOne, "expect load on head under 1.76519 kN", "load on head is 1.7652 kN, not under 1.76519 kN (held)"},
		{threeToOne, "expect pull under 588.399 N", "pull is 588.399 N, not under 588.399 N"},
		{redAndBlue, "expect advantage 3:1", "advantage by blue is 1:1, not 3:1"},
		{redAndBlue, "expect pull under 200 N per person by red", "pull by red is 163 N to 245 N per person, not under 200 N per person"},
		{fallen, "expect advantage 1:1", "advantage is none, not 1:1: the haul does not raise the load"},
		{fallen, "expect travel 1 m per 1 m", "travel is none, not 1 m per 1 m: the haul does not raise the load"},
		{fallen, "expect class simple", "class is none, not simple: the haul does not raise the load"},
		{fallen, "expect pull under 1 kN", "pull is none, not under 1 kN: the haul does not raise the load"},
		{fallen, "expect load on head under 2", "load on head is unknown, not under 2: no forces balance the load"},
		{fallen, "expect held when released", "hands off, litter falls"},
		{apart, "expect advantage 2:1", "advantage is no single figure, not 2:1: several loads move, and raise names none of them"},
		{"load litter\n", "expect advantage 2:1", "advantage is none, not 2:1: the rig has no load or no rope to compute with"},
		{"load litter\n", "expect held when released", "the rig has no load or no rope to compute with"},
		{"anchor head\nload a\nrope r\nreeve r: a / head\n", "expect advantage 1:1", "advantage is none, not 1:1: nobody hauls"},
		{fallen, "expect lower hand under 1 kN", "lower hand is none, not under 1 kN: the load falls when team gives rope"},
		{fallen, "expect actual advantage over 1", "actual advantage is none, not over 1: the haul does not raise the load"},
		{"load litter\n", "expect lower hand under 1 kN", "lower hand is none, not under 1 kN: the rig has no load or no rope to compute with"},
		{"anchor head\nload a\nrope r\nreeve r: a / head\n", "expect lower hand under 1 kN", "lower hand is none, not under 1 kN: nobody has the rope in hand"},
		{"load litter\n", "expect stroke over 2 m", "stroke is none, not over 2 m: the rig has no load or no rope to compute with"},
		{apart, "expect actual advantage over 1", "actual advantage is no single figure, not over 1: several loads move, and raise names none of them"},
		{slanted, "expect load on head over 2 kN", "load on head is at most 0.981 kN, not over 2 kN (held)"},
	} {
		f := load.Text("yard.rig", c.rig+c.claim+"\n")
		v := lint.Judge(solve.Rig(f.Model.Rigs[0]), lint.HouseOf(f), f.Model.Rigs[0].Claims[0])
		assert.False(t, v.Holds || v.Unknown, c.claim)
		assert.Equal(t, c.message, v.Message, c.claim)
	}
}

// placed is the same with positions, a slack back-tie and a head on a strop: without
// the head litter drops by the slack of the back-tie, and without the top the hands
// hold it once the rope is straight.
const placed = `anchor head at 9 m
anchor tree at 9 m
load litter mass 180 kg at 1 m
hauler team
ring plate at 8 m
pulley top on plate holds litter
hitch grab at 4 m
pulley runner on grab
rope long
sling strop
sling back-tie length 1.5 m
reeve strop: head \ plate
reeve back-tie: tree ~ plate
reeve long: litter / grab / top \ runner / team
`

// unheld stays up by hands on the rope alone.
const unheld = `anchor head at 9 m
load litter mass 180 kg at 1 m
hauler team
pulley top on head
pulley low on litter
rope long
reeve long: head \ low / top \ team
`

func TestClaimsAboutStrokeAndLoss(t *testing.T) {
	unending := "load litter mass 9 kg\nhauler team\nrope long\nreeve long: litter / team\n"
	feet := "units ft\n"
	for _, c := range []struct{ rig, claim, message string }{
		{placed, "expect stroke over 3.9 m", ""},
		{placed, "expect stroke 4 m", ""},
		{placed, "expect stroke under 14 ft", ""},
		{placed, "expect stroke over 4 m", "stroke is 4 m, not over 4 m: grab meets top"},
		{placed, "expect stroke over 14 ft by team", "stroke is 13.1 ft, not over 14 ft: grab meets top"},
		{unending, "expect stroke over 2 m", ""},
		{unending, "expect stroke under 2 m", "stroke is without end, not under 2 m: no two parts meet"},
		{placed, "expect not held without head", ""},
		{placed, "expect held without head",
			"without head, litter drops by 0.5 m until the slack of tree ~ plate catches it; no house rule allows a drop"},
		{feet + placed, "expect held without head",
			"without head, litter drops by 1.64 ft until the slack of tree ~ plate catches it; no house rule allows a drop"},
		{placed, "expect held without tree while hauling", ""},
		{placed, "expect not held without long while hauling", ""},
		{placed, "expect held without long while hauling", "without long, hands on the rope, litter falls"},
		{unheld, "expect held while hauling", ""},
		{unheld, "expect not held when released", ""},
		{unheld, "expect held", "hands off, litter falls"},
		{unheld, "expect not held while hauling", "hands on the rope, the load is held"},
		{unheld, "expect held without low while hauling", "without low, hands on the rope, litter falls"},
	} {
		v := judged(t, c.rig, c.claim)
		assert.Equal(t, c.message == "", v.Holds, c.claim)
		assert.False(t, v.Unknown, c.claim)
		assert.Equal(t, c.message, v.Message, c.claim)
	}
}
