package syntax

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// shaftRig is a rig of 25 lines as an instructor writes them.
const shaftRig = `# Raise the litter out of the shaft; the far end of the rope pulls the tractor.
rig shaft-five "Five to one on one rope"

# What stands fast.
anchor  head     strength 30 kN
anchor  tie-off  strength 22 kN
edge    lip      angle 120 deg  friction 0.4  padded

# What moves.
load    litter   mass 180 kg  people 1  raise 12 m
hauler  team     people 4  pull 250 N

pulley  top      bearing-pulley on head  strength 36 kN  holds litter
hitch   grab     prusik                  cord 8 mm  slips 7 to 9 kN
pulley  runner   on grab                 efficiency 92 %  strength 36 kN
pulley  block                            efficiency 0.85 to 0.95
rope    long                             diameter 11 mm  length 60 m  strength 30 kN

reeve long: litter (figure-eight) / grab / top \ block / team ~ tie-off \ runner / block

expect advantage 5:1
expect held when released             # hands off
expect load on head under 6 kN
expect pull under 300 N per person
accept redirect-loads-anchor at top because "The head is a bolted ring."
`

// sheavesRig writes a tackle of n sheaves, each a part of its own.
func sheavesRig(n int) string {
	var parts, path strings.Builder
	parts.WriteString("anchor head strength 30 kN\nload sack mass 80 kg\nhauler team people 2\nrope long diameter 11 mm\n")
	for i := range n {
		on, stroke := "head", `\`
		if i%2 == 1 {
			on, stroke = "sack", "/"
		}
		fmt.Fprintf(&parts, "pulley p%d on %s efficiency 92 %% strength 36 kN\n", i, on)
		fmt.Fprintf(&path, " %s p%d", map[string]string{`\`: "/", "/": `\`}[stroke], i)
	}
	last := `\`
	if n%2 == 0 {
		last = "/"
	}
	return parts.String() + "reeve long: sack" + path.String() + " " + last + " team\n"
}

func TestBenchmarkRigsAreGood(t *testing.T) {
	require.Equal(t, 25, strings.Count(shaftRig, "\n"))
	require.Empty(t, parse(t, shaftRig).Problems)
	for _, n := range []int{1, 2, 10, 200} {
		require.Empty(t, parse(t, sheavesRig(n)).Problems)
	}
}

func BenchmarkParse(b *testing.B) {
	rigs := map[string]string{"25 lines": shaftRig}
	for _, n := range []int{10, 50, 200} {
		rigs[fmt.Sprintf("%03d sheaves", n)] = sheavesRig(n)
	}
	rigs["10000 strokes"] = hostileTexts(10_000)["strokes"]
	for name, text := range rigs {
		b.Run(name, func(b *testing.B) {
			f := source.New("bench.rig", text)
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				Parse(f)
			}
		})
	}
}
