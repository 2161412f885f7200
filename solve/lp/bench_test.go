package lp

import (
	"fmt"
	"testing"
)

func BenchmarkChain(b *testing.B) {
	for _, sheaves := range []int{2, 6, 10, 50, 200, 400} {
		for name, how := range map[string]way{"": guessing, "/exact": exactly} {
			b.Run(fmt.Sprintf("%d%s", sheaves, name), func(b *testing.B) {
				p := haulChain(sheaves)
				var s *Solution
				for b.Loop() {
					s = solve(p, how)
				}
				b.ReportMetric(float64(s.Pivots), "pivots")
				b.ReportMetric(float64(len(p.RHS)), "rows")
			})
		}
	}
}

// BenchmarkHold asks for the range of every tension and grip force with all hands
// off, where nearly all of them are open.
func BenchmarkHold(b *testing.B) {
	for _, sheaves := range []int{2, 10, 50, 200} {
		b.Run(fmt.Sprint(sheaves), func(b *testing.B) {
			p := haulChain(sheaves)
			p.Columns[len(p.Columns)-1].Cost = Num{}
			for b.Loop() {
				s := Solve(p)
				for j, open := range s.Open() {
					if open {
						s.Range([]Term{{j, Int(1)}})
					}
				}
			}
		})
	}
}

func BenchmarkInexactChain(b *testing.B) {
	p := haulChain(50)
	p.RHS[0] = Approx(1)
	for b.Loop() {
		Solve(p)
	}
}
