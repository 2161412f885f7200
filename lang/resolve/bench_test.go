package resolve

import (
	"fmt"
	"strings"
	"testing"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// usual is a rig of 25 lines, as a team would write it.
const usual = `# The quarry's main haul with its belay.
rig quarry-raise "Three to one at the quarry lip"

anchor  beam    strength 30 kN
anchor  stump   strength 20 kN
load    sledge  mass 160 kg
hauler  crew    people 4
tender  minder

edge    lip     angle 100 deg  padded
pulley  crown   on beam  efficiency 92 %  holds sledge
hitch   grab    cord 8 mm
pulley  runner  on grab  efficiency 92 %
device  brake   on stump  efficiency 40 %  holds
rope    main    diameter 11 mm  length 60 m
rope    second  diameter 11 mm  length 60 m

reeve main:   sledge / lip / grab / crown \ runner / crew
reeve second: sledge / lip / brake \ minder

expect advantage 3:1
expect held when released
expect held without beam
expect load on beam under 3 kN
accept bare-edge at lip because "Two pads, one roller."
`

// tackle is one rope over n sheaves, half of them on the load.
func tackle(n int) string {
	var b strings.Builder
	b.WriteString("anchor head\nload litter mass 200 kg\nhauler team people 4\nrope long\n")
	for i := range n / 2 {
		fmt.Fprintf(&b, "pulley up%d on head efficiency 92 %%\npulley low%d on litter efficiency 92 %%\n", i, i)
	}
	b.WriteString("reeve long: litter")
	for i := range n / 2 {
		fmt.Fprintf(&b, ` / up%d \ low%d`, i, i)
	}
	return b.String() + " / team\n"
}

func BenchmarkResolve(b *testing.B) {
	for _, c := range []struct{ name, text string }{
		{"25 lines", usual}, {"10 sheaves", tackle(10)}, {"50 sheaves", tackle(50)}, {"200 sheaves", tackle(200)},
	} {
		tree := syntax.Parse(source.New("yard.rig", c.text))
		if _, found := File(tree); len(found) > 0 {
			b.Fatal(found[0].Message)
		}
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				File(tree)
			}
		})
	}
}
