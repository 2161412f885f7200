package solve_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
	"fairlead/solve/lp"
)

func TestStrokeBesideAnAngle(t *testing.T) {
	s := stroke(t, `
anchor left at 8 m
pulley runner at 2 m
load litter on runner
hauler team
rope long
reeve long: left \ runner (angle 60 deg) / team
`)
	assert.Equal(t, "runner", s.First.Lower.Name)
	assert.InDelta(t, 6, s.Rise.Float(), 1e-9, "along the line")
	assert.InDelta(t, 12*math.Cos(math.Pi/6), s.Hauled.Float(), 1e-9)
	assert.Equal(t, 0, s.For(lp.Int(5)).Resets)
}

func TestAPartThatMovesAcrossTheLineMeetsNothing(t *testing.T) {
	s := stroke(t, `
anchor head at 9 m
load litter at 0 m
hauler team
pulley middle at 5 m sideways
rope line
rope tag
reeve line: litter / middle (angle 120 deg) / head
reeve tag: middle \ team
`)
	assert.Equal(t, []string{"litter-head 9 at 1, meets 9"}, allTold(s))
}

func TestWhoHaulsHimselfUp(t *testing.T) {
	s := stroke(t, `
anchor beam at 6 m
load chair at 0 m length 1 m
hauler sitter on chair
pulley top on beam holds chair
rope line
reeve line: chair / top \ sitter
`)
	assert.Equal(t, []string{"chair-top 5 at 1, meets 5"}, allTold(s))
	assert.Equal(t, "10", number(s.Hauled))
}

func TestStrokeWhereBothStagesAreOneReset(t *testing.T) {
	// Five to one: the far end of the rope draws the tractor by way of the block.
	res := solved(t, `
anchor head at 12 m
load litter at 0 m raise 6 m
hauler team
pulley top on head holds litter
hitch grab at 8 m
pulley runner on grab
pulley block at 9 m
knot tie-off on head
rope long
reeve long: litter / grab / top \ block / team ~ tie-off \ runner / block
`)
	s := haul(t, res).Stroke
	assert.Equal(t, []string{
		"block-top 3 at 2, meets 3/2, again",
		"grab-top 4 at 1, meets 4, again",
		"litter-top 12 at 1, meets 12",
	}, allTold(s))
	assert.Equal(t, "15/2", number(s.Hauled))
	assert.Equal(t, 3, s.Raise.Resets)
	assert.Equal(t, "20", number(res.Rope[0].Strands), "12 + 3 + 4 + 1; the team stands at the block")
}

func TestTheEdgeEndsTheRaise(t *testing.T) {
	s := stroke(t, `
anchor rear at 20 m
edge lip at 12 m
load sledge at 0 m
hauler team
pulley top on rear holds sledge
hitch grab at 15 m
pulley runner on grab
rope long
reeve long: sledge / lip / grab / top \ runner / team
`)
	assert.Equal(t, []string{"grab-top 5 at 1, meets 5, again", "sledge-lip 12 at 1, meets 12"}, allTold(s))
}

func TestTwoLoadsAreCountedInTheFirst(t *testing.T) {
	const text = `
anchor head at 9 m
load red at 0 m %RED%
load blue at 1 m
hauler team
pulley one on head
pulley two on head
pulley bar at 8 m
rope left
rope right
rope hand
reeve left: red / one \ bar
reeve right: blue / two \ bar
reeve hand: bar \ team
`
	s := stroke(t, strings.ReplaceAll(text, "%RED%", ""))
	assert.Equal(t, "red", s.Load.Parts[0].Name)
	assert.Equal(t, "blue-two 8 at 1, meets 8", told(s.First))
	assert.Nil(t, s.Raise)
	s = stroke(t, strings.ReplaceAll(text, "%RED%", "raise 9 m"))
	assert.Equal(t, "blue", s.Raise.EndedBy.Lower.Name)
}

func TestEachHaulHasItsStroke(t *testing.T) {
	res := solved(t, `
anchor head at 10 m
load litter at 0 m
hauler red
hauler blue
pulley top on head holds litter
hitch grab at 7 m
pulley runner on grab
rope long
rope steer
reeve long: litter / grab / top \ runner / red
reeve steer: litter / blue
`)
	require.Len(t, res.Hauls(), 2)
	assert.Equal(t, "grab-top 3 at 1, meets 3, again", told(res.Hauls()[0].Stroke.First))
	// Blue's pull leaves the hitch on slack rope: nobody knows where it is.
	assert.Equal(t, []string{"litter-top 10 at 1, meets 10"}, allTold(res.Hauls()[1].Stroke))
}

func TestNumbersOfManyResets(t *testing.T) {
	s := stroke(t, three("", "", "9.999"))
	assert.Equal(t, 9999, s.For(lp.Int(10)).Resets)
	assert.Equal(t, 9999, s.For(lp.Approx(10)).Resets, "rounding asks for no stroke of its own")
	s = stroke(t, three("", "", "10"))
	r := s.For(lp.Int(3))
	assert.True(t, r.Endless, "the hitch starts at the top")
	assert.Zero(t, r.Reached.Sign())
	var none *solve.Stroke
	assert.False(t, none.Known())
	assert.Nil(t, none.For(lp.Int(1)))
}
