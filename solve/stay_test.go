package solve_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
)

// outcome of every loss as lines such as "clip top: falls".
func outcomes(losses []solve.Loss) string {
	var lines []string
	for _, l := range losses {
		line := string(l.Kind) + " " + l.Part.Name
		if l.Rope != nil {
			line = string(l.Kind) + " " + l.Rope.Line.Name + " at " + l.Part.Name
		}
		lines = append(lines, line+": "+string(l.Answer))
	}
	return strings.Join(lines, "\n")
}

// lose gives what comes of losing something of a part.
func lose(t *testing.T, res *solve.Result, kind solve.LostKind, part string) solve.Stay {
	p := res.Rig.Part(part)
	require.NotNil(t, p, part)
	return res.After(solve.Lost{Kind: kind, Part: p})
}

func TestEveryLossOfAThreeToOneInFileOrder(t *testing.T) {
	res := solved(t, `
anchor head
ring plate on head
pulley top on plate holds
hitch grab
pulley runner on grab
load litter
hauler team
rope long
reeve long: litter / grab / top \ runner / team
`)
	want := `anchor head: falls
part plate: falls
clip plate: falls
bend top: falls
hold top: falls
clip top: falls
grip grab: held
bend runner: held
clip runner: held
line long: falls
tie long at litter: falls`
	assert.Equal(t, want, outcomes(res.Losses()))

	hauling := outcomes(res.LossesWhileHauling())
	assert.Contains(t, hauling, "hold top: held", "the team holds it through the tractor")
	assert.Contains(t, hauling, "grip grab: held", "the capture holds it")
	assert.Contains(t, hauling, "bend top: caught", "the rope that led over it lies loose between grab and runner")
	assert.Contains(t, hauling, "clip top: jams", "all comes down until it hangs on the team's end")
}

func TestHandsOnTheRopeHoldWhatNoCaptureDoes(t *testing.T) {
	res := solved(t, parts+`
anchor head
pulley top on head
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team
`)
	assert.Equal(t, solve.Down, res.Released.Answer)
	assert.Equal(t, solve.Held, res.AfterWhileHauling(solve.Lost{}).Answer)
	without := res.AfterWhileHauling(solve.LostOf(res.Rig, res.Rig.Part("grab")))
	assert.Equal(t, solve.Jams, without.Answer, "the litter draws runner up to top")
	require.Len(t, without.Meeting, 1)
	assert.Equal(t, "top", without.Meeting[0][0].Name)
	assert.Equal(t, "runner", without.Meeting[0][1].Name)
	assert.False(t, without.AtKnot)
}

const twoLegs = parts + `
anchor oak
anchor elm
focal master
leg left from oak to master angle -30 deg
leg right from elm to master angle 30 deg
pulley top on master holds
rope long
reeve long: litter / top \ team
`

func TestAFocalPointStandsOnTheLegThatIsLeft(t *testing.T) {
	res := solved(t, twoLegs)
	want := `anchor oak: held
anchor elm: held
leg left: held
leg right: held
bend top: falls
hold top: falls
clip top: falls
line long: falls
tie long at litter: falls`
	assert.Equal(t, want, outcomes(res.Losses()))
	assert.Equal(t, solve.Down, res.Without(res.Rig.Part("master")).Answer, "asked for by name it is lost whole")
}

func TestAFocalPointFallsWithItsLastLeg(t *testing.T) {
	res := solved(t, parts+`
anchor oak
ring eye on oak
focal master
leg left from eye to master angle -30 deg
leg right from oak to master angle 30 deg
pulley top on master holds
rope long
reeve long: litter / top \ team
`)
	assert.Equal(t, solve.Down, res.Without(res.Rig.Part("oak")).Answer, "both legs come from it")
	assert.Equal(t, solve.Held, res.Without(res.Rig.Part("eye")).Answer)
	assert.Equal(t, solve.Held, res.Without(res.Rig.Part("left")).Answer)
}

func TestAFocalPointFallsWithItsOnlyLeg(t *testing.T) {
	res := solved(t, parts+`
anchor oak
ring eye on oak
focal master
leg only from eye to master
rope long
reeve long: litter / master
`)
	want := `anchor oak: falls
part eye: falls
clip eye: falls
leg only: falls
line long: falls
tie long at litter: falls
tie long at master: falls`
	assert.Equal(t, want, outcomes(res.Losses()))
}

func TestALostAnchorKeepsWhatIsOnItTogether(t *testing.T) {
	// The two ropes meet at the oak: without the ground under it the elm holds all.
	res := solved(t, parts+`
anchor oak
anchor elm
rope low
rope high
reeve low: litter / oak
reeve high: oak / elm
`)
	assert.Equal(t, solve.Held, lose(t, res, solve.LostAnchor, "oak").Answer)
	assert.Equal(t, solve.Held, lose(t, res, solve.LostAnchor, "elm").Answer)
	assert.Equal(t, solve.Held, lose(t, res, solve.LostLine, "high").Answer)
	assert.Equal(t, solve.Down, lose(t, res, solve.LostLine, "low").Answer)
	assert.Equal(t, solve.Down, lose(t, res, solve.LostPart, "oak").Answer, "broken off with both its ties")
}

