package solve_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
	"fairlead/solve"
)

// force gives what a stroke of a rope carries in a phase.
func force(t *testing.T, ph *solve.Phase, rope string, stroke int) solve.Force {
	for _, s := range ph.Strands {
		if s.Rope.Line.Name == rope && s.Index == stroke {
			require.True(t, s.Known(), "%s %d", rope, stroke)
			return s.Force
		}
	}
	require.Fail(t, "no such strand", "%s %d", rope, stroke)
	return solve.Force{}
}

func bounds(f solve.Force) [3]string {
	b := [3]string{f.Value.String(), f.Low.String(), "no limit"}
	if f.High != nil {
		b[2] = f.High.String()
	}
	return b
}

func TestTwinRopesShareInAnUnknownWay(t *testing.T) {
	res := solved(t, `
anchor left
anchor right
load litter
rope one
rope two
reeve one: litter / left
reeve two: litter / right
`)
	assert.Equal(t, solve.NoHaul, res.Status)
	assert.Equal(t, [3]string{"1/2", "0", "1"}, bounds(force(t, res.Hold(), "one", 0)))
	assert.Equal(t, "1/2", load(res.Hold(), "left"))
	assert.Equal(t, "1", load(res.Hold(), "litter"))
}

func TestHeldByTheCaptureNotByTheTendedRope(t *testing.T) {
	res := solved(t, parts+`
anchor head
anchor tree
pulley top on head holds
device plate on tree holds
tender minder
rope long
rope safety
reeve long: litter / top \ team
reeve safety: litter / plate \ minder
`)
	hold := res.Hold()
	assert.Equal(t, [3]string{"1", "0", "1"}, bounds(force(t, hold, "long", 0)))
	assert.Equal(t, [3]string{"0", "0", "1"}, bounds(force(t, hold, "safety", 0)))
	assert.Equal(t, [3]string{"0", "0", "0"}, bounds(force(t, haul(t, res), "safety", 0)), "slack while hauling")
}

func TestTagLineBelowTheLoadIsPreload(t *testing.T) {
	res := solved(t, `
anchor head
anchor floor
load litter
rope long
rope tag
reeve long: litter / head
reeve tag: litter \ floor
`)
	assert.Equal(t, [3]string{"0", "0", "no limit"}, bounds(force(t, res.Hold(), "tag", 0)))
	assert.Equal(t, [3]string{"1", "1", "no limit"}, bounds(force(t, res.Hold(), "long", 0)))
}

func TestSuccessiveGripsCountAsOne(t *testing.T) {
	res := solved(t, parts+`
anchor head
pulley top on head holds
ring plate
hitch lower on plate
hitch upper on plate
pulley runner on plate
rope long
reeve long: litter / lower / upper / top \ runner / team
`)
	ph := haul(t, res)
	require.Equal(t, "3", ph.Ideal.String())
	assert.Equal(t, "2/3", load(ph, "lower"), "each is rated for all of it")
	assert.Equal(t, "2/3", load(ph, "upper"))
	between := force(t, ph, "long", 1)
	assert.Equal(t, [2]string{"1/3", "1"}, [2]string{between.Low.String(), between.High.String()})
	assert.Equal(t, "2/3", load(ph, "plate"))
}

func TestAngleAtAMovingBend(t *testing.T) {
	const text = `
anchor left
pulley runner
load litter on runner
hauler team
rope long
reeve long: left \ runner (angle %ANGLE% deg) / team
`
	// Two strands at half the angle from the line each: 2·T·cos(θ/2) = W.
	ph := haul(t, solved(t, withAngle(text, "120")))
	assert.Equal(t, "1", ph.Ideal.String(), "120 degrees stay exact")
	assert.True(t, ph.Ideal.IsExact())
	ph = haul(t, solved(t, withAngle(text, "90")))
	assert.InDelta(t, math.Sqrt2, ph.Ideal.Float(), 1e-9)
	assert.False(t, ph.Ideal.IsExact())
}

func TestAngleAtAFixedBendChangesOnlyItsLoad(t *testing.T) {
	const text = parts + `
anchor head
anchor tree
pulley corner on tree
rope long
reeve long: litter / head \ corner (angle %ANGLE% deg) / team
`
	ph := haul(t, solved(t, withAngle(text, "90")))
	assert.Equal(t, "1", ph.Ideal.String())
	assert.True(t, ph.Ideal.IsExact())
	for _, p := range ph.Parts {
		if p.Part.Name == "corner" || p.Part.Name == "tree" {
			assert.InDelta(t, math.Sqrt2, p.Value.Float(), 1e-9)
			assert.False(t, p.AtMost)
		}
	}
	ph = haul(t, solved(t, withAngle(text, "120")))
	assert.Equal(t, "1", load(ph, "corner"))
}

