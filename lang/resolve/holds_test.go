package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
)

const held = basic + "pulley low on litter\npulley top on head "

var holdCases = []marked{
	{"bare, passed once", held + "holds\nreeve long: litter / top \\ low / team\n"},
	{"by name, passed once", held + "holds litter\nreeve long: litter / top \\ low / team\n"},
	{"bare, passed twice", held + "⟦holds⟧hold-ambiguous\nreeve long: litter / top \\ low / top \\ team\n"},
	{"by name, passed twice", held + "⟦holds litter⟧hold-ambiguous\nreeve long: litter / top \\ low / top \\ team\n"},
	{"written at each node", held + "holds\nreeve long: litter / top (holds) \\ low / top (holds team) \\ team\n"},
	{"written at one node of two", held + "⟦holds⟧hold-ambiguous\nreeve long: litter / top (holds) \\ low / top \\ team\n"},
	{"passed once by each of two ropes", held + "holds\nrope b\nreeve long: litter / top \\ low / team\nreeve b: litter / top \\ team\n"},
	{"passed once in each run of a rope", held + "holds\nreeve long: litter / top \\ team ~ litter / top \\ low / head\n"},
	{"tied once, passed once", held + "holds\nreeve long: top \\ low / top \\ team\n"},
	{"acts in the run that has the end", held + "holds litter\nrope b\nreeve long: litter / top \\ low / team\nreeve b: low / top \\ team\n"},
	{"twice where it does not act", held + "holds litter\nrope b\nreeve long: litter / top \\ low / team\nreeve b: head \\ low / top \\ low / top \\ team\n"},
	{"no end of any run", held + "holds ⟦low⟧hold-ambiguous\nreeve long: litter / top \\ low / team\n"},
	{"no end of this run", held + "holds ⟦litter⟧hold-ambiguous\nreeve long: litter / head-knot ~ head-knot / top \\ low / team\nknot head-knot on head\n"},
	{"at a node, no end", held + "\nreeve long: litter / top (holds ⟦low⟧hold-ambiguous) \\ low / team\n"},
	{"at both ends", held + "holds\nrope b\nreeve long: litter / top (holds ⟦litter⟧hold-ambiguous) \\ litter\nreeve b: low / top \\ team\n"},
	{"on the part, at both ends", held + "⟦holds litter⟧hold-ambiguous\nrope b\nreeve long: litter / top \\ litter\nreeve b: low / head \\ team\n"},
	{"in a loop", held + "\nrope b\nreeve b: top (holds ⟦litter⟧hold-ambiguous) \\ low / loop\n" + line},
	{"on the part, in a loop", held + "holds ⟦litter⟧hold-ambiguous\nrope b\nreeve b: top \\ low / loop\n" + line},
	{"an end that is not known", held + "holds litter\nreeve long: ⟦x-y-z⟧unknown-part / top \\ low / team\n"},
	{"a grip passed twice holds as grips do", held + "\nhitch g\nreeve long: litter / g / top \\ low / g / team\n"},
	{"a grip with holds passed twice", held + "\nhitch g ⟦holds litter⟧hold-ambiguous\nreeve long: litter / g / top \\ low / g / team\n"},
	{"holds where nothing runs", held + "\nknot k on litter\nreeve long: litter (⟦holds⟧misplaced-clause) / top \\ k (⟦holds⟧misplaced-clause) \\ low / team (⟦holds litter⟧misplaced-clause)\n"},
	{"not touched", held + "holds litter\nreeve long: litter / head \\ low / team\nreeve b: litter / top\nrope b\n"},
}

func TestHeldSides(t *testing.T) {
	cases := []struct {
		top, reeve string
		node       int
		role       model.Role
		want       model.Side
	}{
		{"holds", "litter / top \\ team", 1, model.Capture, model.FirstSide},
		{"holds litter", "litter / top \\ team", 1, model.Capture, model.FirstSide},
		{"holds team", "litter / top \\ team", 1, model.Capture, model.LastSide},
		{"holds litter", "team / top \\ litter", 1, model.Capture, model.LastSide},
		{"holds low", "litter / top \\ team", 1, model.Bend, model.NoSide},
		{"holds litter", "litter / top (holds team) \\ team", 1, model.Capture, model.LastSide},
		{"holds litter", "litter / head ~ litter / top \\ team", 3, model.Capture, model.FirstSide},
		{"holds litter", "litter / top ~ team", 1, model.Tied, model.FirstSide},
		{"holds litter", "team ~ top \\ litter", 1, model.Tied, model.LastSide},
		{"holds team", "litter / head (holds) ~ litter / top \\ team", 3, model.Capture, model.LastSide},
	}
	for _, c := range cases {
		rig, _ := oneRig(t, held+c.top+"\nreeve long: "+c.reeve+"\n")
		require.Len(t, rig.Ropes, 1)
		node := rig.Ropes[0].Nodes[c.node]
		assert.Equal(t, c.role, node.Role, "%s, %s", c.top, c.reeve)
		assert.Equal(t, c.want, node.Holds, "%s, %s", c.top, c.reeve)
	}
}

func TestHoldMessagesNameTheEnds(t *testing.T) {
	_, found := oneRig(t, held+"holds low\nreeve long: litter / top \\ low / team\n")
	assert.Equal(t, "top holds low, which is no end of its run; the ends are litter and team", message(t, found, "hold-ambiguous"))
	_, found = oneRig(t, held+"holds\nreeve long: litter / top \\ low / top \\ team\n")
	assert.Equal(t, "top is passed 2 times by one run of long; write holds at the node where it holds", message(t, found, "hold-ambiguous"))
}
