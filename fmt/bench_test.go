package rigfmt

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// shaftFive is a rig of 25 lines as an instructor types them.
const shaftFive = `# Raise the litter out of the shaft; the far end of the rope pulls the tractor.
rig shaft-five "Five to one on one rope"

# What stands fast.
anchor head strength 30kN
anchor tie-off strength 22 kN
edge lip friction 0.4 angle 120 deg padded

# What moves.
load litter mass 180 kg raise 12 m people 1
hauler team people 4 pull 250 N

pulley top bearing-pulley on head strength 36kN holds litter
hitch grab prusik slips 7 to 9 kN cord 8 mm
pulley runner on grab strength 36 kN efficiency 92%
pulley block efficiency 0.85 to 0.95
rope long length 60 m diameter 11 mm strength 30 kN

reeve long: litter (figure-eight) / grab / top \ block / team ~ tie-off \ runner / block

expect advantage 5:1
expect held when released # hands off
expect load on head under 6 kN
expect pull under 300 N per person
accept redirect-loads-anchor at top because "The head is a bolted ring."
`

// sheavesRig writes a tackle of n sheaves, each a part of its own, on lines of
// any width.
func sheavesRig(n int) string {
	var parts, path strings.Builder
	parts.WriteString("anchor head strength 30kN\nload sack mass 80 kg\nhauler team people 2\nrope long diameter 11 mm\n")
	for i := range n {
		on, stroke := "head", "/"
		if i%2 == 1 {
			on, stroke = "sack", `\`
		}
		fmt.Fprintf(&parts, "pulley p%d on %s strength 36 kN efficiency 92%% # sheave %d\n", i, on, i)
		fmt.Fprintf(&path, " %s p%d", stroke, i)
	}
	return parts.String() + "\nreeve long: sack" + path.String() + ` \ team` + "\n"
}

func TestBenchmarkRigsAreGood(t *testing.T) {
	require.Equal(t, 25, strings.Count(shaftFive, "\n"))
	for _, text := range []string{shaftFive, sheavesRig(10), sheavesRig(200)} {
		require.NotEqual(t, text, formatted(t, text))
	}
}

func BenchmarkFormat(b *testing.B) {
	rigs := map[string]string{"25 lines": shaftFive}
	for _, n := range []int{10, 50, 200} {
		rigs[fmt.Sprintf("%03d sheaves", n)] = sheavesRig(n)
	}
	for name, text := range rigs {
		b.Run(name, func(b *testing.B) {
			f := source.New("bench.rig", text)
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				Format(f)
			}
		})
	}
}
