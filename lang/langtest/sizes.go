package langtest

import (
	"fmt"
	"strings"
)

// Usual is a rig of the size that users write, 25 lines: what benchmarks of all
// stages share.
const Usual = `# Raise the litter out of the shaft; a second rope minds it.
rig shaft-raise "Three to one with a separate belay"

anchor  head    strength 30 kN
anchor  tree    strength 30 kN
load    litter  mass 180 kg
hauler  team    people 3
tender  minder

pulley  top     on head  efficiency 92 %  strength 36 kN
hitch   grab    cord 8 mm
pulley  runner  on grab  efficiency 92 %  strength 36 kN
device  plate   on tree  strength 20 kN

# Eleven millimetre lines, both from the same store.
rope    long    diameter 11 mm  length 60 m  strength 30 kN
rope    safety  diameter 11 mm  length 60 m  strength 30 kN

reeve long:    litter / grab / top (holds) \ runner / team
reeve safety:  litter / plate (holds) \ minder

expect advantage 3:1
expect class simple
expect held when released
expect held without top
expect travel 3 m per 1 m
`

// Tackle writes a tackle of two blocks with one rope over n sheaves.
func Tackle(n int) string {
	var line strings.Builder
	line.WriteString("upper")
	for i := range n {
		if i%2 == 0 {
			line.WriteString(` \ lower`)
		} else {
			line.WriteString(" / upper")
		}
	}
	last := " /"
	if n%2 == 0 {
		last = ` \`
	}
	return "anchor beam\npulley upper on beam\npulley lower\nload block on lower\nhauler team\nrope fall\nreeve fall: " +
		line.String() + last + " team\n"
}

// Chain writes three to one hauled by three to one and so on, on one rope, with n
// sheaves in all: n/2 stages, each with a hitch and a capture.
func Chain(n int) string {
	var parts, line strings.Builder
	parts.WriteString("anchor head\nload litter\nhauler team\nrope long\n")
	line.WriteString("reeve long: litter")
	for i := range n / 2 {
		fmt.Fprintf(&parts, "hitch grab%d\npulley runner%d on grab%d\npulley top%d on head\n", i, i, i, i)
		fmt.Fprintf(&line, ` / grab%d / top%d (holds) \ runner%d`, i, i, i)
	}
	return parts.String() + line.String() + " / team\n"
}
