package lint_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
)

type rapidDice struct{ *rapid.T }

func (d rapidDice) UpTo(n int) int { return rapid.IntRange(0, n-1).Draw(d.T, "dice") }

// spoilt takes letters out of a text, doubles some, swaps neighbours and leaves out
// lines and blanks.
func spoilt(t *rapid.T, text string) string {
	b := []byte(text)
	for range rapid.IntRange(0, 4).Draw(t, "faults") {
		at := rapid.IntRange(0, len(b)-2).Draw(t, "at")
		switch rapid.IntRange(0, 3).Draw(t, "fault") {
		case 0:
			b = append(b[:at:at], b[at+1:]...)
		case 1:
			b[at], b[at+1] = b[at+1], b[at]
		case 2:
			b = append(b[:at+1:at+1], b[at:]...)
		case 3:
			b = []byte(strings.Replace(string(b), " / ", "/", 1))
		}
	}
	return string(b)
}

// Whatever is wrong with a file, mending ends, makes nothing worse, keeps comments
// and claims, tells the number of findings that are gone, and leaves nothing that it
// would mend if it were asked again.
func TestMendMakesNothingWorse(t *testing.T) {
	steps := 0
	rapid.Check(t, func(t *rapid.T) {
		text := langtest.RandomRig(rapidDice{t})
		if rapid.Bool().Draw(t, "usual") {
			text = langtest.Usual
		}
		text = spoilt(t, text+"accept slack-strand because \"As found.\"  # seen\nexpect advantage 3:1\n")
		m := lint.Mend(load.Text("yard.rig", text), rules.All())
		steps += len(m.Steps)
		before, after := tallied(m.Before.Findings), tallied(m.Left.Findings)
		if len(m.Steps) == 0 {
			assert.Equal(t, text, m.File.File.Text)
			assert.Zero(t, m.Mended)
			return
		}
		assert.Positive(t, m.Mended, text)
		assert.True(t, after[diag.Error] < before[diag.Error] ||
			after[diag.Error] == before[diag.Error] && after[diag.Warning] <= before[diag.Warning], "%s\n%s", text, m.File.File.Text)
		assert.Equal(t, strings.Count(text, "#"), strings.Count(m.File.File.Text, "#"))
		assert.LessOrEqual(t, strings.Count(text, "expect "), strings.Count(m.File.File.Text, "expect "))
		again := lint.Mend(load.Text("yard.rig", m.File.File.Text), rules.All())
		assert.Empty(t, again.Steps, text)
		assert.Equal(t, len(m.Refused), len(again.Refused))
	})
	assert.Positive(t, steps, "something was mended")
}

func tallied(list []diag.Diagnostic) map[diag.Severity]int {
	counts := map[diag.Severity]int{}
	for _, d := range list {
		counts[d.Severity]++
	}
	return counts
}
