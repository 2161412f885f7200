package solve_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
	"fairlead/solve/lp"
)

// stroke gives that of the only haul phase of a rig.
func stroke(t *testing.T, text string) *solve.Stroke {
	s := haul(t, solved(t, text)).Stroke
	require.NotNil(t, s)
	return s
}

// told writes a pair as "grab-top 9 at 1, meets 9, again".
func told(p *solve.Pair) string {
	if p == nil {
		return "none"
	}
	text := fmt.Sprintf("%s-%s ", p.Lower.Name, p.Upper.Name)
	if p.Gap == nil {
		return text + "unknown at " + p.Rate.String()
	}
	text += fmt.Sprintf("%v at %v, meets %v", p.Gap, p.Rate, p.Meets)
	if p.Resettable {
		text += ", again"
	}
	return text
}

func allTold(s *solve.Stroke) []string {
	var list []string
	for _, p := range s.Pairs {
		list = append(list, told(p))
	}
	return list
}

func number(n *lp.Num) string {
	if n == nil {
		return "unknown"
	}
	return n.String()
}

const oneToOne = `
anchor head at 10 m
load litter at 0 m %LOAD%
hauler team
pulley top on head holds litter
rope long length 30 m
reeve long: litter / top \ team
`

func TestStrokeOfOneToOne(t *testing.T) {
	s := stroke(t, strings.ReplaceAll(oneToOne, "%LOAD%", ""))
	assert.Equal(t, []string{"litter-top 10 at 1, meets 10"}, allTold(s))
	assert.Equal(t, "10", number(s.Rise))
	assert.Equal(t, "10", number(s.Hauled))
	assert.Same(t, s.First, s.End, "the load at the top ends it")
	assert.Nil(t, s.Stage)
	assert.Nil(t, s.Raise, "no height is asked for")
	assert.Nil(t, s.Together)
}

func TestLengthsComeOffTheGap(t *testing.T) {
	s := stroke(t, strings.ReplaceAll(strings.ReplaceAll(oneToOne, "%LOAD%", "length 50 cm"), "holds", "length 25 cm holds"))
	assert.Equal(t, []string{"litter-top 37/4 at 1, meets 37/4"}, allTold(s))
}

func TestStrokeOfTwoToOne(t *testing.T) {
	s := stroke(t, `
anchor head at 8 m
load litter raise 20 m
pulley runner on litter at 2 m holds head
hauler team
rope long
reeve long: head \ runner / team
`)
	assert.Equal(t, []string{"runner-head 6 at 1, meets 6"}, allTold(s))
	assert.Equal(t, "12", number(s.Hauled))
	require.NotNil(t, s.Raise)
	assert.Equal(t, "6", s.Raise.Reached.String())
	assert.Same(t, s.End, s.Raise.EndedBy)
	assert.Zero(t, s.Raise.Resets)
}

const threeUp = `
anchor head at 10 m
load litter at 0 m %LOAD%
hauler team
pulley top on head holds litter %TOP%
hitch grab at %GRAB% m
pulley runner on grab
rope long length 40 m
reeve long: litter / grab / top \ runner / team
`

func three(load, top, grab string) string {
	return strings.NewReplacer("%LOAD%", load, "%TOP%", top, "%GRAB%", grab).Replace(threeUp)
}

func TestStrokeOfThreeToOne(t *testing.T) {
	s := stroke(t, three("raise 10 m", "", "6"))
	assert.Equal(t, []string{"grab-top 4 at 1, meets 4, again", "litter-top 10 at 1, meets 10"}, allTold(s))
	assert.Equal(t, "4", number(s.Rise))
	assert.Equal(t, "12", number(s.Hauled))
	assert.Equal(t, "3", s.Travel.String())
	assert.Same(t, s.First, s.Stage)
	assert.Equal(t, "litter", s.End.Lower.Name)
	r := s.Raise
	assert.Equal(t, "10", r.Reached.String())
	assert.Nil(t, r.EndedBy)
	assert.Equal(t, 2, r.Resets, "4, 8, 10")
	assert.Equal(t, []int{2, 0}, r.PairResets)
	assert.Equal(t, "30", r.Hauled.String())
	assert.Equal(t, 1, s.For(lp.Int(8)).Resets, "two whole strokes")
	assert.Equal(t, 0, s.For(lp.Int(4)).Resets)
	assert.Equal(t, 2, s.For(lp.Frac(801, 100)).Resets)
	assert.Equal(t, "10", s.For(lp.Int(11)).Reached.String())
	assert.Same(t, s.End, s.For(lp.Int(11)).EndedBy)
}

