package solve_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
	"fairlead/solve/lp"
)

// turnings gives each turning as "ledge 180: haul 2 at 180, hold 1 at 0".
func turnings(t *testing.T, text string) []string {
	var list []string
	none := func(degrees lp.Num) bool { return degrees.Cmp(lp.Int(30)) <= 0 }
	say := func(d solve.Pulled) string {
		name := "without"
		if d.Phase != nil {
			name = d.Phase.Name
		} else {
			name += " " + d.After.Part.Name
		}
		return fmt.Sprintf("%s %.4g at %.4g", name, d.Force.Float(), d.Off.Float())
	}
	for _, turned := range solved(t, text).Turnings(true, none) {
		list = append(list, fmt.Sprintf("%s %.4g: %s, %s", turned.Point.Name, turned.Degrees.Float(), say(turned.From), say(turned.To)))
	}
	return list
}

// The low pulley draws the ledge up while the team hauls; hands off, the belay draws it
// down.
func TestTurningBetweenHaulAndHold(t *testing.T) {
	assert.Equal(t, []string{"ledge 180: hold 1 at 0, haul 2 at 180"}, turnings(t, kilo+`
anchor head
anchor ledge
tender minder
pulley top on head
pulley low on ledge
device brake on ledge holds litter
rope main
rope belay
reeve main: litter / top \ low / team
reeve belay: litter / brake \ minder
`))
	assert.Empty(t, turnings(t, kilo+`
anchor head
anchor ledge
anchor tree
tender minder
pulley top on head
pulley low on ledge
device brake on tree holds litter
rope main
rope belay
reeve main: litter / top \ low / team
reeve belay: litter / brake \ minder
`), "each anchor is pulled one way only")
}

// Held, the main line pulls straight down at the rock; hauling, the tackle's end does at
// an angle of 50 degrees, whichever side that is.
func TestTurningAtAnAngle(t *testing.T) {
	const text = kilo + `
anchor rock
anchor head
pulley runner on litter
pulley top on head
hitch catch on rock
rope main
rope hand
reeve main: litter / catch / tail
reeve hand: rock (angle %ANGLE% deg) \ runner / top \ team
`
	got := turnings(t, filled(text, "ANGLE", "50"))
	require.Len(t, got, 1)
	assert.Contains(t, got[0], "rock 50: hold 1 at 0, haul ")
	assert.Contains(t, got[0], " at 50")
	assert.Empty(t, turnings(t, filled(text, "ANGLE", "30")), "as much as counts as none")
	assert.Len(t, turnings(t, filled(text, "ANGLE", "31")), 1)
}

// Two ropes lean by 50 and 30 degrees, nobody knows whether to the same side: it may be 20
// degrees between them.
func TestTurningIsTheLeastThatCanBe(t *testing.T) {
	const text = kilo + `
anchor rock
anchor head
pulley runner on litter
pulley top on head
hitch catch
rope main
rope hand
rope strop
reeve strop: rock (angle %FIRST% deg) \ catch
reeve main: litter / catch / tail
reeve hand: rock (angle %SECOND% deg) \ runner / top \ team
`
	assert.Empty(t, turnings(t, filled(text, "FIRST", "30", "SECOND", "50")))
	assert.Len(t, turnings(t, filled(text, "FIRST", "15", "SECOND", "50")), 1)
}

// A redirect of 60 degrees draws its anchor along the bisector of its two strands: 30
// degrees off the line. Held, the capture draws straight down.
func TestTurningAtARedirect(t *testing.T) {
	const text = kilo + `
anchor head
anchor tree
pulley top on head holds litter
hitch grab
pulley runner on grab
pulley corner on %CORNER%
rope long
reeve long: litter / grab / top \ runner / corner (angle %ANGLE% deg) \ team
`
	// Hauling: 2/3 straight down, 1/3 and 1/3 at 100 degrees to each other.
	got := turnings(t, filled(text, "CORNER", "head", "ANGLE", "100"))
	assert.Empty(t, got, "atan(0.328/0.942) is 19 degrees")
	assert.Empty(t, turnings(t, filled(text, "CORNER", "tree", "ANGLE", "100")))
}

// A strop that lies slack between the floor and the plate draws the floor down once the head
// is gone; hauling, the low pulley draws it up.
func TestTurningOnceALossIsCaught(t *testing.T) {
	assert.Equal(t, []string{"floor 180: haul 0.6667 at 180, without head 1 at 0"}, turnings(t, kilo+`
anchor head
anchor floor
ring plate on head
pulley top on plate holds litter
hitch grab
pulley runner on grab
pulley high on plate
pulley low on floor
rope long
sling strop
reeve strop: floor ~ plate
reeve long: litter / grab / top \ runner / high \ low / team
`))
}
