package setups

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var (
	shellBlock  = regexp.MustCompile("(?ms)^ *```sh\n(.*?)^ *```$")
	configBlock = regexp.MustCompile("(?ms)^ *```\\w+ file=(\\S+)\n(.*?)^ *```$")
)

// installed follows the README of an editor in a fresh home: it runs the commands and
// writes the configuration. It gives the home and the environment to start the editor in.
func installed(t *testing.T, editor string) (home string, env []string) {
	t.Helper()
	readme, err := os.ReadFile(filepath.Join(editors, editor, "README.md"))
	require.NoError(t, err)
	top, err := filepath.Abs(root)
	require.NoError(t, err)
	home = t.TempDir()
	trustRepositories(t, home)
	env = []string{
		"HOME=" + home, "GOBIN=" + filepath.Join(home, "bin"),
		"PATH=" + filepath.Join(home, "bin") + string(os.PathListSeparator) + os.Getenv("PATH"),
		"XDG_CONFIG_HOME=" + filepath.Join(home, ".config"), "XDG_DATA_HOME=" + filepath.Join(home, ".local/share"),
		"XDG_STATE_HOME=" + filepath.Join(home, ".local/state"), "XDG_CACHE_HOME=" + filepath.Join(home, ".cache"),
	}
	env = append(env, compilerCaches(t)...)
	steps := shellBlock.FindAllStringSubmatch(string(readme), -1)
	require.NotEmpty(t, steps)
	for _, m := range steps {
		cmd := exec.Command("sh", "-euc", m[1])
		cmd.Dir, cmd.Env = top, append(os.Environ(), env...)
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, "%s\n%s", m[1], out)
	}
	configs := configBlock.FindAllStringSubmatch(string(readme), -1)
	require.NotEmpty(t, configs)
	for _, m := range configs {
		file := filepath.Join(home, m[1])
		require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
		require.NoError(t, os.WriteFile(file, []byte(m[2]), 0o600))
	}
	return home, env
}

// try starts an editor on a script that works in a fresh folder, $FOLDER, and writes what
// went wrong to $ERRORS; it must write want.
func try(t *testing.T, want string, env []string, program string, args ...string) {
	t.Helper()
	folder := filepath.Join(t.TempDir(), "réseau de cordes")
	require.NoError(t, os.Mkdir(folder, 0o755))
	errors := filepath.Join(t.TempDir(), "errors.txt")
	cmd := exec.Command(program, args...)
	cmd.Env = append(os.Environ(), append(env, "FOLDER="+folder, "ERRORS="+errors)...)
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s %v:\n%s", program, args, said)
	text, err := os.ReadFile(errors)
	require.NoError(t, err, "%s", said)
	require.Regexp(t, "^"+want+"$", string(text), "%s", said)
}

// script gives the path of a script of the tests.
func script(t *testing.T, name string) string {
	t.Helper()
	path, err := filepath.Abs(filepath.Join("testdata", name))
	require.NoError(t, err)
	return path
}

// trustRepositories lets git, which the compiler asks for the version, work in a tree of
// another owner.
func trustRepositories(t *testing.T, home string) {
	t.Helper()
	require.NoError(t, os.WriteFile(filepath.Join(home, ".gitconfig"), []byte("[safe]\n\tdirectory = *\n"), 0o600))
}

// compilerCaches keeps the caches of the compiler where they are, whatever the home.
func compilerCaches(t *testing.T) []string {
	t.Helper()
	var env []string
	for _, name := range []string{"GOPATH", "GOMODCACHE", "GOCACHE"} {
		value, err := exec.Command("go", "env", name).Output()
		require.NoError(t, err)
		env = append(env, name+"="+strings.TrimSpace(string(value)))
	}
	return env
}
