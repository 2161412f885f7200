package solve_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

func TestPositionIsOwnThenOfWhatItIsOnThenOfWhatHangsOnIt(t *testing.T) {
	res := solved(t, `
anchor head at 10 m
pulley top on head
ring eye on top at 9.5 m
load litter
ring collar on litter
pulley low on collar at 30 cm
pulley side on litter at 2 to 3 m
ring far on litter
hauler team
tender minder at 4 m
rope long
rope safety
reeve long: litter / top \ low / eye \ side / team
reeve safety: far / top \ minder
`)
	at := func(name string) string {
		n, known := res.Position(res.Rig.Part(name))
		if !known {
			return "unknown"
		}
		return n.String()
	}
	for name, want := range map[string]string{
		"head": "10", "top": "10", "eye": "19/2", // own beats what it is on
		"low": "3/10", "side": "5/2", // the middle of a range
		"collar": "3/10", "litter": "5/2", // what hangs on it, the nearest
		"far": "5/2", "minder": "4", "team": "unknown", "long": "unknown",
	} {
		assert.Equal(t, want, at(name), name)
	}
	_, known := res.Position(nil)
	assert.False(t, known)
	length, known := res.StrandLength(res.Rig.Ropes[0], 1)
	assert.True(t, known)
	assert.Equal(t, "97/10", length.String())
	_, known = res.StrandLength(res.Rig.Ropes[0], 4)
	assert.False(t, known, "nobody says where the team stands")
}

func TestRopeOfThreeToOne(t *testing.T) {
	res := solved(t, three("raise 10 m", "", "6"))
	require.Len(t, res.Rope, 1)
	need := res.Rope[0]
	assert.Equal(t, "14", number(need.Strands), "10 up and 4 down; the team stands where it comes out")
	assert.Equal(t, "30", number(need.TakenIn))
	assert.Equal(t, "0", number(need.PaidOut))
	assert.Equal(t, "14", number(need.Needed), "what is taken in was in the strands before")
	assert.Equal(t, "40", number(need.Length))
	assert.False(t, need.Short)
	short := solved(t, strings.Replace(three("", "", "6"), "length 40 m", "length 13.9 m", 1)).Rope[0]
	assert.True(t, short.Short)
	assert.Equal(t, "12", number(short.TakenIn), "over one stroke")
	again := res.RopeFor(haul(t, res), lp.Int(5))
	assert.Equal(t, "15", number(again[0].TakenIn))
}

func TestRopeThatIsPaidOut(t *testing.T) {
	const tag = `
anchor head at 10 m
load litter at 1 m raise 8 m
hauler team
tender minder %MINDER%
pulley top on head holds litter
rope long
rope tag length 6 m
reeve long: litter / top \ team
reeve tag: litter \ minder
`
	need := solved(t, strings.ReplaceAll(tag, "%MINDER%", "at -1 m")).Rope[1]
	assert.Equal(t, "2", number(need.Strands))
	assert.Equal(t, "8", number(need.PaidOut))
	assert.Equal(t, "10", number(need.Needed))
	assert.True(t, need.Short)
	need = solved(t, strings.ReplaceAll(tag, "%MINDER%", "")).Rope[1]
	assert.Equal(t, "8", number(need.Needed), "the minder stands below the load")
}

func TestSlackCountsOnlyBetweenPositions(t *testing.T) {
	const text = `
anchor head at 10 m
anchor tree %TREE%
ring plate at 7 m
load litter at 0 m
hauler team
pulley top on plate holds litter
sling strop
sling back-tie
rope long
reeve strop: head \ plate
reeve back-tie: tree ~ plate
reeve long: litter / top \ team
`
	res := solved(t, strings.ReplaceAll(text, "%TREE%", "at 5 m"))
	assert.Equal(t, "2", number(res.Rope[1].Needed))
	res = solved(t, strings.ReplaceAll(text, "%TREE%", ""))
	assert.Equal(t, "0", number(res.Rope[1].Needed))
	assert.Equal(t, "3", number(res.Rope[0].Needed))
}

func TestRopeOfWhichAPositionIsMissing(t *testing.T) {
	res := solved(t, strings.Replace(three("", "", "6"), "at 6 m", "", 1))
	need := res.Rope[0]
	assert.Nil(t, need.Strands)
	assert.Nil(t, need.Needed)
	assert.Nil(t, need.TakenIn)
	require.Len(t, need.Missing, 1, "the runner is on the hitch")
	assert.Equal(t, "grab", need.Missing[0].Name)
	assert.Nil(t, solved(t, three("", "", "6")[len("\nanchor head at 10 m"):]+"anchor head\n").Rope[0].Strands)
	assert.Nil(t, solved(t, strings.NewReplacer(" at 10 m", "", " at 0 m", "", " at 6 m", "").Replace(three("", "", "6"))).Rope,
		"no part has a position")
}

// A rope keeps its length: what lies in the strands after a stroke, seen from
// people who stand still, and what they have taken in is what lay there at the start.
func TestRopeIsConserved(t *testing.T) {
	for _, text := range []string{three("", "", "6"), nine("30", "", "", ""), sixToOne} {
		res := solved(t, text)
		ph := haul(t, res)
		moved := func(p *model.Part) lp.Num {
			for _, m := range ph.Motion {
				if slices.Contains(m.Body.Parts, p) {
					return m.Rise.Mul(*ph.Stroke.Hauled)
				}
			}
			return lp.Num{}
		}
		for _, need := range res.RopeFor(ph, *ph.Stroke.Rise) {
			sum := *need.TakenIn
			for i, s := range need.Rope.Strokes {
				length, _ := res.StrandLength(need.Rope, i)
				growth := moved(need.Rope.Nodes[i+1].Part).Sub(moved(need.Rope.Nodes[i].Part)).Mul(lp.Int(int64(s)))
				sum = sum.Add(length).Add(growth)
			}
			assert.Equal(t, need.Strands.String(), sum.String(), "%s\n%s", need.Rope.Line.Name, text)
		}
	}
}