func TestForcesThatAreNotParallelAreAddedUp(t *testing.T) {
	ph := haul(t, solved(t, parts+`
anchor head
pulley top on head
pulley corner on head
rope long
reeve long: litter / top \ corner (angle 120 deg) / team
`))
	for _, p := range ph.Parts {
		if p.Part.Name == "head" {
			assert.Equal(t, "3", p.Value.String())
			assert.True(t, p.AtMost)
		}
	}
}

func TestSidewaysPull(t *testing.T) {
	// A tight line from the load to the head, pulled across in the middle: with an
	// included angle of 120 degrees the pull is as large as the line's tension.
	ph := haul(t, solved(t, parts+`
anchor head
pulley middle sideways
rope line
rope tag
reeve line: litter / middle (angle 120 deg) / head
reeve tag: middle \ team
`))
	require.Equal(t, solve.OK, ph.Status)
	assert.Equal(t, "1", ph.Ideal.String())
	assert.Equal(t, "1", load(ph, "middle"))
}

func TestEndAtAnAngle(t *testing.T) {
	ph := haul(t, solved(t, `
anchor left
anchor right
load litter
hauler team
pulley turn on right
rope one
rope two
reeve one: litter (angle 60 deg) / left
reeve two: litter (angle 60 deg) / turn \ team
`))
	// cos 60° = 1/2 of each tension is along the line; the one of left may be slack.
	assert.True(t, ph.Status == solve.OK)
	assert.Equal(t, "1/2", ph.Ideal.String())
}

func TestLoopLine(t *testing.T) {
	// An endless line over a fixed and a moving wheel carries the load on two
	// strands; hauling at a grip on it only turns the line round.
	res := solved(t, `
anchor beam
pulley wheel on beam
pulley lower
load bucket on lower
hitch grab
hauler team
rope endless
rope hand
reeve endless: wheel \ lower / grab / loop
reeve hand: grab / team
`)
	assert.Equal(t, solve.Held, res.Released.Answer)
	assert.Equal(t, "1/2", force(t, res.Hold(), "endless", 0).Value.String())
	assert.Equal(t, "1", load(res.Hold(), "beam"))
	assert.Equal(t, solve.RaisesNothing, res.Status)
}

func TestOwnWeightLoadsTheAnchor(t *testing.T) {
	res := solved(t, `
anchor head
pulley top on head mass 2 kg
load litter mass 100 kg
rope long
reeve long: litter / top
`)
	assert.Equal(t, "51/50", load(res.Hold(), "head"))
	assert.InDelta(t, 980.665, res.WeightNewtons.Float(), 1e-9)
}

func TestRunsAwayUpward(t *testing.T) {
	res := solved(t, `
anchor head
load litter mass 50 kg
counterweight stone mass 80 kg
hauler team
rope long
rope tag
reeve long: litter / head \ stone
reeve tag: litter / team
`)
	assert.Equal(t, solve.RunsUp, haul(t, res).Status)
}

func TestJamNamesTheNodes(t *testing.T) {
	res := solved(t, parts+`
anchor head
pulley top on head
rope long
rope other
reeve long: litter / top (holds team) \ team
reeve other: litter / head
`)
	ph := haul(t, res)
	require.Equal(t, solve.Jammed, ph.Status)
	require.NotNil(t, ph.Jam)
	assert.Equal(t, "top", ph.Jam.Rope.Nodes[ph.Jam.From].Name())
	assert.Equal(t, "team", ph.Jam.Rope.Nodes[ph.Jam.To].Name())
}

func TestSlope(t *testing.T) {
	// W·(sin α + μ·cos α): 4000 N at 20°, μ 0.3 gives 2495.7 N up and 240.4 N to
	// hold (worked answer of a statics problem, read).
	res := solved(t, `
anchor head
load sledge weight 4000 N slope 20 deg friction 0.3
hauler team
pulley top on head holds
rope long
reeve long: sledge / top \ team
`)
	ph := haul(t, res)
	assert.InDelta(t, 2495.7, 4000*ph.Pull.Float(), 0.05)
	assert.Equal(t, "1", ph.Ideal.String())
	assert.InDelta(t, 240.4, 4000*force(t, res.Hold(), "long", 0).Value.Float(), 0.05)
}