func TestNearestPartOfABodyMeets(t *testing.T) {
	s := stroke(t, three("", "", "6")+"ring eye on grab\n") // the same, by parts
	require.Equal(t, "grab-top 4 at 1, meets 4, again", told(s.First))
	text := strings.Replace(three("", "", "6"), "runner on grab", "runner on grab at 7 m length 50 cm", 1)
	assert.Equal(t, "runner-top 5/2 at 1, meets 5/2, again", told(stroke(t, text).First))
}

func TestSetBackIsLostAtEachReset(t *testing.T) {
	s := stroke(t, three("raise 10 m", "set-back 50 cm", "6"))
	assert.Equal(t, "1/2", s.SetBack.String(), "the load hangs on the captured strand alone")
	// 4, back to 3.5, 7.5, back to 7, then 3 more.
	assert.Equal(t, 2, s.Raise.Resets)
	assert.Equal(t, "1", s.Raise.Lost.String())
	assert.Equal(t, "33", s.Raise.Hauled.String())
	assert.Equal(t, 1, s.For(lp.Frac(15, 2)).Resets)
	assert.Equal(t, 2, s.For(lp.Frac(76, 10)).Resets)
	lame := stroke(t, three("raise 9 m", "set-back 2 m", "8"))
	assert.True(t, lame.Raise.Endless, "each reset loses what a stroke wins")
	assert.Equal(t, "2", lame.Raise.Reached.String())
}

func TestSetBackOfAHitchThatPullsIsLostInEachStroke(t *testing.T) {
	text := strings.Replace(three("raise 9 m", "", "6"), "hitch grab", "hitch grab set-back 50 cm", 1)
	s := stroke(t, text)
	// The hitch slips half a metre up the rope, for which the runner takes in one.
	assert.Equal(t, []string{"grab-top 4 at 1, meets 7/2, again", "litter-top 10 at 1, meets 10"}, allTold(s))
	assert.Equal(t, "1", s.Slip.String())
	assert.Equal(t, "23/2", number(s.Hauled))
	assert.Zero(t, s.SetBack.Sign(), "the load does not sink")
	assert.Equal(t, 2, s.Raise.Resets, "3.5, 7, 9")
	assert.Equal(t, "30", s.Raise.Hauled.String(), "27, and one at each of three strokes")
	// The last half metre is too short for the hitch to take hold.
	ten := s.For(lp.Int(10))
	assert.Equal(t, "grab", ten.EndedBy.Lower.Name)
	assert.Equal(t, "19/2", ten.Reached.String())
	s = stroke(t, strings.Replace(text, "set-back 50 cm", "set-back 5 m", 1))
	assert.Equal(t, "0", number(s.Rise))
	assert.True(t, s.Raise.Endless)
	// Without a capture at the head the hitch holds the load hands off too, and never
	// lets go.
	s = stroke(t, strings.NewReplacer("holds litter", "", "runner / team", `runner / end (holds) \ team`,
		"rope long", "pulley end on head\nrope long").Replace(text))
	assert.Zero(t, s.Slip.Sign())
	assert.Equal(t, "grab-top 4 at 1, meets 4", told(s.First))
}

func TestSetBackOfACaptureOnTheHauledSide(t *testing.T) {
	// Two to one with the capture behind the runner: half of its set-back is lost.
	s := stroke(t, `
anchor head at 8 m
load litter at 0 m
pulley runner on litter
pulley top on head holds head set-back 20 cm
hauler team
rope long
reeve long: head \ runner / top \ team
`)
	assert.Equal(t, "1/10", s.SetBack.String())
}

func TestWithoutACaptureNothingIsReset(t *testing.T) {
	s := stroke(t, strings.Replace(three("", "", "6"), "holds litter", "", 1))
	assert.False(t, s.First.Resettable, "the load would fall")
	assert.Nil(t, s.Stage)
	assert.Equal(t, "grab", s.End.Lower.Name)
}

