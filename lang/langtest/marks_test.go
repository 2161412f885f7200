package langtest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

func TestStripTakesMarksOut(t *testing.T) {
	text, marks, err := strip("a ⟦bc⟧one,two d⟦⟧three\n⟦x ⟦y⟧in⟧out, z")
	require.NoError(t, err)
	assert.Equal(t, "a bc d\nx y, z", text)
	assert.Equal(t, []Mark{
		{"one", source.Span{Start: 2, End: 4}},
		{"two", source.Span{Start: 2, End: 4}},
		{"three", source.Span{Start: 6, End: 6}},
		{"in", source.Span{Start: 9, End: 10}},
		{"out", source.Span{Start: 7, End: 10}},
	}, marks)
}

func TestStripRefusesBadMarks(t *testing.T) {
	for _, bad := range []string{"⟦a", "a⟧b", "⟦a⟧ b", "⟦a⟧B"} {
		_, _, err := strip(bad)
		assert.Error(t, err, bad)
	}
}

func TestCompareFindsMissingAndSurplus(t *testing.T) {
	m := Read(t, "quarry.rig", "⟦ab⟧one c")
	found := func(rule string, start, end int) diag.Diagnostic {
		return diag.Diagnostic{Rule: rule, Place: m.File.At(source.Span{Start: start, End: end}), Message: "m"}
	}
	assert.Empty(t, m.compare([]diag.Diagnostic{found("one", 0, 2)}))
	assert.Len(t, m.compare(nil), 1, "missing")
	assert.Len(t, m.compare([]diag.Diagnostic{found("one", 0, 2), found("one", 0, 2)}), 1, "one too many")
	assert.Len(t, m.compare([]diag.Diagnostic{found("two", 0, 2)}), 2, "another rule")
	assert.Len(t, m.compare([]diag.Diagnostic{found("one", 0, 1)}), 2, "another place")
	other := found("one", 0, 2)
	other.Place.File = source.New("other.rig", m.File.Text)
	assert.Len(t, m.compare([]diag.Diagnostic{other}), 2, "another file")
}

func TestShowGivesTheMarksBack(t *testing.T) {
	const marked = "⟦a ⟦b⟧in⟧out ⟦⟧empty c"
	m := Read(t, "quarry.rig", marked)
	var found []diag.Diagnostic
	for _, mark := range m.Marks {
		found = append(found, diag.Diagnostic{Rule: mark.Rule, Place: m.File.At(mark.Span)})
	}
	again := Read(t, "quarry.rig", Show(m.File, found))
	assert.Equal(t, m.File.Text, again.File.Text)
	assert.ElementsMatch(t, m.Marks, again.Marks)
}

func TestGolden(t *testing.T) {
	path := filepath.Join(t.TempDir(), "deep", "one.golden")
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(t, os.WriteFile(path, []byte("as it was\n"), 0o644))
	Golden(t, path, "as it was\n")
	if !Updating() {
		probe := &recorder{TB: t}
		Golden(probe, path, "changed\n")
		assert.True(t, probe.failed, "a difference fails")
	}
}

func TestFixed(t *testing.T) {
	f := source.New("quarry.rig", "on hed")
	fix := diag.Fix{Title: "write head", Edits: []diag.Edit{{Place: f.At(source.Span{Start: 3, End: 6}), NewText: "head"}}}
	assert.Equal(t, "on head", Fixed(t, f, []diag.Diagnostic{{Fixes: []diag.Fix{fix}}}, "write head"))
}

// recorder is a test that only notes that it failed.
type recorder struct {
	testing.TB
	failed bool
}

func (r *recorder) Helper()               {}
func (r *recorder) Errorf(string, ...any) { r.failed = true }
