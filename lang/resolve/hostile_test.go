package resolve

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// hostile texts are large where something could go by the square of the size.
func hostile() map[string]string {
	repeat := func(n int, line func(i int) string) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(line(i) + "\n")
		}
		return b.String()
	}
	const n = 10_000
	longName := strings.Repeat("x", 100_000)
	return map[string]string{
		"many strokes": basic + "pulley low on litter\nreeve long: litter" + strings.Repeat(` / head \ low`, n/2) + " / team\n",
		"many passes of a part that holds": basic + "pulley top on head holds litter\npulley low on litter\nreeve long: litter" +
			strings.Repeat(` / top \ low`, n/2) + " / team\n",
		"many slack strokes":     basic + "pulley top on head holds litter\nreeve long: litter" + strings.Repeat(` ~ top`, n) + " / team\n",
		"many unknown nodes":     basic + "reeve long: litter" + repeat(n, func(i int) string { return fmt.Sprintf(" / node%d", i) }),
		"many unknown clips":     repeat(n, func(i int) string { return fmt.Sprintf("ring part%d on pert%d", i, i) }),
		"many of one name":       repeat(n, func(int) string { return "load litter" }),
		"many lines of one rope": basic + repeat(n, func(int) string { return `reeve long: litter / head \ team` }),
		"many ropes on one part": basic + repeat(n, func(i int) string { return fmt.Sprintf("reeve r%d: litter / head", i) }),
		"many claims":            basic + line + repeat(n, func(i int) string { return fmt.Sprintf("expect load on x%d under 1 kN", i) }),
		"many copies":            "rig a\n" + basic + line + "rig b\n" + repeat(n, func(int) string { return "include a as low without litr" }),
		"many includes of many rigs": repeat(n/2, func(i int) string { return fmt.Sprintf("rig r%d\nload p", i) }) +
			repeat(n, func(i int) string { return fmt.Sprintf("include q%d as c%d", i, i) }),
		"many copies of one": "rig a\n" + basic + line + "rig b\n" + repeat(n, func(i int) string { return fmt.Sprintf("include a as c%d", i) }),
		"many joins": "rig a\n" + basic + line + "rig b\ninclude a as c\nanchor head\n" +
			repeat(n/2, func(i int) string {
				return fmt.Sprintf("hauler h%d\nrope r%d\nreeve r%d: head / h%d\njoin h%d to c.litter", i, i, i, i, i)
			}),
		"many joins of loads": "rig a\n" + basic + line + "rig b\ninclude a as c\nanchor head\n" +
			repeat(n/2, func(i int) string {
				return fmt.Sprintf("load h%d\nrope r%d\nreeve r%d: head / h%d\njoin h%d to c.litter", i, i, i, i, i)
			}),
		"many changes": "rig a\n" + basic + line + "rig b\ninclude a as c" + strings.Repeat(" with litter mass 3 kg with head at 2 m without hed", n),
		"many leavings": "rig a\n" + repeat(n, func(i int) string { return fmt.Sprintf("ring p%d on p%d", i, i+1) }) + "rope r\nreeve r: p0" +
			strings.Repeat(` / p1 \ p2`, n) + "\nrig b\ninclude a as c" + repeat(n, func(i int) string { return fmt.Sprintf(" without p%d", i) }),
		"many models":             repeat(n/2, func(i int) string { return fmt.Sprintf("stock ring m%d\nring r%d n%d", i, i, i) }),
		"many knots":              basic + "pulley low on litter\nreeve long: litter" + strings.Repeat(` / head (figure-eigth) \ low`, n/2) + " / team\n",
		"many rigs on much":       repeat(n/2, func(i int) string { return fmt.Sprintf("load p%d", i) }) + repeat(n/2, func(i int) string { return fmt.Sprintf("rig r%d", i) }),
		"a backward line":         basic + "reeve long: team" + strings.Repeat(" # c\n / head", n) + " / litter\n",
		"a chain to a reeved end": repeat(n, func(i int) string { return fmt.Sprintf("anchor p%d on p%d", i, i+1) }) + fmt.Sprintf("load p%d\n", n),
		"a very long name":        "anchor head\nload " + longName + "\nrope long\nreeve long: " + longName + "y / head\n",
		"bad lines only":          repeat(n, func(i int) string { return fmt.Sprintf("wheel w%d on head", i) }),
	}
}

// Each of them resolves in far less than this, even on a slow machine; a cost by
// the square of the size would not.
const patience = 20 * time.Second

func TestHostileTexts(t *testing.T) {
	for name, text := range hostile() {
		t.Run(name, func(t *testing.T) {
			tree := syntax.Parse(source.New("yard.rig", text))
			begin := time.Now()
			file, found := File(tree)
			took := time.Since(begin)
			t.Logf("%d bytes, %d findings, %v", len(text), len(found), took.Round(time.Millisecond))
			assert.Less(t, took, patience)
			for _, rig := range file.Rigs {
				checkRig(t, rig)
			}
			for _, d := range found {
				assert.Less(t, len(d.Message), 600)
			}
		})
	}
}
