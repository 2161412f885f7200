package solve_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
)

// drops gives how far each load goes down, such as "litter 3/2".
func drops(d *solve.Drop) string {
	var list []string
	for _, l := range d.Loads {
		list = append(list, l.Load.Name+" "+l.Metres.String())
	}
	return strings.Join(list, ", ")
}

// gaps gives what a drop lacks, such as "no-length back".
func gaps(d *solve.Drop) string {
	var list []string
	for _, m := range d.Missing {
		word := string(m.Gap)
		if m.Part != nil {
			word += " " + m.Part.Name
		}
		list = append(list, word)
	}
	return strings.Join(list, ", ")
}

// The plate is backed up by a rope of 4 m to a tree 2.5 m behind it: 1.5 m are slack.
const backedUp = `
anchor head at 10 m
anchor tree at 12.5 m
device plate on head holds
load litter at 0 m
tender minder at 8 m
rope long
rope back length 4 m
reeve long: litter / plate \ minder
reeve back: tree ~ plate
`

func TestTheSlackOfABackTieIsTheDrop(t *testing.T) {
	res := solved(t, backedUp)
	stay := res.Without(res.Rig.Part("head"))
	require.Equal(t, solve.Caught, stay.Answer)
	assert.Equal(t, "litter 3/2", drops(stay.Drop))
	assert.Equal(t, "3/2", stay.Drop.Most().String())
	assert.False(t, stay.Drop.AtMost)
	assert.Empty(t, stay.Drop.Missing)
	assert.Nil(t, res.Released.Drop, "nothing drops while all is there")
}

func TestTheDropGoesThroughThePulleys(t *testing.T) {
	// On 2:1 the load drops half of what the backed-up end does.
	res := solved(t, `
anchor head at 10 m
anchor tree at 13 m
anchor beam at 10 m
ring eye on head
pulley runner at 4 m
load litter on runner
rope long
rope back length 4 m
reeve long: beam \ runner / eye
reeve back: tree ~ eye
`)
	assert.Equal(t, "litter 1/2", drops(res.Without(res.Rig.Part("head")).Drop))
	// The other way round, two to one against: a load on the single end drops twice.
	res = solved(t, `
anchor head at 10 m
anchor tree at 13 m
anchor floor at 0 m
pulley top at 8 m
load litter at 2 m
rope strap
rope long
rope back length 5.5 m
reeve strap: top / head
reeve long: floor / top \ litter
reeve back: tree ~ top
`)
	assert.Equal(t, "litter 1", drops(lose(t, res, solve.LostLine, "strap").Drop), "top sinks by half a metre")
}

func TestTheLoopOfALostBendIsTheDrop(t *testing.T) {
	// The rope went 6 m up to top and 4 m down to where it is tied: 2 m below the
	// litter's end. Straight, those 10 m let the litter hang 10 m below the tie.
	res := solved(t, `
anchor head at 8 m
anchor low at 4 m
pulley top on head
load litter at 2 m
rope long
reeve long: litter / top \ low
`)
	stay := res.Without(res.Rig.Part("top"))
	assert.Equal(t, solve.Caught, stay.Answer)
	assert.Equal(t, "litter 8", drops(stay.Drop))
}

func TestSlackInMidLine(t *testing.T) {
	// 30 m of rope, of which 10 + 6 + 4 m are in the strands: 10 m of slack between
	// two places that are 4 m apart. Where the team lets go its strand is loose too.
	const text = `
anchor head at 10 m
anchor tree at 14 m
pulley top on head
load litter at 0 m
knot tie-off on head
hauler team at 4 m
rope long length 30 m
reeve long: litter / top \ team ~ tie-off / tree
`
	res := solved(t, text)
	require.Equal(t, solve.Caught, res.Released.Answer)
	// Hands off 16 m run from top to tie-off at the same height: the litter drops by
	// them all.
	assert.Equal(t, "litter 16", drops(res.Released.Drop))
	assert.False(t, res.Released.Drop.AtMost)

	// It does not matter where the team stands: what its strand has the slack has not.
	res = solved(t, strings.Replace(text, "team at 4 m", "team", 1))
	assert.Equal(t, "litter 16", drops(res.Released.Drop))
	assert.False(t, res.Released.Drop.AtMost)
}

func TestAKnotDrawnUpToABendStops(t *testing.T) {
	res := solved(t, `
anchor head at 10 m
pulley top on head
load litter at 1 m
knot end at 7.5 m
rope long
reeve long: litter / top \ end
`)
	stay := res.Released
	assert.Equal(t, solve.Jams, stay.Answer)
	assert.True(t, stay.AtKnot)
	assert.Equal(t, "litter 5/2", drops(stay.Drop))
	require.Len(t, stay.Meeting, 1)
	assert.Equal(t, []string{"top", "end"}, []string{stay.Meeting[0][0].Name, stay.Meeting[0][1].Name})
	assert.Equal(t, solve.Down, lose(t, res, solve.LostKnot, "end").Answer)
}

