package solve_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const braked = kilo + `
anchor head strength 10 kN
%BRAKE%
rope line
reeve line: litter / post \ team
`

// Drawn backward over two turns and a half the rope would take many times the load; nobody
// hauls so.
func TestAHaulThroughABrakeIsNoLoadToBear(t *testing.T) {
	for brake, brakes := range map[string]bool{
		"device post on head efficiency 40 % turns 2":                        true,
		"device post on head efficiency 40 %":                                true,
		"ring post on head efficiency 40 %":                                  false,
		"device post on head efficiency 40 % holds litter":                   false,
		"device post on head efficiency 40 % lowering 10 % holds releasable": false,
	} {
		res := solved(t, filled(braked, "BRAKE", brake))
		assert.Equal(t, brakes, res.Brakes(haul(t, res)), brake)
		assert.Equal(t, brakes, len(res.Bearing()) < len(res.Every()), brake)
		head := ratings(res)["head"]
		assert.Equal(t, brakes, head.Phase.Name != "haul", brake)
	}
	// One person alone at a device of which a figure for lowering is written has the brake.
	for hauler, brakes := range map[string]bool{"people 1": true, "people 1 to 2": false, "people 4": false, "": false} {
		for figure, lowers := range map[string]bool{"lowering 10 % ": true, "": false} {
			res := solved(t, filled(strings.Replace(braked, "hauler team", "hauler team "+hauler, 1), "BRAKE",
				"device post on head efficiency 40 % "+figure+"holds litter releasable"))
			assert.Equal(t, brakes && lowers, res.Brakes(haul(t, res)), hauler+figure)
		}
	}
	// Two brakes, and a hand at each: while one gives rope the other holds.
	two := strings.Replace(braked, "hauler team", "hauler team people 1\nhauler other people 1\nanchor tree\ndevice second on tree %BRAKE%\nrope spare\nreeve spare: litter / second \\ other", 1)
	for brake, brakes := range map[string]bool{"": true, "holds releasable": true, "holds": false} {
		brake = "efficiency 40 % lowering 10 % " + brake
		text := strings.Replace(two, "second on tree %BRAKE%", "second on tree "+brake, 1)
		res := solved(t, filled(text, "BRAKE", "device post on head "+brake))
		for _, ph := range res.Hauls() {
			assert.Equal(t, brakes, res.Brakes(ph), brake+ph.Name)
		}
	}
	// One who hauls with an advantage hauls, over whatever it is.
	res := solved(t, kilo+`
anchor head
device post on head efficiency 40 %
hitch grab
pulley runner on grab efficiency 90 %
rope line
reeve line: litter / grab / post \ runner / team
`)
	assert.False(t, res.Brakes(haul(t, res)))
}
