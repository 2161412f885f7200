package setups

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A manager of hooks builds the program from this repository and runs each of the hooks
// that stand at its top.
func TestHookManager(t *testing.T) {
	manager := need(t, "pre-commit", "pre-commit of the system's packages")
	top, err := filepath.Abs(root)
	require.NoError(t, err)
	r := newRepository(t)
	trustRepositories(t, r.variable("HOME"))
	// The manager sets a GOPATH of its own.
	r.env = append(r.env, compilerCaches(t)[1:]...)
	r.env = append(r.env, "PRE_COMMIT_HOME="+t.TempDir(), "GOFLAGS=-modcacherw")
	if _, ok := r.git("-C", top, "rev-parse", "--git-dir"); !ok {
		t.Skip("not tried: this tree is in no repository that a manager could take the hooks from")
	}
	r.write("a b/one.rig", crookedRig+"expect advantage 2:1\n")
	r.write("other.txt", wrongRig)
	r.write("lesson.md", "```rig\nanchor head\n```\n")
	r.must("add", ".")

	cmd := exec.Command(manager, "try-repo", top, "--all-files", "--verbose", "--color", "never")
	cmd.Dir, cmd.Env = r.folder, append(os.Environ(), r.env...)
	out, err := cmd.CombinedOutput()
	require.Error(t, err)
	said := string(out)
	// In the order of their names: the first sets the style that the last one wants.
	assert.Regexp(t, `fairlead fmt --write\.+Failed`, said)
	assert.Contains(t, said, "files were modified by this hook")
	assert.Regexp(t, `fairlead lint\.+Failed`, said)
	assert.Contains(t, said, "a b/one.rig, line 6")
	assert.NotContains(t, said, "other.txt")
	assert.Regexp(t, `fairlead fmt --check\.+Passed`, said)
	set := r.must("diff", "--name-only")
	assert.Equal(t, "a b/one.rig\nlesson.md\n", set)
}
