package rules

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lint"
)

// drum is a rig of 25 lines: a nine to one with a separate belay, and its claims.
const drum = `# Winding drum, three to one on three to one, with a belay.
rig drum "Winding drum"

anchor  head                     strength 30 kN
anchor  rear                     strength 30 kN
anchor  tree                     strength 20 kN
load    drum                     mass 320 kg
hauler  team                     people 2
tender  belayer
pulley  top         on head      holds drum
hitch   grab
pulley  runner      on grab
hitch   far-grab
pulley  far-top     on rear
pulley  far-runner  on far-grab
device  brake       on tree      holds drum
rope    long                     diameter 11 mm  length 100 m
rope    belay                    diameter 11 mm  length 60 m

reeve long:  drum / grab / top \ runner / far-grab / far-top \ far-runner / team
reeve belay: drum / brake \ belayer

expect advantage 9:1
expect class compound
expect held when released
expect load on head under 4 kN
`

// tackle is a rig with so many sheaves in stages of three to one; hitches on the
// strand beyond the first top raise nothing where wrong says so.
func tackle(sheaves int, wrong bool) string {
	var parts, line strings.Builder
	parts.WriteString("anchor head\nload drum\nhauler team\nrope long\n")
	line.WriteString("reeve long: drum")
	for i := range sheaves / 2 {
		fmt.Fprintf(&parts, "hitch grab%d\npulley top%d on head\npulley runner%d on grab%d\n", i, i, i, i)
		if wrong && i == 0 {
			fmt.Fprintf(&line, " / top%d (holds) \\ grab%d \\ runner%d", i, i, i)
			continue
		}
		fmt.Fprintf(&line, " / grab%d / top%d", i, i)
		if i == 0 {
			line.WriteString(" (holds)")
		}
		fmt.Fprintf(&line, " \\ runner%d", i)
	}
	return parts.String() + line.String() + " / team\n"
}

func benchmarkRun(b *testing.B, text string) {
	f := load.Text("yard.rig", text)
	b.ReportAllocs()
	for b.Loop() {
		lint.Run([]*load.Loaded{f}, All())
	}
}

func BenchmarkRun(b *testing.B) {
	b.Run("25 lines", func(b *testing.B) { benchmarkRun(b, drum) })
	for _, n := range []int{10, 50, 200} {
		b.Run(fmt.Sprintf("%d sheaves", n), func(b *testing.B) { benchmarkRun(b, tackle(n, false)) })
	}
	for _, n := range []int{10, 25, 50, 200} {
		b.Run(fmt.Sprintf("%d sheaves, a hitch on the wrong strand", n), func(b *testing.B) { benchmarkRun(b, tackle(n, true)) })
	}
	for _, n := range []int{25, 50} {
		for name, text := range faulty(n) {
			b.Run(fmt.Sprintf("%d sheaves, %s", n, name), func(b *testing.B) { benchmarkRun(b, text) })
		}
	}
}

// faulty are chains of so many sheaves, each with one fault.
func faulty(sheaves int) map[string]string {
	chain, last := langtest.Chain(sheaves), sheaves/2-1
	away := fmt.Sprintf("/ top%d (holds)", last)
	return map[string]string{
		"a hitch far from its strand": strings.Replace(strings.Replace(chain, "/ grab0 /", "/", 1), away, "/ grab0 "+away, 1),
		"a hitch forgotten":           strings.Replace(chain, "/ grab3 /", "/", 1),
		"a hitch backward":            strings.Replace(chain, "/ grab3 /", "/ grab3 (holds team) /", 1),
		"no capture":                  strings.ReplaceAll(chain, " (holds)", ""),
	}
}

// However far a hitch is from where it belongs, a rig of 25 sheaves is not too large for
// it to be found.
func TestFaultsOfLargeRigsAreFound(t *testing.T) {
	want := map[string]string{
		"a hitch far from its strand": "grab0 grips the rope between grab11 and top11: team raises nothing; on litter / top0 it is 531441:1",
		"a hitch forgotten":           "grab3 grips no rope: team raises nothing; on runner2 / top3 it is 531441:1",
		"a hitch backward":            "grab3 grips the wrong way: team raises nothing; turned round, it is 531441:1",
		"no capture":                  "litter drops when team lets go until runner10 meets grab11: only that keeps it",
	}
	for name, text := range faulty(25) {
		f, found := examined(text)
		found = slices.DeleteFunc(found, func(d diag.Diagnostic) bool { return d.Message != want[name] })
		require.Len(t, found, 1, printed(f, found))
		assert.Len(t, found[0].Fixes, 1, name)
	}
}
