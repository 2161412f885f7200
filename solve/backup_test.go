package solve_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
	"fairlead/solve"
)

// backups gives the two lines of each load, such as "litter: main litter-top, belay litter-brake".
func backups(res *solve.Result) string {
	var list []string
	stretch := func(s solve.Stretch) string {
		return fmt.Sprintf("%s %s-%s", s.Rope.Line.Name, s.Rope.Nodes[s.From].Name(), s.Rope.Nodes[s.To].Name())
	}
	for _, b := range res.Backups() {
		list = append(list, fmt.Sprintf("%s: %s, %s", b.Load.Name, stretch(b.Main), stretch(b.Second)))
	}
	return strings.Join(list, "; ")
}

const mainAndBelay = `
anchor head
anchor tree
load litter
hauler team
tender belayer
pulley top on head holds
hitch grab
pulley runner on grab
device brake on tree holds
rope main
rope belay
reeve main: litter / grab / top \ runner / team
reeve belay: litter / brake \ belayer
`

func TestTwoLinesThatBackEachOtherUp(t *testing.T) {
	for name, c := range map[string]struct{ rig, want string }{
		"on two anchors": {mainAndBelay, "litter: main litter-top, belay litter-brake"},
		"on one anchor":  {strings.Replace(mainAndBelay, "brake on tree", "brake on head", 1), "litter: main litter-top, belay litter-brake"},
		"at one ring, which a sling holds": {
			strings.NewReplacer("reeve main: litter", "reeve main: master", "reeve belay: litter", "reeve belay: master").
				Replace(mainAndBelay) + "ring master\nsling bridle\nreeve bridle: litter / master\n",
			"litter: main master-top, belay master-brake"},
		"two runs of one rope": {`
anchor head
anchor tree
load litter
hauler team
tender belayer
pulley top on head holds litter
device brake on tree holds litter
rope long
reeve long: litter / top \ team ~ belayer / brake \ litter
`, "litter: long litter-top, long brake-litter"},
		"a slack tie that catches": {`
anchor head
anchor tree
load litter
rope long
sling tie
reeve long: litter / head
reeve tie: litter ~ tree
`, "litter: long litter-head, tie litter-tree"},
		"a stage that hauls another one, both with captures": {`
anchor head
anchor rear
load litter
hauler team
pulley low on litter holds head
knot tie
pulley top on rear holds tie
hitch grab
pulley runner on grab
rope long
rope short
reeve long: head \ low / tie
reeve short: tie / grab / top \ runner / team
`, ""},
		"one line on an anchor with two slings": {`
anchor head
anchor tree
ring plate
load litter
rope long
sling left
sling right
reeve long: litter / plate
reeve left: plate / head
reeve right: plate / tree
`, ""},
		"two slings below one line": {`
anchor head
ring plate
load litter
rope long
sling left
sling right
reeve long: plate / head
reeve left: litter / plate
reeve right: litter / plate
`, ""},
		"a second line that only hauls": {`
anchor head
anchor rear
load litter
hauler team
pulley top on head holds litter
hitch grab
pulley runner on grab
pulley block
rope long
rope short
reeve long: litter / grab / top \ block / team
reeve short: rear \ runner / block
`, ""},
		"a lamp beside what is belayed": {mainAndBelay + "load lamp\nanchor beam\ncord pendant\nreeve pendant: lamp / beam\n",
			"litter: main litter-top, belay litter-brake"},
		"without a capture nothing holds": {strings.NewReplacer("top on head holds", "top on head", "brake on tree holds", "brake on tree").Replace(mainAndBelay), ""},
	} {
		assert.Equal(t, c.want, backups(solved(t, c.rig)), name)
	}
	unsolved := solved(t, "load litter\n")
	assert.Equal(t, solve.Unsolved, unsolved.Status)
	assert.Empty(t, unsolved.Backups())
}

func names(parts []*model.Part) []string {
	var list []string
	for _, p := range parts {
		list = append(list, p.Name)
	}
	return list
}

