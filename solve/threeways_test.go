package solve_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
	"fairlead/solve/lp"
)

// within counts directions as one up to so many degrees apart.
func within(degrees int64) func(lp.Num) bool {
	return func(n lp.Num) bool { return n.Cmp(lp.Int(degrees)) <= 0 }
}

// threeWays asks the hold phase of a rig about the part "eye".
func threeWays(t *testing.T, text string, one int64) (by [3][]string, apart float64, ok bool) {
	res := solved(t, text)
	ph := res.Hold()
	require.True(t, ph.Solved(), text)
	pulls, angle, ok := res.ThreeWays(ph, res.Rig.Part("eye"), within(one))
	for i, p := range pulls {
		for _, part := range p.By {
			by[i] = append(by[i], part.Name)
		}
	}
	return by, angle.Float(), ok
}

const bolts = `anchor left
anchor right
load litter mass 100 kg
hauler team
pulley top on eye holds litter
sling one
sling two
rope long
reeve long: litter / top \ team
`

// Two slings from an eye to two bolts, which lean so far: one to the left, the other to
// the right, since else the eye could not stay.
const (
	narrow = bolts + "carabiner eye\nreeve one: left \\ eye (angle 15 deg)\nreeve two: right \\ eye (angle 15 deg)\n"
	wide   = bolts + "carabiner eye\nreeve one: left \\ eye (angle 20 deg)\nreeve two: right \\ eye (angle 11 deg)\n"
	even   = bolts + "carabiner eye\nreeve one: left \\ eye\nreeve two: right \\ eye\n"
	lone   = bolts + "carabiner eye\nreeve one: left \\ eye (angle 20 deg)\nreeve two: right \\ eye\n"
)

func TestSlingsOfAnEyeDrawItThreeWays(t *testing.T) {
	for _, text := range []string{narrow, even, lone} {
		_, _, ok := threeWays(t, text, 30)
		assert.False(t, ok, text)
	}
	by, apart, ok := threeWays(t, wide, 30)
	require.True(t, ok)
	assert.Equal(t, [3][]string{{"one"}, {"two"}, {"top"}}, by)
	assert.InDelta(t, 31, apart, 1e-9)
	_, _, ok = threeWays(t, wide, 31)
	assert.False(t, ok)
	by, apart, ok = threeWays(t, narrow, 29)
	require.True(t, ok)
	assert.InDelta(t, 30, apart, 1e-9)
	assert.Equal(t, [3][]string{{"one"}, {"two"}, {"top"}}, by)
}

// Of two slings the nearer to the line carries more: F·sin 11° / sin 31° and
// F·sin 20° / sin 31°, F being the litter. Of three, statics leaves all open.
func TestForcesOfSlingsThatLean(t *testing.T) {
	res := solved(t, wide)
	pulls, _, ok := res.ThreeWays(res.Hold(), res.Rig.Part("eye"), within(30))
	require.True(t, ok)
	for i, want := range []float64{0.37047, 0.66407, 1} {
		require.NotNil(t, pulls[i].Force)
		assert.InDelta(t, want, pulls[i].Force.Float(), 1e-5)
	}
	res = solved(t, wide+"anchor middle\nsling three\nreeve three: middle \\ eye\n")
	pulls, _, ok = res.ThreeWays(res.Hold(), res.Rig.Part("eye"), within(30))
	require.True(t, ok)
	assert.Nil(t, pulls[0].Force)
	assert.Nil(t, pulls[1].Force)
	assert.Equal(t, "1", pulls[2].Force.String())
}

// hung is an eye on an anchor, with a line held at it and a corner that turns the line of
// a second load by an angle.
const hung = `anchor head
anchor tree
carabiner eye on head
load litter mass 100 kg
load pack mass 100 kg
hauler team
tender minder
pulley top on eye holds litter
pulley corner on eye holds pack
rope long
rope other
reeve long: litter / top \ minder
`

// The corner turns the line by 90 degrees: along it 1, across it 1 too, so that it draws
// the eye with √2 at 45 degrees from the line. With 1 from the top, down, √2 at 45
// degrees: 2 down and 1 across, which the head balances, 26.57 degrees from the line up.
func TestACornerAndATopDrawAnEyeThreeWays(t *testing.T) {
	text := hung + "reeve other: pack / corner (angle 90 deg) \\ team\n"
	res := solved(t, text)
	var hauls *solve.Phase
	for _, ph := range res.Hauls() {
		hauls = ph
	}
	pulls, apart, ok := res.ThreeWays(hauls, res.Rig.Part("eye"), within(30))
	require.True(t, ok)
	assert.InDelta(t, 45, apart.Float(), 1e-9)
	var names []string
	var sizes []float64
	for _, p := range pulls {
		names = append(names, p.By[0].Name)
		require.NotNil(t, p.Force)
		sizes = append(sizes, p.Force.Float())
	}
	assert.Equal(t, []string{"top", "corner", "head"}, names)
	assert.InDeltaSlice(t, []float64{1, 1.414213562, 2.236067977}, sizes, 1e-8)

	// hands off, nothing draws the strand beyond the capture: both hang straight down
	_, _, ok = res.ThreeWays(res.Hold(), res.Rig.Part("eye"), within(30))
	assert.False(t, ok)
	// turned straight back, both draw it down and the head up
	res = solved(t, hung+"reeve other: pack / corner \\ team\n")
	_, _, ok = res.ThreeWays(res.Hauls()[0], res.Rig.Part("eye"), within(30))
	assert.False(t, ok)
}

// To which side each of two corners leans is not said: leaning to the same side they
// draw the eye one way.
func TestSidesThatAreNotSaidCountForTheRig(t *testing.T) {
	text := `anchor head
carabiner eye on head
load litter mass 100 kg
load pack mass 100 kg
hauler team
pulley top on eye
pulley corner on eye
rope long
rope other
reeve long: litter / top (angle 120 deg) \ team
reeve other: pack / corner (angle 120 deg) \ team
`
	res := solved(t, text)
	_, _, ok := res.ThreeWays(res.Hauls()[0], res.Rig.Part("eye"), within(30))
	assert.False(t, ok)
}

// A corner between two others: which of its strands lies in the haul line is not said.
func TestDirectionsThatAreNotKnown(t *testing.T) {
	text := hung + "anchor wall\npulley guide on wall\nreeve other: pack / guide (angle 100 deg) \\ corner (angle 90 deg) / team\n"
	res := solved(t, text)
	for _, ph := range res.Every() {
		_, _, ok := res.ThreeWays(ph, res.Rig.Part("eye"), within(30))
		assert.False(t, ok)
	}
}
