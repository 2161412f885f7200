package rigfmt

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

// reeveCases are points 4 and 7: reeving lines aligned, joined and broken.
var reeveCases = []formatCase{
	{
		"first nodes align",
		"reeve a: x / y\n# note\nreeve long-rope: x / y\n\nreeve b: x / y\n",
		"reeve a:         x / y\n# note\nreeve long-rope: x / y\n\nreeve b: x / y\n",
	},
	{
		"joined",
		"reeve a: x\n / y \\\n  z\n ~ w\n",
		"reeve a: x / y \\ z ~ w\n",
	},
	{
		"broken before a stroke at 100 code points",
		"reeve a:" + strings.Repeat(" n-23456789 /", 9) + " end",
		"reeve a: n-23456789 / n-23456789 / n-23456789 / n-23456789 / n-23456789 / n-23456789 / n-23456789\n" +
			"         / n-23456789 / n-23456789 / end\n",
	},
	{
		"a node longer than the line",
		"reeve a: x / " + strings.Repeat("n", 120) + " / y",
		"reeve a: x\n         / " + strings.Repeat("n", 120) + "\n         / y\n",
	},
	{
		"a line that ends in a comment keeps its break",
		"reeve a: x / y # one\n / z\n \\ w # two\n / v",
		"reeve a: x / y    # one\n         / z \\ w  # two\n         / v\n",
	},
	{
		"also after a stroke",
		"reeve a: x / # one\ny\n / z",
		"reeve a: x /  # one\n         y / z\n",
	},
	{
		"a comment line keeps its place in column 0",
		"reeve a: x\n   # one\n  # two\n / y",
		"reeve a: x\n# one\n# two\n         / y\n",
	},
	{
		"and its stroke goes under it",
		"reeve a: x / y \\\n   # one\n z",
		"reeve a: x / y\n# one\n         \\ z\n",
	},
	{
		"comments of all kinds",
		"reeve a: x / # one\n# two\ny /\n# three\nz # four\n/ # five\nw # six",
		"reeve a: x /  # one\n# two\n         y\n# three\n         / z  # four\n         /    # five\n         w    # six\n",
	},
	{
		"the comment of the last line stays there",
		"reeve a: x /\n y # end\nreeve bb: x # mid\n / y",
		"reeve a:  x / y  # end\nreeve bb: x      # mid\n          / y\n",
	},
	{
		"loop, tail and parentheses",
		"reeve a: tail/x(holds)\\y(share 40to 60%)\\ loop",
		"reeve a: tail / x (holds) \\ y (share 40 to 60 %) \\ loop\n",
	},
}

func TestPoints4And7Reeving(t *testing.T) { runCases(t, reeveCases) }

// TestTheLimitIs100 walks over the limit code point by code point, with names of
// more bytes than code points and with comments that do not count.
func TestTheLimitIs100(t *testing.T) {
	for pad := 1; pad <= 10; pad++ {
		for _, comment := range []string{"", "  # " + strings.Repeat("c", 50)} {
			line := "reeve a: x" + strings.Repeat(" / nöd", 13) + " / " + strings.Repeat("ß", pad)
			length := utf8.RuneCountInString(line)
			out := formatted(t, line+comment)
			if length <= 100 {
				assert.Equal(t, line+comment+"\n", out, "%d code points", length)
			} else {
				assert.Equal(t, 2, strings.Count(out, "\n"), "%d code points", length)
				first, _, _ := strings.Cut(out, "\n")
				assert.Equal(t, line[:len(line)-len(" / ")-2*pad], first)
			}
		}
	}
}

func TestLongLinesAreBrokenGreedily(t *testing.T) {
	var path strings.Builder
	for i := range 300 {
		fmt.Fprintf(&path, " %c node-%d", `/\`[i%2], i*i)
	}
	out := formatted(t, "reeve long: start"+path.String())
	lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
	for i, line := range lines {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), 100)
		if i > 0 {
			piece := strings.Join(strings.Fields(line)[:2], " ")
			assert.Greater(t, utf8.RuneCountInString(lines[i-1]+" "+piece), 100, "the line above had no room")
			assert.True(t, strings.HasPrefix(line, strings.Repeat(" ", len("reeve long: "))+piece))
		}
	}
}
