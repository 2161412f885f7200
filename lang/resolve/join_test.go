package resolve

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
)

// down is a rig whose team pulls down.
const down = "anchor peg\nload box\nhauler crew\npulley wheel on peg\nrope fall\nreeve fall: box / wheel \\ crew\n"

// stages puts a rig "all" of two stages and a rig pulled down behind them.
func stages(statements string) string {
	return "rig a\n" + stage + "rig d\n" + down + "rig all\ninclude a as low\ninclude a as high\ninclude d as d\n" + statements
}

var joinCases = []marked{
	{"a hauler to a load", stages("join low.team to high.litter\n")},
	{"a load to a hauler", stages("join high.litter to low.team\n")},
	{"a chain", stages("join low.team to high.litter\njoin high.team to d.box\n")},
	{"two haulers on one load", stages("join low.team to d.box\njoin high.team to d.box\n")},
	{"two loads", stages("join low.litter to high.litter\n")},
	{"two haulers", stages("join low.team to high.team\njoin low.litter to high.litter\n")},
	{"two anchors", stages("join low.head to high.head\n")},
	{"a hauler to a part", stages("join low.team to high.grab\n")},
	{"a load to a part", stages("join low.litter to high.runner\n")},
	{"a load to a rig's own part", stages("anchor rear\nknot k on rear\njoin low.litter to k\n")},
	{"a hauler to the rig's own load", stages("anchor rear\nload x\nhauler h\nrope r\nreeve r: x / rear \\ h\njoin low.team to x\n")},
	{"by the name that is gone", stages("join low.team to high.litter\nexpect load on low.team under 1 kN\nexpect held without high.litter\nrope r\nreeve r: low.team / d.peg\n")},
	{"loads that were joined before", stages("join low.litter to high.litter\njoin d.crew to low.litter\n")},
	{"an end that is not there", stages("join ⟦low.teem⟧unknown-part to high.litter\n")},
	{"an end of what could not be copied", stages("include ⟦b⟧unknown-rig as lost\njoin lost.team to high.litter\n")},
	{"an end that is left out", stages("include a as more without team\njoin ⟦more.team⟧unknown-part to high.litter\n")},
	{"to itself", stages("join ⟦low.team⟧wrong-join to low.team\n")},
	{"twice", stages("join low.team to high.litter\njoin ⟦low.team⟧wrong-join to high.litter\n")},
	{"once more elsewhere", stages("join low.team to high.litter\njoin ⟦low.team⟧wrong-join to d.box\n")},
	{"two ends of one copy", stages("join ⟦low.team⟧wrong-join to low.litter\n")},
	{"two ends of a copy of a copy", stages("rig more\ninclude all as x\njoin ⟦x.low.team⟧wrong-join to x.high.litter\n")},
	{"two own ends", basic + line + "join ⟦team⟧wrong-join to litter\n"},
	{"two loads that are one already", stages("join low.litter to high.litter\njoin ⟦high.litter⟧wrong-join to low.litter\n")},
	{"two parts", stages("join ⟦low.top⟧wrong-join to high.grab\n")},
	{"a rope", stages("join low.team to ⟦high.long⟧wrong-join\n")},
	{"a tender", stages("tender t\nanchor rear\nrope r\nreeve r: rear \\ t\njoin ⟦t⟧wrong-join to high.litter\n")},
	{"a hauler who stands on the load", "rig a\nanchor head\nload litter\nhauler self on litter\nrope r\nreeve r: litter / head \\ self\nrig b\n" + stage +
		"rig all\ninclude a as x\ninclude b as y\njoin ⟦x.self⟧wrong-join to y.litter\n"},
	{"a hauler of no rope", stages("hauler idle\njoin ⟦idle⟧wrong-join to low.litter\n")},
	{"a load on a part", "rig a\nanchor head\npulley low\nload litter on low\nhauler team\nrope r\nreeve r: head \\ low / team\nrig b\n" + stage +
		"rig all\ninclude a as x\ninclude b as y\njoin ⟦x.litter⟧wrong-join to y.grab\nrig too\ninclude a as x\ninclude b as y\njoin x.litter to y.team\n"},
	{"a load of a model", "stock load dummy mass 80 kg\nrig a\n" + strings.Replace(stage, "load litter", "load litter dummy", 1) +
		"rig all\ninclude a as x\ninclude a as y\njoin x.litter to y.litter\nrig b\n" + strings.Replace(stage, "load litter", "load litter mass 80 kg", 1) +
		"rig too\ninclude a as x\ninclude b as y\njoin ⟦x.litter⟧wrong-join to y.litter\n"},
	{"two loads on parts", "rig a\nanchor head\npulley low\nload litter on low\nhauler team\nrope r\nreeve r: head \\ low / team\n" +
		"rig all\ninclude a as x\ninclude a as y\njoin ⟦x.litter⟧wrong-join to y.litter\n"},
	{"two masses", "rig a\n" + stage + "rig all\njoin ⟦m.litter⟧wrong-join to n.litter\ninclude a as m with litter mass 3 kg\ninclude a as n with litter mass 4 kg\n" +
		"rig same\ninclude a as m with litter mass 3 kg\ninclude a as n with litter mass 3000 g\njoin m.litter to n.litter\n"},
	{"up and down", "rig a\n" + stage + "rope r\nanchor rear\nreeve r: litter / rear \\ team\nrig b\n" + stage +
		"rig all\ninclude a as x\ninclude b as y\njoin ⟦x.team⟧wrong-join to y.litter\n"},
	{"turned over and not", stages("include a as mid\njoin low.team to mid.litter\njoin ⟦d.crew⟧wrong-join to mid.litter\njoin d.box to low.litter\n")},
	{"a hauler who is gone", stages("join low.team to high.litter\nexpect advantage 9:1 by ⟦low.team⟧wrong-kind\n")},
	{"positions that meet", stages("include a as m with litter at 0 m with head at 9 m with team at 4 m\ninclude a as n with litter at 1 m with head at 8 m\njoin m.team to n.litter\n")},
	{"a hauler without a position", stages("include a as m with litter at 0 m with head at 9 m\ninclude a as n with litter at 1 m with head at 8 m\njoin ⟦m.team⟧join-unplaced to n.litter\n")},
	{"a load without a position", stages("include a as m with litter at 0 m with team at 4 m\ninclude a as n with head at 8 m\njoin ⟦n.litter⟧join-unplaced to m.team\n")},
	{"positions that cannot meet", stages("include a as m with litter at 0 m with team at 4 m with head at 9 m\ninclude a as n with litter at 1 m with head at 8 m\n" +
		"join m.team to n.litter\njoin ⟦m.head⟧wrong-join to n.head\n")},
}

