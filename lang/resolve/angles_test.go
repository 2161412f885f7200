package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const angled = basic + "pulley low on litter\npulley top on head\npulley free\n"

var angleCases = []marked{
	{"at turning bends", angled + "reeve long: litter / top (angle 90 deg) \\ low (angle 0 deg) / free (angle 180 deg) \\ team\n"},
	{"at the ends", angled + "reeve long: litter (angle 20 deg) / top \\ low / free \\ team (angle 90 deg)\n"},
	{"too wide", angled + "reeve long: litter / top (⟦angle 181 deg⟧wrong-angle) \\ low (⟦angle -1 deg⟧wrong-angle) / free \\ team\n"},
	{"too wide for an end", angled + "reeve long: litter (⟦angle 91 deg⟧wrong-angle) / top \\ low / free \\ team (⟦angle -5 deg⟧wrong-angle)\n"},
	{"straight through a moving part", angled + "reeve long: litter / free (⟦angle 90 deg⟧wrong-angle) / top \\ low / team\n"},
	{"straight through, sideways", angled + "reeve long: litter / free (angle 90 deg sideways) / top \\ low / team\n"},
	{"straight through a fixed part", angled + "reeve long: litter / top (angle 150 deg) / head \\ low / free \\ team\n"},
	{"at a grip", angled + "hitch g\nreeve long: litter / g (⟦angle 90 deg⟧wrong-angle) / top \\ low / free \\ team\n"},
	{"at a knot", angled + "knot k on litter\nreeve long: litter / top \\ k (⟦angle 90 deg⟧wrong-angle) \\ low / free \\ team\n"},
	{"at a grip on a fixed part", angled + "hitch g on head\nreeve long: litter / g (angle 170 deg) / top \\ low / free \\ team\n"},
	{"at a stopper", angled + "knot stop\nreeve long: litter / top \\ low / free \\ stop (⟦angle 30 deg⟧wrong-angle)\nreeve b: litter / team\nrope b\n"},
	{"at a fixed end alone", angled + "anchor side\nrope tie\nreeve long: litter / top \\ low / free \\ team\n" +
		"reeve tie: litter / side (⟦angle 40 deg⟧wrong-angle)\n"},
	{"at a fixed end beside a bend", angled + "anchor side\nreeve long: side (⟦angle 40 deg⟧wrong-angle) \\ low / top \\ free / team\n"},
	{"at both ends of a slanting rope", angled + "anchor side\nrope tie\nreeve long: litter / top \\ low / free \\ team\n" +
		"reeve tie: litter (angle 40 deg) / side (angle 40 deg)\n"},
	{"at a fixed end and the bend beside it", angled + "anchor side\nreeve long: side (angle 40 deg) \\ low (angle 80 deg) / top \\ free / team\n"},
	{"at a fixed end beside a fixed bend", angled + "anchor side\nreeve long: side (angle 40 deg) / top \\ low / free \\ team\n"},
	{"at a fixed end beside people", basic + "rope tag\nreeve long: litter / team\nreeve tag: head (angle 40 deg) \\ team\n"},
	{"of an edge", angled + "edge lip angle ⟦190 deg⟧wrong-angle\nreeve long: litter / lip / top \\ low / free \\ team\n"},
	{"of a leg", angled + "focal hub\nleg l from head to hub angle -90 deg\nleg r from head to hub angle ⟦100 deg⟧wrong-angle\n" +
		"reeve long: litter / top \\ low / free \\ team\nrope b\nreeve b: litter / hub\n"},
	{"backward", angled + "reeve long: litter / top (angle ⟦90 to 60⟧bad-value deg) \\ low / free \\ team\n"},
	{"sideways where nothing moves", angled + "reeve long: litter / top (⟦sideways⟧misplaced-clause) \\ low / free \\ team (⟦sideways⟧misplaced-clause)\n"},
	{"sideways on the part", basic + "ring eye sideways\nreeve long: litter / eye (angle 120 deg) / head \\ team\n"},
	{"a share in mid rope", angled + "reeve long: litter (share 50 %) / top (⟦share 50 %⟧misplaced-clause) \\ low / free \\ team (share 40 to 60 %)\n"},
}

func TestNodeValues(t *testing.T) {
	rig, found := oneRig(t, "anchor head friction 0.4 turns 2\nload litter\nhauler team\nedge lip angle 100 deg friction 0.5\npulley top on head efficiency 92 %\n"+
		"reeve long: litter (figure-eight angle 30 deg) / lip / top (efficiency 80 % angle 60 deg) \\ head (turns 1) / top \\ team (share 40 to 60 %)\nrope long\n")
	require.Empty(t, found)
	n := rig.Ropes[0].Nodes
	assert.Equal(t, "figure-eight", n[0].Tie)
	assert.Equal(t, "30", n[0].Angle.Low.RatString())
	assert.Equal(t, "100", n[1].Angle.Low.RatString(), "the edge's own")
	assert.Equal(t, "1/2", n[1].Friction.Low.RatString())
	assert.Equal(t, "4/5", n[2].Efficiency.Low.RatString(), "the node beats the part")
	assert.Equal(t, "60", n[2].Angle.Low.RatString())
	assert.Equal(t, "1", n[3].Turns.Low.RatString())
	assert.Equal(t, "2/5", n[3].Friction.Low.RatString())
	assert.Equal(t, "23/25", n[4].Efficiency.Low.RatString())
	assert.Nil(t, n[4].Angle)
	assert.Equal(t, "2/5", n[5].Share.Low.RatString())
	assert.Equal(t, "litter (figure-eight angle 30 deg)", n[0].Place.Text())
	assert.Equal(t, "litter", n[0].NamePlace.Text())
}

func TestWrongAnglesAreLeftOut(t *testing.T) {
	rig, _ := oneRig(t, angled+"reeve long: litter / top \\ low (angle 200 deg) / free \\ team\n")
	assert.Nil(t, rig.Ropes[0].Nodes[2].Angle)
	assert.True(t, rig.Incomplete)
	rig, _ = oneRig(t, angled+"reeve long: litter / free (angle 90 deg) / top \\ low / team\n")
	assert.Nil(t, rig.Ropes[0].Nodes[1].Angle)
	assert.False(t, rig.Incomplete, "it would say nothing there")
}