const sixToOne = `
anchor head at 12 m
anchor rear at 20 m
load drum at 0 m raise 12 m
hauler team
pulley top on head holds drum
hitch grab at 0 m
pulley runner on grab
pulley block at 11 m
rope long
rope short
reeve long: drum / grab / top \ runner / block
reeve short: rear \ block / team
`

func TestSecondStageOfSixToOneRunsOutFirst(t *testing.T) {
	s := stroke(t, sixToOne)
	// The block rises three metres for each metre of the drum.
	assert.Equal(t, []string{
		"block-rear 9 at 3, meets 3, again",
		"grab-top 12 at 1, meets 12, again",
		"drum-top 12 at 1, meets 12",
	}, allTold(s))
	assert.Equal(t, "block", s.Stage.Lower.Name)
	assert.Equal(t, "18", number(s.Hauled))
}

// The block is tied to the end of the first rope. It comes down only as the runner does,
// and that can go no lower than the drum.
func TestRopeThatHasComeThroughTheCaptureTakesRoom(t *testing.T) {
	s := stroke(t, sixToOne)
	assert.Equal(t, "3", s.Raise.Reached.String(), "the tractor starts at the drum")
	assert.Same(t, s.Stage, s.Raise.EndedBy)
	assert.Zero(t, s.Raise.Resets)
	// From 6 m on: there are 11 m of rope from the head to the block and, drum at 7 m, 7 m
	// more. That is 5 m down to the runner at the drum and 13 m up to the rear.
	s = stroke(t, strings.Replace(sixToOne, "hitch grab at 0 m", "hitch grab at 6 m", 1))
	assert.Equal(t, "7", s.Raise.Reached.String())
	assert.Same(t, s.Stage, s.Raise.EndedBy)
	assert.Equal(t, 2, s.Raise.Resets, "3, 6, 7")
	assert.Equal(t, []int{2, 1, 0}, s.Raise.PairResets)
	assert.Equal(t, 1, s.For(lp.Frac(9, 2)).Resets)
	rise, by := s.Limit()
	assert.Equal(t, "7", number(rise))
	assert.Same(t, s.Stage, by)
	rise, by = stroke(t, three("", "", "6")).Limit()
	assert.Equal(t, "10", number(rise))
	assert.Equal(t, "litter", by.Lower.Name)
}

const nineToOne = `
anchor head at 10 m
anchor far at %FAR% m
load litter at 0 m %LOAD%
hauler team
pulley top on head holds litter %TOP%
pulley q on far %Q%
hitch grab at 1 m
pulley runner on grab
hitch grab2 at 9 m
pulley runner2 on grab2
rope long
reeve long: litter / grab / top \ runner / grab2 / q \ runner2 / team
`

func nine(far, load, top, q string) string {
	return strings.NewReplacer("%FAR%", far, "%LOAD%", load, "%TOP%", top, "%Q%", q).Replace(nineToOne)
}

func TestSecondStageOfNineToOneRunsOutFirst(t *testing.T) {
	s := stroke(t, nine("30", "raise 9 m", "", ""))
	assert.Equal(t, []string{
		"grab2-q 21 at 3, meets 7, again",
		"grab-top 9 at 1, meets 9, again",
		"litter-top 10 at 1, meets 10",
	}, allTold(s))
	assert.Equal(t, "63", number(s.Hauled))
	assert.Equal(t, "grab2", s.Stage.Lower.Name)
	assert.Equal(t, []int{1, 0, 0}, s.Raise.PairResets)
	// The first stage has nine metres; the second, three times as fast, wants 27.
	require.NotNil(t, s.Together)
	assert.Equal(t, "9", s.Together.Rise.String())
	starts := map[string]string{}
	for _, st := range s.Together.Starts {
		starts[st.Part.Name] = st.At.String()
	}
	assert.Equal(t, map[string]string{"grab": "1", "grab2": "3"}, starts)
}

func TestTogetherIsLimitedByTheRoomThereIs(t *testing.T) {
	// The second hitch can go no lower than the runner, which is at 10 m − rise:
	// 20 m − 3·rise ≥ 10 m − rise gives 5 m.
	s := stroke(t, nine("20", "", "", ""))
	require.NotNil(t, s.Together)
	assert.Equal(t, "5", s.Together.Rise.String())
	// With both stages on fixed points at one height there is no room at all.
	assert.Nil(t, stroke(t, nine("10", "", "", "")).Together)
}