// all gives the rig "all" of a text without findings.
func all(t *testing.T, text string) *model.Rig {
	t.Helper()
	file, found := resolved("yard.rig", text)
	require.Empty(t, found)
	return file.Rigs[len(file.Rigs)-1]
}

// written gives a rope's nodes and strokes.
func written(rig *model.Rig, line string) string {
	for _, r := range rig.Ropes {
		if r.Line.Name != line {
			continue
		}
		var words []string
		for i, n := range r.Nodes {
			words = append(words, n.Name())
			if i < len(r.Strokes) {
				words = append(words, r.Strokes[i].String())
			}
		}
		return strings.Join(words, " ")
	}
	return ""
}

func TestJoinOfStages(t *testing.T) {
	rig := all(t, stages("join low.team to high.litter\n"))
	assert.Nil(t, rig.Part("low.team"))
	tie := rig.Part("high.litter")
	assert.Equal(t, model.Knot, tie.Kind)
	assert.Equal(t, `low.litter / low.grab / low.top \ low.runner / high.litter`, written(rig, "low.long"))
	assert.Equal(t, `high.litter / high.grab / high.top \ high.runner / high.team`, written(rig, "high.long"))
	assert.Same(t, tie, rig.Ropes[0].Nodes[4].Part)
	assert.Equal(t, model.Tied, rig.Ropes[0].Nodes[4].Role)
	assert.Same(t, tie, rig.Joins[0].Remains)
	assert.Same(t, tie, rig.Part("high.top").Values.HoldsEnd)
}

func TestJoinTakesTheMassAway(t *testing.T) {
	rig := all(t, stages("include a as m with litter mass 5 kg people 2 raise 3 m\njoin low.team to m.litter\njoin d.crew to high.litter\n")+
		"rig last\ninclude a as x with litter mass 4 kg\ninclude a as y with litter mass 5 kg\njoin x.team to y.litter\n")
	v := rig.Part("y.litter").Values
	assert.Nil(t, v.Mass)
	assert.Nil(t, v.People)
	assert.Empty(t, v.Places)
}

func TestTurnedOver(t *testing.T) {
	rig := all(t, "rig a\n"+strings.Replace(stage, "anchor head", "anchor head at 3 m", 1)+"rig d\n"+down+
		"rig all\ninclude d as low\ninclude a as high with litter at 1 m\njoin low.crew to high.litter\n")
	assert.Equal(t, `low.box / low.wheel \ high.litter`, written(rig, "low.fall"))
	assert.Equal(t, `high.litter \ high.grab \ high.top / high.runner \ high.team`, written(rig, "high.long"))
	assert.Equal(t, "-3", rig.Part("high.head").Values.At.Low.RatString())
	assert.Equal(t, "-1", rig.Part("high.litter").Values.At.Low.RatString())
	assert.Equal(t, "-3 m", rig.Part("high.head").Values.At.String())
}

