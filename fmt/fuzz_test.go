package rigfmt

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// seeds are the texts of all tables.
func seeds() []string {
	texts := []string{shaft, sheavesRig(5), sheavesRig(40)}
	for _, table := range [][]formatCase{fileCases, groupCases, spacingCases, commentCases, widthCases, cellCases, reeveCases} {
		for _, c := range table {
			texts = append(texts, c.in)
		}
	}
	return texts
}

func FuzzFormat(f *testing.F) {
	for _, text := range seeds() {
		f.Add(text)
		f.Add(strings.ReplaceAll(text, "\n", "\r\n"))
		f.Add(strings.ReplaceAll(text, " ", ""))
	}
	f.Fuzz(func(t *testing.T, text string) { formatted(t, text) })
}

// TestHostileTexts formats texts that nobody writes; a quadratic step would show.
func TestHostileTexts(t *testing.T) {
	const n = 10_000
	repeat := strings.Repeat
	for name, text := range map[string]string{
		"strokes":       "reeve a: x" + repeat("/x", n),
		"comments":      "reeve a: x" + repeat("\n/ x # c", n),
		"comment lines": "reeve a: x" + repeat("\n# c\n/ x", n),
		"long name":     "anchor " + repeat("a", 50*n) + "\nanchor b on c # d\n",
		"parts":         repeat("pulley a on b strength 3 kN # c\n", n),
		"changes":       "include a as b" + repeat(" with c mass 5 kg", n),
		"blank lines":   "anchor a" + repeat("\n", n) + "anchor b" + repeat("\n \n# c", n),
		"long comment":  "#" + repeat("c", 50*n),
	} {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			out, problems := Format(source.New("hostile.rig", text))
			require.Empty(t, problems)
			require.Less(t, time.Since(start), 30*time.Second)
			again, _ := Format(source.New("hostile.rig", out))
			require.True(t, out == again, "the second run changes nothing")
		})
	}
}