func TestWhatKeepsTheLoadAfterALoss(t *testing.T) {
	res := solved(t, mainAndBelay)
	assert.Equal(t, []string{"top"}, names(res.Released.Holding()))
	main, belay := res.Rig.Ropes[0], res.Rig.Ropes[1]
	assert.True(t, res.Released.Carries(main, 0))
	assert.False(t, res.Released.Carries(main, 3))
	assert.False(t, res.Released.Carries(belay, 0))
	after := lose(t, res, solve.LostHold, "top")
	assert.Equal(t, []string{"brake"}, names(after.Holding()))
	assert.True(t, after.Carries(belay, 0))
	assert.Equal(t, []string{"top"}, names(lose(t, res, solve.LostAnchor, "tree").Holding()), "what is lost carried nothing")

	litter := res.Rig.Part("litter")
	assert.Equal(t, []string{"brake"}, names(after.HoldingUp(litter)))
	assert.Empty(t, names(after.HoldingUp(res.Rig.Part("team"))), "it hangs on nothing")
	both := solved(t, `
anchor head
load litter
load box
pulley top on head holds
pulley side on head holds
tender one
tender two
rope long
rope short
reeve long: litter / top \ one
reeve short: box / side \ two
`)
	assert.Equal(t, []string{"top", "side"}, names(both.Released.Holding()))
	assert.Equal(t, []string{"side"}, names(both.Released.HoldingUp(both.Rig.Part("box"))))

	// two hitches on one body count as one grip, and both hold
	res = solved(t, `
anchor head
load litter
hauler team
hitch first on head
hitch second on head
rope long
reeve long: litter / first / second / team
`)
	assert.Equal(t, []string{"first", "second"}, names(res.Released.Holding()))
	assert.Equal(t, []string{"second"}, names(lose(t, res, solve.LostGrip, "first").Holding()))
	falls := lose(t, res, solve.LostLine, "long")
	assert.Empty(t, falls.Holding())
	assert.False(t, falls.Carries(res.Rig.Ropes[0], 0))
}

func TestOneHaulerTiedOff(t *testing.T) {
	res := solved(t, `
anchor head
load litter
load box
hauler team
hauler other
rope long
rope short
reeve long: litter / head \ team
reeve short: box / head \ other
`)
	assert.Equal(t, solve.Down, res.Released.Answer)
	stay := res.TiedOff(res.Rig.Part("team"))
	require.Len(t, stay.Sinking, 1)
	assert.Equal(t, "box", stay.Sinking[0].Loads[0].Name)
	assert.Equal(t, solve.Held, res.AfterWhileHauling(solve.Lost{}).Answer, "both hold on")
}

func TestTellingLosses(t *testing.T) {
	res := solved(t, mainAndBelay)
	list, all := res.TellingLosses(nil)
	assert.True(t, all)
	for _, l := range list {
		assert.True(t, l.Whole(), "%s", l.Part.Name)
		assert.Equal(t, solve.Held, l.Answer, l.Part.Name)
	}
	res = solved(t, strings.Replace(mainAndBelay, "reeve belay: litter / brake \\ belayer", "reeve belay: brake \\ belayer", 1))
	list, all = res.TellingLosses(nil)
	assert.True(t, all)
	assert.Contains(t, outcomes(list), "anchor head: falls")
	assert.NotContains(t, outcomes(list), "clip top")

	// so many questions and no more; what carries nothing is no question
	res = solved(t, strings.Replace(mainAndBelay, "reeve belay: litter / brake \\ belayer", "reeve belay: brake \\ belayer", 1))
	left := 2
	list, all = res.TellingLosses(func() bool { left--; return left >= 0 })
	assert.False(t, all)
	assert.Equal(t, "anchor head: falls\nanchor tree: held\nbend top: falls", outcomes(list))
	asked := 0
	res = solved(t, mainAndBelay)
	_, all = res.TellingLosses(func() bool { asked++; return true })
	assert.True(t, all)
	assert.Equal(t, 1, asked, "the belay keeps it without head, and by that without the rest of the main line")
}

func TestHowHighALoadGets(t *testing.T) {
	const rig = `
anchor head at 20 m
load litter at 1 m
hauler team
pulley top on head holds
hitch grab at 8 m
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team
`
	highest := func(text string) string {
		res := solved(t, text)
		n, known := res.Highest(res.Rig.Part("litter"))
		if !known {
			return "unknown"
		}
		return n.String()
	}
	assert.Equal(t, "13", highest(rig), "one stroke of 12 m")
	assert.Equal(t, "16", highest(strings.Replace(rig, "load litter", "load litter raise 15 m", 1)))
	assert.Equal(t, "20", highest(strings.Replace(rig, "load litter", "load litter raise 30 m", 1)), "it ends at the head")
	assert.Equal(t, "1", highest(strings.Replace(rig, "grab at 8 m", "grab", 1)), "no stroke is known")
	assert.Equal(t, "31", highest(strings.NewReplacer("grab at 8 m", "grab", "load litter", "load litter raise 30 m").Replace(rig)), "nor where it ends")
	assert.Equal(t, "unknown", highest(strings.Replace(rig, "litter at 1 m", "litter", 1)))
}
