package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
)

// every is one part of each kind that a rope can touch; h is a plain anchor, so
// that the reeving lines of the role cases can end there.
const every = `anchor h
anchor an
focal fo
leg le from an to fo
edge ed
load lo
counterweight cw
hauler ha
tender te
pulley pu on h
carabiner ca on h
ring ri on h
device de on h
hitch hi
clamp cl
knot kn on h
knot free
sling st on h
cord co on h
pulley cap on h holds
rope x
rope y
reeve y: an / fo / ed / h \ pu / ca / ri / de / hi / cl / kn / st / co / cap / h ~ lo ~ cw ~ ha ~ te ~ h
`

// roleCases are the rows of the table of nodes that are faults.
var roleCases = []marked{
	{"load in mid rope", basic + "reeve long: head / ⟦litter⟧node-needs-end \\ team\n"},
	{"counterweight in mid rope", basic + line + "counterweight sack\nrope b\nreeve b: head / ⟦sack⟧node-needs-end \\ litter\n"},
	{"focal point in mid rope", basic + line + "focal hub\nrope b\nreeve b: litter / ⟦hub⟧node-needs-end \\ litter\n"},
	{"hauler in mid rope", basic + "reeve long: litter / ⟦team⟧node-needs-end / head\n"},
	{"tender in mid rope", basic + line + "tender guide\nrope b\nreeve b: litter / ⟦guide⟧node-needs-end / head\n"},
	{"each of them beside slack", basic + "focal hub\ntender guide\nrope b\nreeve long: head / team ~ litter / hub ~ litter ~ hub / guide ~ head\nreeve b: litter / head\n"},
	{"tail in mid rope", basic + line + "rope b\nreeve b: litter / ⟦tail⟧node-needs-end / head\n"},
	{"tail beside slack in mid rope", basic + line + "rope b\nreeve b: litter ~ ⟦tail⟧node-needs-end / head\n"},
	{"tail at both ends", basic + line + "rope b\nreeve b: tail ~ ⟦head⟧loose-beside-slack / litter ~ tail\n"},
	{"edge at an end", basic + line + "edge lip\nrope b\nreeve b: litter / ⟦lip⟧bend-cannot-tie\n"},
	{"edge first", basic + line + "edge lip\nrope b\nreeve b: ⟦lip⟧bend-cannot-tie / head\n"},
	{"edge beside slack", basic + line + "edge lip\nrope b\nreeve b: litter / ⟦lip⟧bend-cannot-tie ~ head\n"},
	{"edge between", basic + line + "edge lip\nrope b\nreeve b: litter / lip / head\n"},
	{"bends beside slack", basic + line + "pulley p on head\ncarabiner c on head\nring r on head\ndevice d on head\nsling s on head\nrope b\n" +
		"reeve b: litter / ⟦p⟧loose-beside-slack ~ ⟦c⟧loose-beside-slack / ⟦r⟧loose-beside-slack ~ ⟦d⟧loose-beside-slack / ⟦s⟧loose-beside-slack ~ ⟦head⟧loose-beside-slack / litter\n"},
	{"what holds beside slack", basic + line + "pulley p on head holds\nring r on head\nhitch g\nknot k on head\nrope b\n" +
		"reeve b: litter / p ~ r (holds) / g ~ k / litter\n"},
	{"a hitch turns the rope", basic + "hitch g\nclamp c\nreeve long: litter / ⟦g⟧hitch-turns-rope \\ c \\ ⟦c⟧hitch-turns-rope / team\nrope b\nreeve b: litter / head\n"},
	{"a loop is closed", basic + line + "pulley a on head\npulley b on litter\nrope c\nreeve c: a \\ b / loop\n"},
	{"a load at the start of a loop", basic + line + "rope c\nreeve c: ⟦litter⟧node-needs-end / head \\ loop\n"},
	{"an edge at the start of a loop", basic + line + "edge lip\npulley b on litter\nrope c\nreeve c: lip \\ b / loop\n"},
	{"a slack stroke opens a loop", basic + line + "pulley b on litter\nrope c\nreeve c: ⟦head⟧loose-beside-slack \\ ⟦b⟧loose-beside-slack ~ loop\n"},
}

