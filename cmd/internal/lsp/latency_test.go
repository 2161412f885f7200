package lsp

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"fairlead/lang/langtest"
)

// libraryOf writes a file of a thousand lines and more: forty rigs.
func libraryOf() string {
	var b strings.Builder
	for i := range 40 {
		b.WriteString(strings.Replace(langtest.Usual, "rig shaft-raise", fmt.Sprintf("rig shaft-raise-%d", i), 1) + "\n")
	}
	return b.String()
}

// BenchmarkLatency measures the time from an edit to the findings of the new text.
func BenchmarkLatency(b *testing.B) {
	for name, text := range map[string]string{"25 lines": langtest.Usual, "1000 lines": libraryOf()} {
		b.Run(name, func(b *testing.B) {
			e := start(b, nil, "", everything)
			u := inFolder(b, "a.rig")
			e.open(u, text)
			e.findings(u, 1)
			line := uint32(strings.Count(text[:strings.LastIndex(text, "rope    long")], "\n"))
			var took []time.Duration
			version := int32(1)
			for b.Loop() {
				version++
				digit := string(rune('0' + version%10))
				begun := time.Now()
				e.change(u, version, piece(line, 27, line, 28, digit))
				e.findings(u, version)
				took = append(took, time.Since(begun))
				e.forget()
			}
			spread(b, took)
		})
	}
}

// spread gives the middle and the slowest hundredth of some times.
func spread(b *testing.B, took []time.Duration) {
	slices.Sort(took)
	ms := func(part int) float64 { return float64(took[len(took)*part/100].Microseconds()) / 1000 }
	b.ReportMetric(ms(50), "ms/p50")
	b.ReportMetric(ms(99), "ms/p99")
}
