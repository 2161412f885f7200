package solve_test

import (
	"strings"
	"testing"

	"fairlead/lang/langtest"
	"fairlead/solve"
)

// BenchmarkStroke solves rigs with and without positions: the difference is what
// strokes, resets and rope cost.
func BenchmarkStroke(b *testing.B) {
	for _, c := range []struct{ name, text string }{
		{"25-lines", langtest.Usual},
		{"tackle-200", langtest.Tackle(200)},
		{"chain-50", langtest.Chain(50)},
		{"chain-200", langtest.Chain(200)},
	} {
		for name, text := range map[string]string{"": c.text, "-placed": placed(b, langtest.Seeded(1), c.text)} {
			rig := read(b, text)
			b.Run(c.name+name, func(b *testing.B) {
				for b.Loop() {
					solve.Rig(rig)
				}
			})
		}
	}
}

func TestLongChainHasOnePairAStage(t *testing.T) {
	res := solved(t, placed(t, langtest.Seeded(1), langtest.Chain(20)))
	s := haul(t, res).Stroke
	if len(s.Pairs) != 11 { // ten hitches and the load
		t.Errorf("%d pairs: %s", len(s.Pairs), strings.Join(allTold(s), "; "))
	}
}
