package setups

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hooks is the folder of the set-ups of version control.
const hooks = root + "/examples/hooks"

const (
	soundRig = "anchor  head\nload    sack\nhauler  team\npulley  top   on head  holds sack\nrope    long\n\nreeve long: sack / top \\ team\n"
	// wrongRig has an error, windyRig a hazard that is no error, crookedRig another style.
	wrongRig   = "anchor  head\nload    sack\nrope    long\n\nreeve long: sack / hed\n"
	windyRig   = "anchor  head\nload    sack\nhauler  team\npulley  top   on head\nrope    long\n\nreeve long: sack / top \\ team\n"
	crookedRig = "anchor head\nload    sack\nrope    long\n\nreeve long: sack / head\n"
)

// repository is a fresh one in which the hook is installed.
type repository struct {
	t      *testing.T
	folder string
	env    []string
}

func newRepository(t *testing.T) *repository {
	t.Helper()
	need(t, "git", "git of the system's packages")
	home := t.TempDir()
	r := &repository{t: t, folder: filepath.Join(home, "a library"), env: []string{
		"HOME=" + home, "GIT_CONFIG_NOSYSTEM=1", "TMPDIR=" + t.TempDir(),
		"PATH=" + fairlead(t) + string(os.PathListSeparator) + os.Getenv("PATH"),
		"GIT_AUTHOR_NAME=a", "GIT_AUTHOR_EMAIL=a", "GIT_COMMITTER_NAME=a", "GIT_COMMITTER_EMAIL=a",
	}}
	require.NoError(t, os.Mkdir(r.folder, 0o755))
	r.must("init", "-q", ".")
	hook, err := os.ReadFile(filepath.Join(hooks, "pre-commit"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(r.folder, ".git/hooks/pre-commit"), hook, 0o755))
	return r
}

// git runs git and gives what it says, and whether it did what was asked.
func (r *repository) git(args ...string) (said string, ok bool) {
	r.t.Helper()
	cmd := exec.Command("git", args...)
	cmd.Dir, cmd.Env = r.folder, append(os.Environ(), r.env...)
	out, err := cmd.CombinedOutput()
	return string(out), err == nil
}

func (r *repository) must(args ...string) string {
	r.t.Helper()
	said, ok := r.git(args...)
	require.True(r.t, ok, "git %v: %s", args, said)
	return said
}

