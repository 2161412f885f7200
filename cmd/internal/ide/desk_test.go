package ide

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lint/rules"
)

func rulesFound(t *testing.T, d *Document) []string {
	t.Helper()
	found, ok := d.Findings(nil)
	require.True(t, ok)
	var list []string
	for _, f := range found.Findings {
		list = append(list, f.Rule)
	}
	return list
}

func TestUnsavedHouseRulesCount(t *testing.T) {
	folder := t.TempDir()
	rig, policy := filepath.Join(folder, "yard", "a.rig"), filepath.Join(folder, "policy.rig")
	require.NoError(t, os.Mkdir(filepath.Dir(rig), 0o755))
	desk := NewDesk(rules.All())
	text := strings.ReplaceAll(loose, cursor, "")
	desk.Set(rig, Text{1, text})
	before := desk.Snapshot()
	assert.Contains(t, rulesFound(t, before.Document(rig)), "no-capture")
	desk.Set(policy, Text{1, "rule no-capture off\n"})
	assert.NotContains(t, rulesFound(t, desk.Snapshot().Document(rig)), "no-capture")
	assert.Contains(t, rulesFound(t, before.Document(rig)), "no-capture", "a snapshot never changes")
	require.NoError(t, os.WriteFile(policy, []byte("policy saved\n"), 0o644))
	desk.Drop(policy)
	assert.Contains(t, rulesFound(t, desk.Snapshot().Document(rig)), "no-capture")
	require.NoError(t, os.WriteFile(policy, []byte("rule no-capture error\n"), 0o644))
	desk.Disturb()
	found, _ := desk.Snapshot().Document(rig).Findings(nil)
	assert.Equal(t, "error", found.Findings[0].Severity.String())
	assert.True(t, desk.Snapshot().Document(rig).DependsOn(policy))
	assert.True(t, desk.Snapshot().Document(rig).DependsOn(filepath.Join(folder, "yard", "policy.rig")), "it may be made")
	assert.False(t, desk.Snapshot().Document(rig).DependsOn(filepath.Join(folder, "yard", "b.rig")))
}

func TestSavedFilesAndWhatIsNotThere(t *testing.T) {
	folder := t.TempDir()
	saved := filepath.Join(folder, "a.rig")
	require.NoError(t, os.WriteFile(saved, []byte("anchor head\n"), 0o644))
	s := NewDesk(rules.All()).Snapshot()
	assert.Equal(t, "head", s.Document(saved).Model.Rigs[0].Parts[0].Name)
	assert.Nil(t, s.Document(filepath.Join(folder, "none.rig")))
	_, open := s.Text(saved)
	assert.False(t, open)
}

func TestATextOpenedByALinkStandsForItsFile(t *testing.T) {
	folder := t.TempDir()
	policy, link := filepath.Join(folder, "policy.rig"), filepath.Join(folder, "other.rig")
	require.NoError(t, os.WriteFile(policy, []byte("policy saved\n"), 0o644))
	require.NoError(t, os.Symlink(policy, link))
	desk := NewDesk(rules.All())
	desk.Set(link, Text{1, "policy unsaved\n"})
	rig := filepath.Join(folder, "a.rig")
	desk.Set(rig, Text{1, "anchor head\n"})
	assert.Equal(t, "unsaved", desk.Snapshot().Document(rig).Policy.Model.Policies[0].Name)
}

func TestOneSnapshotAVersion(t *testing.T) {
	desk := NewDesk(rules.All())
	path := filepath.Join(t.TempDir(), "a.rig")
	desk.Set(path, Text{1, shaft})
	first := desk.Snapshot()
	assert.Same(t, first, desk.Snapshot())
	assert.Same(t, first.Document(path), first.Document(path))
	hints := hinted(first.Document(path), 0, 999)
	require.NotEmpty(t, hints)
	desk.Set(path, Text{2, "# x\n" + shaft})
	second := desk.Snapshot()
	assert.Greater(t, second.Serial, first.Serial)
	assert.Equal(t, int32(2), second.Document(path).Version)
	assert.NotEqual(t, first.Document(path).File.Text, second.Document(path).File.Text)
	assert.Equal(t, hints, hinted(first.Document(path), 0, 999))
	desk.Set(path, Text{3, "anchor new\n" + shaft})
	assert.Empty(t, hinted(second.Document(path), 0, 999), "nobody wants a version that was not solved in time")
	assert.Equal(t, hints, hinted(desk.Snapshot().Document(path), 0, 999))
}

func TestFind(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{
		"a.rig": "rig low\nanchor oak-tree\n", "deep/b.rig": "anchor old-oak\nrope long\nreeve long: old-oak / old-oak\n",
		"notes.md": "Text\n\n```rig\nanchor oak\n```\n", "read.me": "anchor oak\n",
	} {
		path := filepath.Join(folder, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	}
	desk := NewDesk(rules.All())
	elsewhere := filepath.Join(t.TempDir(), "c.rig")
	desk.Set(elsewhere, Text{1, "anchor oaken\n"})
	desk.Set(filepath.Join(folder, "a.rig"), Text{1, "rig lowest\nanchor oak-tree\n"})
	find := func(query string) (list []string) {
		for _, f := range desk.Snapshot().Find(query, []string{folder}) {
			list = append(list, strings.TrimPrefix(f.File.Name, filepath.ToSlash(folder)+"/")+" "+f.In+" "+f.Name)
		}
		return list
	}
	assert.ElementsMatch(t, []string{"a.rig lowest oak-tree", "deep/b.rig  old-oak", "notes.md  oak", filepath.ToSlash(elsewhere) + "  oaken"}, find("oAk"))
	assert.Equal(t, []string{"a.rig  lowest"}, find("lwst"))
	assert.Equal(t, []string{"deep/b.rig  long"}, find("long"), "a rope and its line are one")
}
