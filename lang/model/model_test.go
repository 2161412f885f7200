package model

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// chain makes a rig of n rings, each on the one before, the first of a kind.
func chain(kind Kind, n int) *Rig {
	rig := &Rig{}
	for i := range n {
		p := &Part{Name: fmt.Sprintf("p%d", i), Kind: Ring}
		if i == 0 {
			p.Kind = kind
		} else {
			p.On = rig.Parts[i-1]
		}
		rig.Parts = append(rig.Parts, p)
	}
	return rig
}

func TestRootBeforeAndAfterSeal(t *testing.T) {
	rig := chain(Anchor, 4)
	assert.Same(t, rig.Parts[0], rig.Parts[3].Root())
	rig.Seal()
	for i, p := range rig.Parts {
		assert.Same(t, rig.Parts[0], p.Root())
		assert.Equal(t, i, p.Index)
		assert.Same(t, p, rig.Part(p.Name))
	}
	assert.Nil(t, rig.Part("p4"))
}

func TestSealWalksAChainOnce(t *testing.T) {
	rig := chain(Load, 200_000) // by the square, this would take minutes
	rig.Seal()
	assert.Same(t, rig.Parts[0], rig.Parts[199_999].Root())
}

func TestFirstOfANameIsFound(t *testing.T) {
	a, b := &Part{Name: "top"}, &Part{Name: "top"}
	rig := &Rig{Parts: []*Part{a, b}}
	assert.Same(t, a, rig.Part("top"))
	rig.Seal()
	assert.Same(t, a, rig.Part("top"))
}

func TestWhatMoves(t *testing.T) {
	cases := []struct {
		root         Kind
		fixed, moves bool
	}{
		{Anchor, true, false}, {Edge, true, false}, {Focal, true, false},
		{Load, false, true}, {Counterweight, false, true}, {Hitch, false, true}, {Pulley, false, true}, {Knot, false, true},
		{Hauler, false, false}, {Tender, false, false}, {Leg, false, false}, {RopeLine, false, false},
	}
	for _, c := range cases {
		for _, p := range chain(c.root, 2).Parts {
			assert.Equal(t, c.fixed, p.Fixed(), "%s, %s", c.root, p.Name)
			assert.Equal(t, c.moves, p.Moves(), "%s, %s", c.root, p.Name)
		}
	}
	load := &Part{Kind: Load}
	assert.True(t, (&Part{Kind: Hauler, On: load}).Moves(), "people on the load")
	assert.True(t, (&Part{Kind: SlingLine, On: load}).Moves())
	assert.False(t, (&Part{Kind: SlingLine, On: load}).IsReeved())
	assert.True(t, (&Part{Kind: SlingLine}).IsReeved())
}

func TestStrokesBesideANode(t *testing.T) {
	nodes := make([]Node, 4)
	open := &Rope{Nodes: nodes, Strokes: []Stroke{Up, Down, Down}}
	assert.Equal(t, -1, open.Before(0))
	assert.Equal(t, []bool{false, true, false, false}, each(open, open.Turns))
	assert.Equal(t, []bool{false, false, true, false}, each(open, open.RunsOn))
	closed := &Rope{Nodes: nodes, Strokes: []Stroke{Up, Down, Slack, Up}, Loop: true}
	assert.Equal(t, 3, closed.Before(0))
	assert.Equal(t, 0, closed.After(3))
	assert.Equal(t, []bool{false, true, false, false}, each(closed, closed.Turns))
	assert.Equal(t, []bool{true, false, false, false}, each(closed, closed.RunsOn))
}

func each(r *Rope, f func(int) bool) []bool {
	var out []bool
	for i := range r.Nodes {
		out = append(out, f(i))
	}
	return out
}

func TestWords(t *testing.T) {
	require.Equal(t, []string{"/", `\`, "~"}, []string{Up.String(), Down.String(), Slack.String()})
	assert.Equal(t, "tail", Node{}.Name())
	assert.Equal(t, "top", Node{Part: &Part{Name: "top"}}.Name())
	for r := Tied; r <= KnotTie; r++ {
		assert.Equal(t, r < Bend, r.Ends())
	}
}
