package solve_test

import (
	"fmt"
	"testing"

	"fairlead/lang/langtest"
	"fairlead/solve"
)

func BenchmarkLosses(b *testing.B) {
	run := func(name, text string) {
		rig := read(b, text)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			losses := 0
			for b.Loop() {
				b.StopTimer()
				res := solve.Ideal(rig)
				b.StartTimer()
				losses = len(res.Losses())
			}
			b.ReportMetric(float64(losses), "losses")
		})
	}
	run("25-lines", langtest.Usual)
	for _, n := range []int{10, 50, 200} {
		run(fmt.Sprintf("tackle-%d", n), langtest.Tackle(n))
		run(fmt.Sprintf("chain-%d", n), langtest.Chain(n))
	}
}