func TestACaptureOfTheSecondStageLocksTheFirst(t *testing.T) {
	s := stroke(t, nine("30", "", "", "holds litter"))
	byName := map[string]bool{}
	for _, p := range s.Pairs {
		byName[p.Lower.Name] = p.Resettable
	}
	assert.Equal(t, map[string]bool{"grab2": true, "grab": false, "litter": false}, byName,
		"the runner can go down only with rope that q would have to give back")
	assert.Equal(t, "9", s.End.Meets.String())
}

func TestSetBackOfTwoCaptures(t *testing.T) {
	// What runs back through q is three times what the load sinks: it bites first.
	s := stroke(t, nine("30", "", "set-back 10 cm", "holds litter set-back 15 cm"))
	assert.Equal(t, "1/20", s.SetBack.String())
	s = stroke(t, nine("30", "", "set-back 10 cm", "holds litter set-back 60 cm"))
	assert.Equal(t, "1/10", s.SetBack.String())
}

func TestTwoOnTwoCannotBeReset(t *testing.T) {
	s := stroke(t, `
anchor head at 10 m
anchor beam at 10 m
load stone at 0 m raise 6 m
hauler team
pulley low on stone holds beam
pulley high at 4 m
pulley catch on beam holds beam
rope first
rope second
reeve first: head \ low (holds head) / high
reeve second: beam \ high / catch \ team
`)
	// The rope between the blocks is fast at both ends: slack in it wins nothing.
	assert.Equal(t, []string{"high-beam 6 at 2, meets 3", "low-head 10 at 1, meets 10"}, allTold(s))
	assert.Equal(t, "high", s.Raise.EndedBy.Lower.Name)
	assert.Equal(t, "3", s.Raise.Reached.String())
}

func TestKnotMeetsABend(t *testing.T) {
	s := stroke(t, `
anchor head at 10 m
load litter at 0 m raise 8 m
hauler team
knot joint at 5 m
pulley top on head holds litter
rope long
reeve long: litter / joint / top \ team
`)
	assert.Equal(t, []string{"joint-top 5 at 1, meets 5", "litter-top 10 at 1, meets 10"}, allTold(s))
	assert.Equal(t, "joint", s.Raise.EndedBy.Lower.Name)
}

const slackLine = `
anchor head at 10 m
anchor tree at 9 m
load litter at 0 m
hauler team
tender minder
pulley top on head holds litter
device plate on tree %PLATE%
knot joint at 3 m
hitch grab at 4 m
pulley runner on grab
rope long
rope safety length 8 m
reeve long: litter / grab / top \ runner / team
reeve safety: litter / joint / plate \ minder
`

func TestKnotOnTheTendedRopeMovesWithIt(t *testing.T) {
	s := stroke(t, strings.ReplaceAll(slackLine, "%PLATE%", "holds litter"))
	assert.Equal(t, []string{
		"grab-top 6 at 1, meets 6, again",
		"joint-plate 6 at 1, meets 6",
		"litter-plate 9 at 1, meets 9",
	}, allTold(s))
	s = stroke(t, strings.ReplaceAll(slackLine, "%PLATE%", ""))
	assert.Equal(t, "joint-plate 6 at 1, meets 6", told(s.Pairs[1]), "slack above the load is no reset")
}

func TestKnotThatTwoTiesPullAtIsFree(t *testing.T) {
	text := strings.ReplaceAll(slackLine, "%PLATE%", "")
	s := stroke(t, strings.ReplaceAll(text, `joint / plate \ minder`, "joint / tree"))
	for _, p := range s.Pairs {
		assert.NotEqual(t, "joint", p.Lower.Name)
	}
}

func TestMissingPositionsAreNamed(t *testing.T) {
	text := strings.Replace(three("raise 8 m", "", "6"), "at 6 m", "", 1)
	s := stroke(t, text)
	require.Len(t, s.Missing, 1)
	assert.Equal(t, "grab", s.Missing[0].Name)
	assert.False(t, s.Known())
	assert.Nil(t, s.First)
	assert.Nil(t, s.Rise)
	assert.Nil(t, s.Raise)
	assert.Nil(t, s.For(lp.Int(3)))
	assert.Equal(t, []string{"litter-top 10 at 1, meets 10", "grab-top unknown at 1"}, allTold(s))
}