func TestRoles(t *testing.T) {
	cases := []struct {
		where, reeve string
		node         int
		want         model.Role
		holds        model.Side
	}{
		{"first", "an / h", 0, model.Tied, 0},
		{"first", "fo / h", 0, model.Tied, 0},
		{"first", "lo / h", 0, model.Tied, 0},
		{"first", "cw / h", 0, model.Tied, 0},
		{"first", "kn / h", 0, model.Tied, 0},
		{"first", "free / h", 0, model.Tied, 0},
		{"first, at its becket", "pu / h", 0, model.Tied, 0},
		{"first", "ca / h", 0, model.Tied, 0},
		{"first", "ri / h", 0, model.Tied, 0},
		{"first", "de / h", 0, model.Tied, 0},
		{"first", "st / h", 0, model.Tied, 0},
		{"first, to its cord", "hi / h", 0, model.Tied, 0},
		{"first", "cl / h", 0, model.Tied, 0},
		{"first, holds or not", "cap / h", 0, model.Tied, 0},
		{"first", "ha / h", 0, model.Hauled, 0},
		{"first", "te / h", 0, model.Tended, 0},
		{"first", "tail ~ h", 0, model.Loose, 0},
		{"last", "h \\ lo", 1, model.Tied, 0},
		{"last", "h / hi", 1, model.Tied, 0},
		{"last", "h / ha", 1, model.Hauled, 0},
		{"last", "h / te", 1, model.Tended, 0},
		{"last", "h ~ tail", 1, model.Loose, 0},
		{"last, on nothing", "h / free", 1, model.Stopper, 0},
		{"last, on something", "h / kn", 1, model.Tied, 0},
		{"last of a run", "h / ha ~ lo", 1, model.Hauled, 0},
		{"first of a run", "h ~ te / lo", 1, model.Tended, 0},
		{"last of a run, on nothing", "h / free ~ lo", 1, model.Tied, 0},
		{"last of a run", "h / kn ~ lo", 1, model.Tied, 0},
		{"last of a run, its taut side", "h / hi ~ lo", 1, model.Tied, model.FirstSide},
		{"first of a run, its taut side", "h ~ cl / lo", 1, model.Tied, model.LastSide},
		{"last of a run, its taut side", "h / cap ~ lo", 1, model.Tied, model.FirstSide},
		{"first of a run, its taut side", "h ~ pu (holds) / lo", 1, model.Tied, model.LastSide},
		{"between", "lo / an \\ ha", 1, model.Bend, 0},
		{"between", "lo / ed / ha", 1, model.Bend, 0},
		{"between", "lo / pu \\ ha", 1, model.Bend, 0},
		{"between", "lo / ca \\ ha", 1, model.Bend, 0},
		{"between", "lo / ri \\ ha", 1, model.Bend, 0},
		{"between", "lo / de \\ ha", 1, model.Bend, 0},
		{"between", "lo / st \\ ha", 1, model.Bend, 0},
		{"between", "lo / co \\ ha", 1, model.Bend, 0},
		{"between", "lo / hi / ha", 1, model.Grip, model.FirstSide},
		{"between", "lo / cl / ha", 1, model.Grip, model.FirstSide},
		{"between", "lo / kn / ha", 1, model.KnotTie, 0},
		{"between, on nothing", "lo / free / ha", 1, model.KnotTie, 0},
		{"between", "lo / cap \\ ha", 1, model.Capture, model.FirstSide},
		{"between", "lo / an (holds) \\ ha", 1, model.Capture, model.FirstSide},
		{"between", "lo / ri (holds ha) \\ ha", 1, model.Capture, model.LastSide},
		{"between", "lo / hi (holds ha) / ha", 1, model.Grip, model.LastSide},
		{"closed", "pu \\ lo-eye / loop", 0, model.Bend, 0},
		{"closed", "cap \\ lo-eye / loop", 0, model.Capture, model.FirstSide},
		{"closed", "hi \\ lo-eye \\ pu / pu \\ loop", 0, model.Grip, model.FirstSide},
	}
	for _, c := range cases {
		rig, found := oneRig(t, every+"ring lo-eye on lo\nreeve x: "+c.reeve+"\n")
		require.Len(t, rig.Ropes, 2)
		node := rig.Ropes[1].Nodes[c.node]
		assert.Equal(t, c.want, node.Role, "%s: %s", c.where, c.reeve)
		assert.Equal(t, c.holds, node.Holds, "%s: %s", c.where, c.reeve)
		for _, d := range found {
			if d.Place.Span.Start > rig.Ropes[1].Place.Span.Start && d.Rule != "reeved-backward" {
				t.Errorf("%s: %s", c.reeve, d.Message)
			}
		}
	}
}

// A knot that ties two ropes, or carries something, is no stopper, though it is
// on nothing.
func TestKnotBetweenRopesIsNoStopper(t *testing.T) {
	rig, found := oneRig(t, basic+"rope b\nknot bend\nreeve long: litter / bend\nreeve b: bend / head \\ team\n")
	assert.Empty(t, found)
	assert.Equal(t, model.Tied, rig.Ropes[0].Nodes[1].Role)
	rig, _ = oneRig(t, basic+"rope b\nknot eye\npulley p on eye\nreeve long: litter / eye\nreeve b: litter / p \\ team\n")
	assert.Equal(t, model.Tied, rig.Ropes[0].Nodes[1].Role)
}

func TestBrokenRopes(t *testing.T) {
	for reeve, want := range map[string]bool{
		"litter / head \\ team":         false,
		"litter / nowhere-near \\ team": true,
		"litter / team \\ head":         true,
		"litter / tail \\ head":         true,
		"litter / long \\ team":         true,
		"head / litter \\ team":         false, // taken for the knot that it needs
	} {
		rig, _ := oneRig(t, basic+"reeve long: "+reeve+"\n")
		require.Len(t, rig.Ropes, 1)
		assert.Equal(t, want, rig.Ropes[0].Broken, reeve)
		assert.Equal(t, want, rig.Incomplete, reeve)
		assert.Len(t, rig.Ropes[0].Nodes, 3)
	}
}

func TestLoopHasOneStrokeMore(t *testing.T) {
	rig, found := oneRig(t, basic+line+"pulley low on litter\nrope c\nreeve c: head \\ low / loop\n")
	assert.Empty(t, found)
	rope := rig.Ropes[1]
	assert.True(t, rope.Loop)
	assert.Len(t, rope.Nodes, 2)
	assert.Equal(t, []model.Stroke{model.Down, model.Up}, rope.Strokes)
	assert.Equal(t, "/", rope.StrokePlaces[1].Text())
	assert.True(t, rope.Turns(0))
}
