package resolve

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// marked is a rig with its findings marked. Rigs in these tests are of no use to
// a rigger: each is as small as what it shows.
type marked struct{ name, text string }

// basic is what most of them stand on.
const basic = "anchor head\nload litter\nhauler team\nrope long\n"

// allMarked are the cases of every test file.
var allMarked = slices.Concat(nameCases, reeveCases, clipCases, valueCases, angleCases, roleCases,
	holdCases, positionCases, stockCases, severalCases, badCases, useCases, includeCases, leaveCases, joinCases)

// resolved resolves a text, which may use the files of the library.
func resolved(name, text string) (*model.File, []diag.Diagnostic) {
	return meant(syntax.Parse(source.New(name, text)))
}

// meant resolves a tree, which may use the files of the library.
func meant(tree *syntax.Tree) (*model.File, []diag.Diagnostic) {
	r := Using(tree, openInLibrary)
	return r.Model, r.Problems
}

// oneRig resolves a text that must be one rig.
func oneRig(t *testing.T, text string) (*model.Rig, []diag.Diagnostic) {
	t.Helper()
	file, found := resolved("yard.rig", text)
	require.Len(t, file.Rigs, 1)
	return file.Rigs[0], found
}

func TestFindings(t *testing.T) {
	for _, c := range allMarked {
		t.Run(c.name, func(t *testing.T) {
			m := langtest.Read(t, "yard.rig", c.text)
			_, found := meant(syntax.Parse(m.File))
			m.Check(t, found)
			if t.Failed() {
				t.Log("found:\n" + langtest.Show(m.File, found))
			}
			for _, d := range found {
				assert.NotRegexp(t, `[.\n]$|%!`, d.Message)
			}
		})
	}
}

// Every rule fires in some case, with its own severity or the milder one that
// its summary tells of.
func TestEveryRuleFires(t *testing.T) {
	fired := map[string]map[diag.Severity]bool{}
	for _, c := range allMarked {
		m := langtest.Read(t, "yard.rig", c.text)
		_, found := meant(syntax.Parse(m.File))
		for _, d := range found {
			if fired[d.Rule] == nil {
				fired[d.Rule] = map[diag.Severity]bool{}
			}
			fired[d.Rule][d.Severity] = true
		}
	}
	milder := map[string]diag.Severity{"missing-reeve": diag.Advice, "wrong-angle": diag.Warning}
	for _, rule := range Rules() {
		if rule.Name == "too-large" { // it has a test of its own
			continue
		}
		want := map[diag.Severity]bool{rule.Severity: true}
		if severity, ok := milder[rule.Name]; ok {
			want[severity] = true
		}
		assert.Equal(t, want, fired[rule.Name], rule.Name)
	}
}

func TestRulesAreListedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, rule := range Rules() {
		assert.False(t, seen[rule.Name], rule.Name)
		assert.NotEmpty(t, rule.Summary, rule.Name)
		seen[rule.Name] = true
	}
}

// message gives the message of the one finding of a rule.
func message(t *testing.T, found []diag.Diagnostic, rule string) string {
	t.Helper()
	var messages []string
	for _, d := range found {
		if d.Rule == rule {
			messages = append(messages, d.Message)
		}
	}
	require.Len(t, messages, 1, rule)
	return messages[0]
}
