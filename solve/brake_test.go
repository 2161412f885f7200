package solve_test

import (
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
