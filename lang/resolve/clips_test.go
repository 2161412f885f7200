package resolve

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
)

var clipCases = []marked{
	{"on a load", basic + line + "pulley low on litter\nrope b\nreeve b: head \\ low / team\n"},
	{"on itself", basic + line + "pulley top on ⟦top⟧clip-circle\nrope b\nreeve b: litter / top\n"},
	{"in a circle", basic + line + "pulley a on ⟦b⟧clip-circle\npulley b on c\npulley c on a\nrope d\nreeve d: litter / a\n"},
	{"two circles, one with a tail", basic + line + "pulley a on ⟦b⟧clip-circle\npulley b on a\npulley c on b\n" +
		"pulley d on ⟦e⟧clip-circle\npulley e on d\nrope x\nreeve x: litter / c \\ d\n"},
	{"on people on the ground", basic + line + "hitch grab on ⟦team⟧on-person\nrope b\nreeve b: litter / grab / head\n"},
	{"on a tender on the ground", basic + line + "tender guide\npulley p on ⟦guide⟧on-person\nrope b\nreeve b: litter / p \\ guide\n"},
	{"on people who hang on the load", basic + line + "hauler self on litter\npulley p on self\nrope b\nreeve b: litter / head \\ p / self\n"},
	{"on a reeved rope", basic + line + "pulley p on ⟦long⟧wrong-kind\nrope b\nreeve b: litter / p\n"},
	{"on a sling that is on a part", basic + line + "sling strap on head\npulley p on strap\nrope b\nreeve b: litter / p\n"},
	{"on a leg", basic + line + "focal hub\nleg l from head to hub\npulley p on ⟦l⟧wrong-kind\nrope b\nreeve b: litter / p \\ hub\n"},
	{"a leg on a part", basic + line + "focal hub\nleg l from head to hub on ⟦head⟧wrong-kind\nrope b\nreeve b: litter / hub\n"},
	{"an anchor on what moves", basic + line + "anchor eye on ⟦litter⟧wrong-kind\nrope b\nreeve b: litter / eye\n"},
	{"an edge on an anchor", basic + line + "edge lip on head\nrope b\nreeve b: litter / lip / head\n"},
	{"legs need both ends", basic + line + "focal hub\nleg ⟦l⟧missing-clause from head\nrope b\nreeve b: litter / hub\n"},
	{"a leg comes from what is fixed", basic + line + "focal hub\nring eye on head\nleg l from eye to hub\nleg m from ⟦litter⟧wrong-kind to ⟦head⟧wrong-kind\nrope b\nreeve b: litter / hub\n"},
}

func TestCircleIsOpened(t *testing.T) {
	rig, found := oneRig(t, "pulley a on b\npulley b on c\npulley c on a\n")
	assert.Equal(t, "a is on b, which in the end is on a", message(t, found, "clip-circle"))
	assert.Nil(t, rig.Part("a").On)
	assert.Same(t, rig.Part("a"), rig.Part("b").Root())
	assert.True(t, rig.Incomplete)
	for _, d := range found {
		if d.Rule == "clip-circle" {
			require.Len(t, d.Related, 2)
			assert.Equal(t, "b is on c", d.Related[0].Message)
			assert.Equal(t, rig.Part("c").OnPlace, d.Related[1].Place)
		}
	}
}

func TestOnPersonTellsTheRemedy(t *testing.T) {
	rig, found := oneRig(t, basic+line+"hitch grab on team\nrope b\nreeve b: litter / grab / head\n")
	assert.Equal(t, "team stands on the ground, and grab cannot be clipped to people; write a line: reeve strap: grab / team",
		message(t, found, "on-person"))
	assert.Nil(t, rig.Part("grab").On)
	assert.True(t, rig.Incomplete)
}

func TestLegsJoinOrDoNot(t *testing.T) {
	rig, _ := oneRig(t, "anchor tree\nfocal hub\nleg l from tree to hub angle -30 deg strut\nleg m from tree\nload litter\nreeve long: litter / hub\n")
	l, m := rig.Part("l").Values, rig.Part("m").Values
	assert.Same(t, rig.Part("tree"), l.From)
	assert.Same(t, rig.Part("hub"), l.To)
	assert.Equal(t, "-30", l.Angle.Low.RatString())
	assert.True(t, l.Strut)
	assert.Nil(t, m.From, "a leg with one end joins nothing")
	assert.Nil(t, m.To)
}

// A chain of clips is walked a bounded number of times, whatever way it is written.
func TestDeepChains(t *testing.T) {
	const deep = 10_000
	for _, way := range []string{"down", "up"} {
		var b strings.Builder
		b.WriteString("anchor p0\n")
		for i := 1; i < deep; i++ {
			k := i
			if way == "up" {
				k = deep - i
			}
			fmt.Fprintf(&b, "ring p%d on p%d\n", k, k-1)
		}
		fmt.Fprintf(&b, "load litter\nrope long\nreeve long: litter / p%d\n", deep-1)
		rig, found := oneRig(t, b.String())
		assert.Empty(t, found)
		assert.Equal(t, model.Anchor, rig.Part(fmt.Sprintf("p%d", deep-1)).Root().Kind)
		assert.True(t, rig.Part("p77").Fixed())
	}
}

func TestDeepCircle(t *testing.T) {
	const deep = 10_000
	var b strings.Builder
	for i := range deep {
		fmt.Fprintf(&b, "ring p%d on p%d\n", i, (i+1)%deep)
	}
	rig, found := oneRig(t, b.String())
	message(t, found, "clip-circle")
	assert.Same(t, rig.Part("p0"), rig.Part("p1").Root())
}