func TestLosingEachPartOfAKnottedLine(t *testing.T) {
	res := solved(t, `
anchor head
load litter
knot loop-knot on litter
rope long
reeve long: head \ loop-knot \ tail
`)
	assert.Equal(t, solve.Held, res.Released.Answer)
	assert.Equal(t, solve.Down, res.Without(res.Rig.Part("loop-knot")).Answer)
	assert.Equal(t, model.KnotTie, res.Rig.Ropes[0].Nodes[1].Role)
}

func withAngle(text, angle string) string {
	return strings.ReplaceAll(text, "%ANGLE%", angle)
}

func TestStatedShareOfATwinRaise(t *testing.T) {
	const twin = `
anchor left
anchor right
load litter
hauler team
rope one
rope two
reeve one: litter / left \ team%SHARE%
reeve two: litter / right \ team
`
	open := haul(t, solved(t, strings.Replace(twin, "%SHARE%", "", 1)))
	assert.Equal(t, [3]string{"1/2", "0", "1"}, bounds(force(t, open, "one", 0)))
	shared := haul(t, solved(t, strings.Replace(twin, "%SHARE%", " (share 40 to 60 %)", 1)))
	assert.Equal(t, [3]string{"1/2", "2/5", "3/5"}, bounds(force(t, shared, "one", 0)))
	assert.Equal(t, [3]string{"1/2", "2/5", "3/5"}, bounds(force(t, shared, "two", 0)))
	assert.False(t, shared.ShareUnmet)
	fixed := haul(t, solved(t, strings.Replace(twin, "%SHARE%", " (share 30 %)", 1)))
	assert.Equal(t, [3]string{"7/10", "7/10", "7/10"}, bounds(force(t, fixed, "two", 0)))
	assert.Equal(t, "1", fixed.Ideal.String())
}

func TestCounterweightInExactBalance(t *testing.T) {
	ph := haul(t, solved(t, `
anchor head
load litter mass 100 kg
counterweight stone mass 100 kg
hauler team
rope long
rope tag
reeve long: litter / head \ stone
reeve tag: stone \ team
`))
	assert.Equal(t, solve.OK, ph.Status)
	require.NotNil(t, ph.Ideal)
	assert.Equal(t, "1", ph.Ideal.String())
	assert.True(t, ph.Pull.IsZero(), "it takes no pull, ideally")
}

func TestSidewaysPullEitherWayOfWriting(t *testing.T) {
	for _, stroke := range []string{"/", `\`} {
		ph := haul(t, solved(t, parts+`
anchor head
carabiner middle sideways
rope line
rope tag
reeve line: litter / middle (angle 160 deg) / head
reeve tag: middle `+stroke+` team
`))
		require.Equal(t, solve.OK, ph.Status, stroke)
		assert.InDelta(t, 1/(2*math.Cos(80*math.Pi/180)), ph.Ideal.Float(), 1e-9)
		assert.InDelta(t, 2*math.Cos(80*math.Pi/180), ph.Pull.Float(), 1e-9)
	}
}

func TestHoldingOfACaptureIsARange(t *testing.T) {
	res := solved(t, `
anchor head
load litter
pulley top on head holds
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / head
`)
	for _, g := range res.Hold().Grips() {
		name := g.Rope.Nodes[g.Nodes[0]].Name()
		assert.Equal(t, map[string][3]string{"top": {"1", "0", "1"}, "grab": {"0", "0", "2/3"}}[name], bounds(g.Hold), name)
	}
}

func TestAHeavyPulleyOnAHitchSagsButTheLoadStays(t *testing.T) {
	res := solved(t, `
anchor head
load crate mass 100 kg
hauler team
pulley top on head holds
hitch grab
pulley runner on grab mass 300 g
rope long
reeve long: crate / grab / top \ runner / team
`)
	assert.True(t, res.Released.LoadsStay())
	assert.NotEqual(t, solve.Held, res.Released.Answer)
	hold := res.Hold()
	require.Equal(t, solve.OK, hold.Status)
	require.Len(t, hold.Sagging, 1)
	assert.Equal(t, "grab", hold.Sagging[0].Parts[0].Name)
	assert.Equal(t, "1", load(hold, "head"))
	assert.Equal(t, solve.StaysUp, res.Lowers[0].Status)
	assert.False(t, solved(t, "anchor a\nload l\nhauler h\nrope r\nreeve r: l / a \\ h\n").Released.LoadsStay())
}