func TestStrokeOfInheritedPositionsAgainstTheDrawing(t *testing.T) {
	text := strings.Replace(three("", "", "6"), "top on head", "top on head at 5 m", 1)
	text = strings.Replace(text, "hitch grab at 6 m", "hitch grab", 1)
	text = strings.Replace(text, "runner on grab", "runner on grab at 5 m", 1)
	s := stroke(t, text)
	assert.True(t, s.Known(), "at one height")
	text = strings.Replace(text, "runner on grab at 5 m", "eye on grab at 7 m\npulley runner on grab", 1)
	s = stroke(t, text)
	assert.False(t, s.Known())
	require.Len(t, s.Against, 2)
	assert.Equal(t, []int{1, 2}, []int{s.Against[0].Index, s.Against[1].Index})
}

func TestNothingMeets(t *testing.T) {
	s := stroke(t, `
anchor head
load litter
hauler team
rope long
reeve long: litter / team
`)
	assert.True(t, s.Known())
	assert.Nil(t, s.First)
	assert.Equal(t, "7", s.For(lp.Int(7)).Reached.String())
	assert.Equal(t, "7", s.For(lp.Int(7)).Hauled.String())
}

func TestNoStrokeWithoutARaise(t *testing.T) {
	res := solved(t, `
anchor head at 5 m
load litter at 0 m
rope long
reeve long: litter / head
`)
	assert.Nil(t, res.Hold().Stroke)
	require.Len(t, res.Rope, 1)
	assert.Equal(t, "5", number(res.Rope[0].Needed))
}

func TestSetBackOfAHitchOfTheSecondStage(t *testing.T) {
	// grab2 slips 30 cm while the first stage stands; the team takes in twice that.
	text := strings.Replace(nine("30", "raise 9 m", "", ""), "hitch grab2", "hitch grab2 set-back 30 cm", 1)
	s := stroke(t, text)
	assert.Equal(t, "grab2-q 21 at 3, meets 69/10, again", told(s.First), "(21 − 0.3)/3")
	assert.Equal(t, "3/5", s.Slip.String())
	// That of grab draws the second stage along: 30 cm close there, and twice that at q,
	// with nothing gained at the litter.
	s = stroke(t, strings.Replace(nine("30", "raise 9 m", "", ""), "hitch grab at", "hitch grab set-back 30 cm at", 1))
	assert.Equal(t, []string{
		"grab2-q 21 at 3, meets 34/5, again",
		"grab-top 9 at 1, meets 87/10, again",
		"litter-top 10 at 1, meets 10",
	}, allTold(s))
}

// Both stages end at one head: the second one has no room but what the load leaves.
func TestStrokesGetShorterTowardTheTop(t *testing.T) {
	text := strings.Replace(nine("10", "", "", ""), "hitch grab2 at 9 m", "hitch grab2 at 4 m", 1)
	s := stroke(t, text)
	assert.Equal(t, "2", number(s.Rise), "(10 − 4)/3")
	assert.Equal(t, 1, s.For(lp.Int(4)).Resets)
	assert.Equal(t, 2, s.For(lp.Int(6)).Resets, "the last whole stroke begins at 4 m")
	// Then each closes a third of what is left: 7.33, 8.22, 8.81, 9.21, 9.47, 9.65.
	assert.Equal(t, 3, s.For(lp.Frac(73, 10)).Resets)
	assert.Equal(t, 4, s.For(lp.Frac(74, 10)).Resets)
	nearly := s.For(lp.Frac(95, 10))
	assert.Equal(t, 8, nearly.Resets)
	assert.Equal(t, []int{8, 1, 0}, nearly.PairResets)
	assert.False(t, nearly.Endless)
	assert.Equal(t, 23, s.For(lp.Int(10)).Resets, "up to a millimetre")
	over := s.For(lp.Int(11))
	assert.Equal(t, "litter", over.EndedBy.Lower.Name)
	assert.Equal(t, "10", over.Reached.String())
	// With a set-back of half a metre the strokes win nothing from where they are as long.
	s = stroke(t, strings.Replace(text, "holds litter", "holds litter set-back 50 cm", 1))
	lame := s.For(lp.Frac(95, 10))
	assert.True(t, lame.Endless)
	assert.Equal(t, "9", lame.Reached.String(), "(10 − 8.5)/3 is half a metre")
}
