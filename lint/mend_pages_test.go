package lint_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/solve"
)

// rigsOf gives the rigs on the page of a rule.
func rigsOf(rule string) []string {
	text, _ := rules.Page(rule)
	var list []string
	for _, part := range strings.Split(text, "```rig\n")[1:] {
		rig, _, _ := strings.Cut(part, "```")
		list = append(list, rig)
	}
	return list
}

// On every rig of every page, what is mended is gone, no error has come, and the
// advantage that a fix promises is the one that the mended rig has.
func TestMendKeepsItsPromises(t *testing.T) {
	promised := 0
	for _, r := range rules.All() {
		for _, text := range rigsOf(r.Name) {
			m := lint.Mend(load.Text("yard.rig", text), rules.All())
			assert.LessOrEqual(t, tallied(m.Left.Findings)[diag.Error], tallied(m.Before.Findings)[diag.Error], text)
			assert.Equal(t, len(m.Steps) > 0, m.Mended > 0, text)
			for _, s := range m.Steps {
				for _, d := range m.Left.Findings {
					assert.False(t, d.Rule == s.Finding.Rule && d.Subject == s.Finding.Subject && d.Message == s.Finding.Message, text)
				}
				_, ratio, found := strings.Cut(s.Fix.Gives, "it is ")
				if !found || len(m.File.Model.Rigs) != 1 {
					continue
				}
				promised++
				ratio, _, _ = strings.Cut(ratio, " ")
				main := solve.Rig(m.File.Model.Rigs[0]).Main()
				require.NotNil(t, main, m.File.File.Text)
				assert.Equal(t, ratio, lint.Ratio(*main.Ideal), m.File.File.Text)
			}
		}
	}
	assert.GreaterOrEqual(t, promised, 5, "fixes that promise an advantage are among them")
}