func TestPartsThatMeetAreNoKnot(t *testing.T) {
	res := solved(t, `
anchor head at 20 m
anchor rear at 20 m
pulley runner at 2 m
load litter on runner
pulley block at 12 m
hauler team at 20 m
rope long
rope second
reeve long: head \ runner / block
reeve second: rear \ block / team
`)
	stay := res.Released
	require.Equal(t, solve.Jams, stay.Answer)
	assert.False(t, stay.AtKnot)
	// The rope from head over runner to block is 18 + 10 = 28 m, and lies along one
	// line in the end: block is at runner, 28 m below head.
	assert.Equal(t, "litter 10", drops(stay.Drop))
}

func TestADropWithoutItsFigures(t *testing.T) {
	for _, c := range []struct{ name, from, to, gaps string }{
		{"no length", " length 4 m", "", "no-length back"},
		{"too short", "length 4 m", "length 2 m", "too-short back"},
		{"no position of the tree", "tree at 12.5 m", "tree", "no-position tree"},
		{"no position of the litter", "litter at 0 m", "litter", "no-position litter"},
		{"positions against the stroke", "load litter at 0 m", "ring yoke at 20 m\nload litter on yoke", "against long"},
	} {
		res := solved(t, strings.Replace(backedUp, c.from, c.to, 1))
		stay := res.Without(res.Rig.Part("head"))
		require.Equal(t, solve.Caught, stay.Answer, c.name)
		assert.Empty(t, stay.Drop.Loads, c.name)
		assert.Equal(t, c.gaps, gaps(stay.Drop), c.name)
		assert.False(t, stay.Drop.Known(), c.name)
		assert.Nil(t, stay.Drop.Most(), c.name)
	}

	bare := strings.NewReplacer(" at 10 m", "", " at 12.5 m", "", " at 8 m", "", " at 0 m", "").Replace(backedUp)
	res := solved(t, bare)
	assert.Equal(t, "no-position", gaps(res.Without(res.Rig.Part("head")).Drop))
}

func TestADropThatIsAnUpperEnd(t *testing.T) {
	// A second back-tie of unknown length may only catch it sooner.
	res := solved(t, backedUp+"rope spare\nreeve spare: tree ~ plate\n")
	stay := res.Without(res.Rig.Part("head"))
	assert.Equal(t, "litter 3/2", drops(stay.Drop))
	assert.True(t, stay.Drop.AtMost)
	assert.Equal(t, "no-length spare", gaps(stay.Drop))

	// So may it if the rope's end is not tied: how much lies beyond is not known.
	res = solved(t, strings.Replace(backedUp, "tree ~ plate", `tail \ knot-off ~ plate`, 1)+"knot knot-off on tree\n")
	stay = res.Without(res.Rig.Part("head"))
	assert.Equal(t, "litter 3/2", drops(stay.Drop))
	assert.True(t, stay.Drop.AtMost)
}

func TestSlackInTwoPlacesIsSharedInAnUnknownWay(t *testing.T) {
	res := solved(t, `
anchor head at 10 m
anchor tree at 10 m
anchor oak at 10 m
ring plate on head
load litter at 0 m
knot middle on plate
rope long
rope back length 3 m
reeve long: litter / plate
reeve back: tree ~ middle ~ oak
`)
	stay := res.Without(res.Rig.Part("head"))
	assert.Equal(t, solve.Caught, stay.Answer)
	assert.Equal(t, "litter 3", drops(stay.Drop), "as if all of it lay in either place")
	assert.True(t, stay.Drop.AtMost)
	assert.Len(t, stay.Catching, 1)
}

// Two to one on two to one drops until its blocks meet, which is as much sooner as they
// are long.
func TestPartsThatMeetAreAsFarApartAsTheyAreLong(t *testing.T) {
	const text = `
anchor head at 10 m
anchor beam at 10 m
load stone at 0 m
hauler team
pulley low on stone at 1 m %LOW%
pulley high at 4 m %HIGH%
rope first
rope second
reeve first: head \ low / high
reeve second: beam \ high / team
`
	drop := func(low, high string) string {
		res := solved(t, strings.NewReplacer("%LOW%", low, "%HIGH%", high).Replace(text))
		require.Equal(t, solve.Jams, res.Released.Answer)
		require.True(t, res.Released.Drop.Known())
		return drops(res.Released.Drop)
	}
	// The first rope is 9 + 3 m long: the stone hangs 12 m below the head, high beside it.
	assert.Equal(t, "stone 3", drop("", ""))
	assert.Equal(t, "stone 5/2", drop("length 20 cm", "length 30 cm"), "half a metre of the rope stays between them")
	assert.Empty(t, drop("length 2 m", "length 1 m"), "they touch already")
	assert.Empty(t, drop("length 2 m", "length 2 m"))
}
