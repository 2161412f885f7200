package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

const placed = "anchor head at 10 m\nload litter at 0 m\nhauler team\npulley low on litter at 1 m\nrope long\n"

var positionCases = []marked{
	{"as drawn", placed + "reeve long: litter / head \\ low / team\n"},
	{"up to what is lower", placed + "reeve long: litter / head ⟦/⟧stroke-against-position low \\ team\n"},
	{"down to what is higher", placed + "reeve long: litter ⟦\\⟧stroke-against-position head \\ low / team\n"},
	{"slack goes anywhere", placed + "knot k on head at 10 m\nreeve long: litter ~ k ~ litter / head \\ low / team\n"},
	{"at one height", placed + "ring eye on head at 10 m\nreeve long: litter / head / eye \\ head \\ low / team\n"},
	{"ranges that overlap", "anchor head at 2 to 4 m\nload litter at 3 to 5 m\nrope long\nreeve long: litter / head\n"},
	{"ranges that do not", "anchor head at 2 to 4 m\nload litter at 5 to 6 m\nrope long\nreeve long: litter ⟦/⟧stroke-against-position head\n"},
	{"the closing stroke of a loop", placed + "pulley top on head at 9 m\nreeve long: low / top ⟦/⟧stroke-against-position loop\nreeve b: litter / head \\ team\nrope b\n"},
	{"one has no position", placed + "reeve long: litter / head \\ team\nrope b\nreeve b: low / team\n"},
}

func TestStrokeAgainstPosition(t *testing.T) {
	rig, found := oneRig(t, placed+"reeve long: litter \\ head \\ low / team\n")
	assert.Equal(t, "litter at 0 m lies below head at 10 m, yet the stroke leads down", message(t, found, "stroke-against-position"))
	assert.Equal(t, rig.Part("litter").Values.Places["at"], found[0].Related[0].Place)
	assert.Equal(t, rig.Part("head").Values.Places["at"], found[0].Related[1].Place)
}
