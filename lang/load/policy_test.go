package load_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/load"
)

// tree writes files into a new folder and makes it the working folder.
func tree(t *testing.T, files map[string]string) {
	t.Helper()
	root := t.TempDir()
	for name, text := range files {
		require.NoError(t, os.MkdirAll(filepath.Join(root, filepath.Dir(name)), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(root, name), []byte(text), 0o644))
	}
	t.Chdir(root)
}

func policyOf(l *load.Loaded) string {
	if l.Policy == nil {
		return ""
	}
	return l.Policy.File.Name
}

func TestTheNearestPolicyHolds(t *testing.T) {
	tree(t, map[string]string{
		"policy.rig": "policy above\n", "yard/a.rig": "anchor head\n",
		"yard/deep/policy.rig": "policy near\n", "yard/deep/b.rig": "anchor head\n", "yard/deep/in/c.rig": "anchor head\n",
	})
	loaded, err := load.Loader{}.Paths([]string{"yard"})
	require.NoError(t, err)
	got := map[string]string{}
	for _, l := range loaded {
		got[l.File.Name] = policyOf(l)
	}
	assert.Equal(t, map[string]string{
		"yard/a.rig": "policy.rig", "yard/deep/b.rig": "yard/deep/policy.rig",
		"yard/deep/in/c.rig": "yard/deep/policy.rig", "yard/deep/policy.rig": "",
	}, got)
	others := load.Policies(loaded)
	require.Len(t, others, 1, "the nearer one is among the files")
	assert.Equal(t, "policy.rig", others[0].File.Name)
}

func TestOnePolicyForAll(t *testing.T) {
	tree(t, map[string]string{"policy.rig": "policy above\n", "a.rig": "anchor head\n", "strict.rig": "policy strict\n"})
	loaded, err := load.Loader{Policy: "strict.rig"}.Paths([]string{"a.rig"})
	require.NoError(t, err)
	assert.Equal(t, "strict.rig", policyOf(loaded[0]))
	loaded, err = load.Loader{Policy: "none.rig"}.Paths([]string{"a.rig"})
	require.ErrorContains(t, err, "none.rig")
	assert.Len(t, loaded, 1, "the file is there all the same")
}

func TestUnsavedPolicy(t *testing.T) {
	tree(t, map[string]string{"yard/a.rig": "anchor head\n", "policy.rig": "policy saved\n"})
	root, err := os.Getwd()
	require.NoError(t, err)
	l := load.Loader{Overlay: map[string]string{filepath.Join(root, "policy.rig"): "policy unsaved\n"}}
	policy, err := l.PolicyFor("yard/a.rig")
	require.NoError(t, err)
	assert.Equal(t, "unsaved", policy.Model.Policies[0].Name)
}
