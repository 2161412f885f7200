package setups

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var link = regexp.MustCompile(`\]\(([^)#:]+)\)`)

// The pages lead where they say.
func TestLinks(t *testing.T) {
	pages := []string{filepath.Join(root, "README.md")}
	for _, pattern := range []string{editors + "/*.md", editors + "/*/*.md", hooks + "/*.md"} {
		found, err := filepath.Glob(pattern)
		require.NoError(t, err)
		pages = append(pages, found...)
	}
	require.Len(t, pages, 7)
	for _, page := range pages {
		text, err := os.ReadFile(page)
		require.NoError(t, err)
		for _, m := range link.FindAllStringSubmatch(string(text), -1) {
			assert.FileExists(t, filepath.Join(filepath.Dir(page), m[1]), page)
		}
	}
}

// What the README and the page of the hooks tell to type does what they say.
func TestReadmeOnSaveAndCommit(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	_, section, found := strings.Cut(string(readme), "\n## On every save and commit\n")
	require.True(t, found)
	section, _, _ = strings.Cut(section, "\n## ")
	page, err := os.ReadFile(filepath.Join(hooks, "README.md"))
	require.NoError(t, err)

	r := newRepository(t)
	require.NoError(t, os.Remove(filepath.Join(r.folder, ".git/hooks/pre-commit")))
	require.NoError(t, os.Rename(r.folder, filepath.Join(r.variable("HOME"), "library")))
	r.folder = filepath.Join(r.variable("HOME"), "library")
	r.write("one.rig", crookedRig)
	file := filepath.Join(r.folder, "one.rig")
	env := append(os.Environ(), append(r.env, "FILE="+file)...)

	tried := map[string]bool{}
	for _, m := range shellBlock.FindAllStringSubmatch(section+string(page), -1) {
		for _, line := range strings.Split(strings.TrimSpace(m[1]), "\n") {
			words := strings.Fields(line)
			tried[words[0]+" "+words[1]] = true
			cmd := exec.Command("sh", "-euc", "exec "+line)
			cmd.Dir, cmd.Env = root, env
			switch words[1] {
			case "watch":
				watches(t, cmd)
			default:
				out, err := cmd.CombinedOutput()
				require.NoError(t, err, "%s: %s", line, out)
			}
		}
	}
	assert.Equal(t, map[string]bool{"fairlead fmt": true, "fairlead lint": true, "fairlead watch": true, "cp examples/hooks/pre-commit": true}, tried)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(crookedRig, "anchor head", "anchor  head", 1), string(text))
	r.write("two.rig", wrongRig)
	r.must("add", ".")
	r.stops()
}

// watches starts what watches and ends it once it has shown what it found.
func watches(t *testing.T, cmd *exec.Cmd) {
	t.Helper()
	var out synced
	cmd.Stdout = &out
	require.NoError(t, cmd.Start())
	assert.Eventually(t, func() bool { return strings.Contains(out.String(), "watching: ") }, 20*time.Second, 20*time.Millisecond)
	require.NoError(t, cmd.Process.Signal(syscall.SIGTERM))
	require.NoError(t, cmd.Wait())
}

// synced collects what one goroutine writes and another reads.
type synced struct {
	mu  sync.Mutex
	all bytes.Buffer
}

func (s *synced) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.all.Write(p)
}

func (s *synced) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.all.String()
}