func TestTurnedOverTwiceIsNotTurned(t *testing.T) {
	rig := all(t, stages("include d as e\njoin d.crew to e.box\njoin e.crew to high.litter\n"))
	assert.Equal(t, `e.box \ e.wheel / high.litter`, written(rig, "e.fall"))
	assert.Equal(t, `high.litter / high.grab / high.top \ high.runner / high.team`, written(rig, "high.long"))
}

func TestOwnPartTurnedOver(t *testing.T) {
	rig := all(t, "rig d\n"+down+"rig all\ninclude d as low\nanchor rear at 3 m\nload x at 1 m\nhauler h\nrope r\nreeve r: x / rear \\ h\njoin low.crew to x\n")
	assert.Equal(t, `x \ rear / h`, written(rig, "r"))
	assert.Equal(t, "-3", rig.Part("rear").Values.At.Low.RatString())
	assert.True(t, rig.Part("rear").Place.IsCopy(), "the text says something else")
	assert.Equal(t, "join low.crew to x", rig.Part("rear").Place.Home().Text())
}

func TestJoinedRigsAreMoved(t *testing.T) {
	rig := all(t, stages("include a as m with litter at 0 m with head at 9 m with team at 4 m\n"+
		"include a as n with litter at 1 m with head at 8 to 8.5 m with team at 2 ft\njoin m.team to n.litter\n"))
	assert.Equal(t, "4", rig.Part("n.litter").Values.At.Low.RatString())
	assert.Equal(t, "11 to 11.5 m", rig.Part("n.head").Values.At.String())
	assert.Equal(t, "9", rig.Part("m.head").Values.At.Low.RatString())
	assert.Equal(t, "3.61 m", rig.Part("n.team").Values.At.String())
}

func TestOwnPositionsStay(t *testing.T) {
	rig := all(t, stages("include a as m with litter at 0 m with head at 9 m with team at 4 m\n"+
		"anchor rear at 30 m\nload x at 20 m\nhauler h\nrope r\nreeve r: x / rear \\ h\njoin m.team to x\n"))
	assert.Equal(t, "30", rig.Part("rear").Values.At.Low.RatString())
	assert.Equal(t, "20", rig.Part("x").Values.At.Low.RatString())
	assert.Equal(t, "25", rig.Part("m.head").Values.At.Low.RatString())
	assert.Equal(t, "16 m", rig.Part("m.litter").Values.At.String())
}

func TestTheTieIsWhereTheHaulerStood(t *testing.T) {
	rig := all(t, stages("include a as m with litter at 0 m with head at 9 m with team at 4 m\njoin m.team to low.litter\n"))
	assert.Equal(t, "4", rig.Part("low.litter").Values.At.Low.RatString())
}

func TestPositionsThatAreNotKnown(t *testing.T) {
	file, _ := resolved("yard.rig", stages("include a as m with litter at 0 m with head at 9 m\ninclude a as n with litter at 1 m with head at 8 m\njoin m.team to n.litter\n"))
	rig := file.Rigs[2]
	assert.NotNil(t, rig.Part("m.head").Values.At)
	assert.Nil(t, rig.Part("n.head").Values.At)
	assert.Nil(t, rig.Part("n.litter").Values.At)
	assert.False(t, rig.Incomplete)
}

func TestMergedPartsHaveWhatBothSay(t *testing.T) {
	rig := all(t, stages("include a as m with litter mass 5 kg raise 3 m with head strength 9 kN with team people 2\n"+
		"include a as n with litter mass 5 kg people 1 with head at 8 m with team pull 200 N\n"+
		"join m.litter to n.litter\njoin m.head to n.head\njoin m.team to n.team\njoin low.team to d.box\njoin high.team to d.box\njoin d.crew to n.litter\n"))
	load, head, team := rig.Part("n.litter"), rig.Part("n.head"), rig.Part("n.team")
	assert.Equal(t, model.Knot, load.Kind, "another stage hauls both")
	assert.Equal(t, "9000", head.Values.Strength.Low.RatString())
	assert.Equal(t, "8", head.Values.At.Low.RatString())
	assert.Equal(t, "2", team.Values.People.Low.RatString())
	assert.Equal(t, "200", team.Values.Pull.Low.RatString())
	assert.Same(t, head, rig.Part("m.top").On)
}