func (r *repository) write(name, text string) {
	r.t.Helper()
	path := filepath.Join(r.folder, name)
	require.NoError(r.t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(r.t, os.WriteFile(path, []byte(text), 0o600))
}

// passes commits, which must succeed; what is no error is shown all the same.
func (r *repository) passes(args ...string) {
	r.t.Helper()
	said, ok := r.git(append([]string{"commit", "-q", "-m", "rigs"}, args...)...)
	require.True(r.t, ok, said)
	require.NotContains(r.t, said, "!!")
}

// stops commits, which the hook must prevent, and gives what it says.
func (r *repository) stops(args ...string) string {
	r.t.Helper()
	before, _ := r.git("rev-parse", "-q", "--verify", "HEAD")
	said, ok := r.git(append([]string{"commit", "-q", "-m", "rigs"}, args...)...)
	require.False(r.t, ok, "the commit was made: %s", said)
	after, _ := r.git("rev-parse", "-q", "--verify", "HEAD")
	require.Equal(r.t, before, after)
	return said
}

func TestHookLooksAtWhatIsStaged(t *testing.T) {
	r := newRepository(t)
	r.write("one.rig", wrongRig)
	r.must("add", ".")
	r.write("one.rig", soundRig)
	said := r.stops()
	assert.Contains(t, said, "hed is not a part of this rig")
	assert.Contains(t, said, "one.rig, line 5")
	r.must("add", ".")
	r.write("one.rig", wrongRig)
	r.passes()
	r.stops("-a")
	r.stops("--", "one.rig")
	r.write("two.rig", wrongRig)
	r.must("add", "-N", "two.rig")
	r.write("three.rig", soundRig)
	r.must("add", "three.rig")
	r.passes("--", "three.rig")
	r.must("reset", "-q", "--hard")
	r.write("one.rig", wrongRig)
	r.must("add", "one.rig")
	r.stops("--amend")
	r.must("checkout", "-q", "HEAD", "one.rig")
	r.passes("--amend")
}

func TestHookReadsAnyName(t *testing.T) {
	r := newRepository(t)
	names := []string{"a b/c  d.rig", `it's "so".rig`, "-x.rig", "größe 🪢.rig", "$(touch bad).rig", "tab\tnew\nline.rig", "notes on it.MD", "sub/x.markdown"}
	for _, name := range names {
		text := wrongRig
		if !strings.HasSuffix(name, ".rig") {
			text = "# Rope\n\n> ```rig\n> " + strings.ReplaceAll(wrongRig, "\n", "\n> ") + "```\n"
		}
		r.write(name, text)
		r.must("add", ".")
		said := r.stops()
		assert.Equal(t, 1, strings.Count(said, "hed is not a part"), "%s: %s", name, said)
		r.must("rm", "-q", "-r", "--cached", ".")
		require.NoError(t, os.Remove(filepath.Join(r.folder, name)))
	}
	r.write("plain.md", "No rig here.\n")
	r.write("other.txt", wrongRig)
	r.write("lesson.md", "- One:\n\n  ```rig\n"+crookedRig+"  ```\n")
	for _, name := range names {
		if strings.HasSuffix(name, ".rig") {
			r.write(name, soundRig)
		}
	}
	r.write("lesson.md", "Nothing yet.\n")
	r.must("add", ".")
	r.passes()
}

func TestHookChecksTheStyle(t *testing.T) {
	r := newRepository(t)
	r.write("one.rig", crookedRig)
	r.write("two.rig", soundRig)
	r.write("lesson.md", "```rig\nanchor head\n```\n")
	r.must("add", ".")
	said := r.stops()
	_, crooked, found := strings.Cut(said, "not in the standard style")
	require.True(t, found, said)
	_, crooked, _ = strings.Cut(crooked, "\n")
	assert.ElementsMatch(t, []string{"one.rig", "lesson.md"}, strings.Fields(crooked))
	// An error in the text is told once.
	r.write("one.rig", "anchr head\n")
	r.must("add", ".")
	assert.Equal(t, 1, strings.Count(r.stops(), "unknown-statement"))
}

func TestHookLetsGoOfWhatGoes(t *testing.T) {
	r := newRepository(t)
	r.write("one.rig", soundRig)
	r.write("old/two.rig", wrongRig)
	r.must("add", ".")
	r.passes("--no-verify")
	r.must("mv", "old/two.rig", "new name.rig")
	assert.Contains(t, r.stops(), "new name.rig, line 5")
	r.must("rm", "-q", "-f", "new name.rig")
	r.passes()
	r.must("rm", "-q", "one.rig")
	r.passes()
	r.must("commit", "-q", "--allow-empty", "-m", "nothing")
}

func TestHookTakesTheStagedHouseRules(t *testing.T) {
	r := newRepository(t)
	r.write("sub/one.rig", windyRig)
	r.must("add", ".")
	said, ok := r.git("commit", "-q", "-m", "a hazard")
	require.True(t, ok)
	require.Contains(t, said, "no-capture", "what stops no commit is shown all the same")
	// Those of the work tree and of folders outside do not count.
	r.write("policy.rig", "policy yard\n\nrule no-capture error\n")
	require.NoError(t, os.WriteFile(filepath.Join(r.variable("TMPDIR"), "policy.rig"), []byte("policy yard\n\nrule no-capture error\n"), 0o600))
	r.write("sub/one.rig", windyRig+"# again\n")
	r.must("add", "sub")
	_, ok = r.git("commit", "-q", "-m", "a hazard")
	require.True(t, ok)
	r.must("add", "policy.rig")
	r.passes()
	r.write("sub/one.rig", windyRig+"# once more\n")
	r.must("add", ".")
	r.stops()
	r.write("policy.rig", "policy yard\n\nrule no-capture advice\n")
	r.must("add", ".")
	r.must("config", "fairlead.failOn", "advice")
	r.stops()
	r.must("config", "fairlead.failOn", "error")
	r.passes()
}

// variable gives a variable of the environment that git runs in.
func (r *repository) variable(name string) string {
	for _, v := range r.env {
		if value, ok := strings.CutPrefix(v, name+"="); ok {
			return value
		}
	}
	return ""
}

func TestHookFollowsNoLinks(t *testing.T) {
	r := newRepository(t)
	require.NoError(t, os.Symlink("nowhere.rig", filepath.Join(r.folder, "link.rig")))
	r.must("add", ".")
	r.passes()
}

func TestHookMissesTheProgram(t *testing.T) {
	r := newRepository(t)
	r.must("config", "fairlead.program", "no-such-program")
	r.write("other.txt", "x\n")
	r.must("add", ".")
	r.passes()
	r.write("one.rig", soundRig)
	r.must("add", ".")
	assert.Contains(t, r.stops(), "there is no program no-such-program")
	r.must("config", "fairlead.program", filepath.Join(fairlead(t), "fairlead"))
	r.passes()
}

func TestHookWorksInAnotherWorkTree(t *testing.T) {
	r := newRepository(t)
	r.write("one.rig", soundRig)
	r.must("add", ".")
	r.passes()
	other := filepath.Join(t.TempDir(), "other tree")
	r.must("worktree", "add", "-q", "-b", "other", other)
	r.folder = other
	r.write("sub/one.rig", wrongRig)
	r.must("add", ".")
	r.folder = filepath.Join(other, "sub")
	r.stops()
	left, err := os.ReadDir(r.variable("TMPDIR"))
	require.NoError(t, err)
	assert.Empty(t, left, "the hook left folders")
}

// A rig takes what it uses from the index too, changed or not.
func TestHookTakesTheStagedUsedFiles(t *testing.T) {
	r := newRepository(t)
	rig := "use \"../parts/stock.rig\"\n\n" + strings.Replace(soundRig, "top   on head", "top   yard-block on head", 1) +
		"\nexpect actual advantage over 0.85\n"
	r.styled("parts/stock.rig", "stock pulley yard-block  efficiency 90 %\n")
	r.styled("sub/one.rig", rig)
	r.must("add", ".")
	r.passes()
	r.styled("parts/stock.rig", "stock pulley yard-block  efficiency 50 %\n")
	r.styled("sub/one.rig", rig+"# again\n")
	r.must("add", "sub")
	r.passes()
	r.styled("sub/one.rig", rig+"# once more\n")
	r.must("add", ".")
	assert.Contains(t, r.stops(), "expectation-failed")
}

// styled writes a rig in the standard style.
func (r *repository) styled(name, text string) {
	r.t.Helper()
	r.write(name, text)
	command(r.t, nil, nil, filepath.Join(fairlead(r.t), "fairlead"), "fmt", "--write", filepath.Join(r.folder, name))
}