func TestOneTieOfTwo(t *testing.T) {
	// A becket: the rope is tied to the block that it also runs over.
	res := solved(t, parts+`
anchor head
pulley low
pulley top on head holds
rope long
rope strap
reeve long: low / top \ low / team
reeve strap: litter / low
`)
	require.Equal(t, solve.Held, res.Released.Answer)
	long := res.Rig.Ropes[0]
	tie := res.After(solve.Lost{Kind: solve.LostTie, Part: res.Rig.Part("low"), Rope: long, Node: 0})
	assert.Equal(t, solve.Down, tie.Answer, "the end comes free and runs out of top")
}

func TestKnots(t *testing.T) {
	res := solved(t, parts+`
anchor head
anchor tree
knot middle on litter
rope long
reeve long: head \ middle / tree
`)
	assert.Equal(t, solve.Held, res.Released.Answer)
	// The knot undone, the rope hangs in a loop and the litter is on nothing.
	assert.Equal(t, solve.Down, lose(t, res, solve.LostKnot, "middle").Answer)
	assert.Equal(t, solve.Down, lose(t, res, solve.LostClip, "middle").Answer)
	for i := range res.Rig.Ropes[0].Nodes {
		part := res.Rig.Ropes[0].Nodes[i].Part
		if part.Name != "middle" {
			assert.Equal(t, solve.Held, res.After(solve.Lost{Kind: solve.LostTie, Part: part, Rope: res.Rig.Ropes[0], Node: i}).Answer)
		}
	}
}

func TestAClosedLoopIsLostAsOne(t *testing.T) {
	res := solved(t, parts+`
anchor head
pulley top on head
pulley low on litter
sling round
reeve round: top \ low / loop
`)
	want := `anchor head: falls
bend top: falls
clip top: falls
bend low: falls
clip low: falls
line round: falls`
	assert.Equal(t, solve.Held, res.Released.Answer)
	assert.Equal(t, want, outcomes(res.Losses()))
}

func TestGroundFrictionAlone(t *testing.T) {
	const sledge = `
anchor head
load sledge mass 100 kg slope 10 deg friction 0.5
load litter mass 80 kg
hauler team
rope long
rope other
reeve long: sledge / head \ team
`
	res := solved(t, sledge+"reeve other: litter / head\n")
	require.Equal(t, solve.Held, res.Released.Answer)
	require.Len(t, res.Released.Grounded, 1)
	assert.Equal(t, "sledge", res.Released.Grounded[0].Parts[0].Name)
	fallen := lose(t, res, solve.LostLine, "other")
	assert.Equal(t, solve.Down, fallen.Answer)
	assert.Len(t, fallen.Sinking, 1, "the sledge stays")
	assert.Len(t, fallen.Grounded, 1)

	held := solved(t, strings.ReplaceAll(sledge, `\ team`, "")+"reeve other: litter / head\n")
	assert.Empty(t, held.Released.Grounded, "the rope would hold it without friction")
	assert.Len(t, lose(t, held, solve.LostLine, "long").Grounded, 1)

	steep := solved(t, strings.ReplaceAll(sledge, "slope 10", "slope 40")+"reeve other: litter / head\n")
	assert.Equal(t, solve.Down, steep.Released.Answer)
	assert.Empty(t, steep.Released.Grounded)
}

func TestLossesInFloatingPoint(t *testing.T) {
	// Legs at 90° on a moving bend: no force is a fraction, and still what carries
	// nothing is known to carry nothing.
	res := solved(t, parts+`
anchor head
anchor tree
pulley top on head holds
pulley runner
rope long
rope strap
rope spare
reeve long: tree \ runner (angle 90 deg) / top \ team
reeve strap: litter / runner
reeve spare: litter / head
`)
	require.Equal(t, solve.Held, res.Released.Answer)
	for _, loss := range res.Losses() {
		want := solve.Held
		if loss.Kind == solve.LostAnchor && loss.Part.Name == "head" {
			want = solve.Jams // all comes down until it hangs on the rope to the tree
		}
		assert.Equal(t, want, loss.Answer, described(loss.Lost))
	}
}

func TestAnAnswerDoesNotDependOnWhatWasAskedBefore(t *testing.T) {
	rig := read(t, threeToOne)
	all := solve.Rig(rig).Losses()
	for i := len(all) - 1; i >= 0; i-- {
		alone := solve.Rig(rig).After(all[i].Lost)
		assert.Equal(t, all[i].Answer, alone.Answer, described(all[i].Lost))
	}
}
