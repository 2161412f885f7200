package setups

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// library is a folder with one rig, and what a run on a server finds there.
type library struct {
	text  string
	fails bool
	error bool
}

var libraries = map[string]library{
	"sound":   {text: soundRig},
	"wrong":   {text: wrongRig, fails: true, error: true},
	"crooked": {text: strings.Replace(soundRig, "  ", "   ", 1), fails: true},
}

// shell runs lines of a sample in a folder as a server does, and says whether they pass.
func shell(t *testing.T, folder string, env []string, lines ...string) (said string, ok bool) {
	t.Helper()
	cmd := exec.Command("bash", "-eo", "pipefail", "-c", strings.Join(lines, "\n"))
	cmd.Dir, cmd.Env = folder, append(os.Environ(), env...)
	out, err := cmd.CombinedOutput()
	return string(out), err == nil
}

// installedThere gives an environment in which "go install" makes a program on the path.
func installedThere(t *testing.T) []string {
	t.Helper()
	home, bin := t.TempDir(), t.TempDir()
	trustRepositories(t, home)
	return append(compilerCaches(t), "HOME="+home, "GOBIN="+bin, "PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
}

func read(t *testing.T, sample string, into any) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(hooks, "ci", sample))
	require.NoError(t, err)
	require.NoError(t, yaml.Unmarshal(text, into))
}

// handedOver gives the rules of the findings in a SARIF file.
func handedOver(t *testing.T, file string) []string {
	t.Helper()
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	var log struct {
		Version string
		Runs    []struct {
			Results []struct{ RuleID string }
		}
	}
	require.NoError(t, json.Unmarshal(text, &log))
	assert.Equal(t, "2.1.0", log.Version)
	var rules []string
	for _, r := range log.Runs[0].Results {
		rules = append(rules, r.RuleID)
	}
	return rules
}

func TestGitHubSample(t *testing.T) {
	need(t, "bash", "bash of the system's packages")
	type step struct {
		Name, Run, Uses, If string
		With                map[string]string
		WorkingDirectory    string `yaml:"working-directory"`
	}
	var sample struct {
		Jobs map[string]struct{ Steps []step }
	}
	read(t, "github.yml", &sample)
	env := installedThere(t)
	for name, lib := range libraries {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			require.NoError(t, os.WriteFile(filepath.Join(folder, "one.rig"), []byte(lib.text), 0o600))
			failed, handed := false, false
			for _, s := range sample.Jobs["lint"].Steps {
				if failed && s.If != "always()" {
					continue
				}
				if file := s.With["sarif_file"]; file != "" {
					assert.Equal(t, lib.error, slices.Contains(handedOver(t, filepath.Join(folder, file)), "unknown-part"))
					handed = true
				}
				if s.Run == "" {
					continue
				}
				where := folder
				if s.WorkingDirectory != "" {
					where = root
				}
				_, ok := shell(t, where, env, s.Run)
				failed = failed || !ok
			}
			assert.True(t, handed)
			assert.Equal(t, lib.fails, failed)
		})
	}
}

func TestGitLabSample(t *testing.T) {
	need(t, "bash", "bash of the system's packages")
	need(t, "git", "git of the system's packages")
	var sample struct {
		Rigs struct {
			BeforeScript []string `yaml:"before_script"`
			Script       []string
			Artifacts    struct {
				When  string
				Paths []string
			}
		}
	}
	read(t, "gitlab.yml", &sample)
	top, err := filepath.Abs(root)
	require.NoError(t, err)
	env := append(installedThere(t), "FAIRLEAD_REPOSITORY=file://"+top)
	if _, ok := shell(t, top, env, "git rev-parse --git-dir"); !ok {
		t.Skip("not tried: this tree is in no repository that a server could clone")
	}
	assert.Equal(t, "always", sample.Rigs.Artifacts.When)
	folder := t.TempDir()
	said, ok := shell(t, folder, env, sample.Rigs.BeforeScript...)
	require.True(t, ok, said)
	for name, lib := range libraries {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, os.WriteFile(filepath.Join(folder, "one.rig"), []byte(lib.text), 0o600))
			said, ok := shell(t, folder, env, sample.Rigs.Script...)
			assert.Equal(t, lib.fails, !ok, said)
			for _, path := range sample.Rigs.Artifacts.Paths {
				assert.Equal(t, lib.error, slices.Contains(handedOver(t, filepath.Join(folder, path)), "unknown-part"))
			}
		})
	}
}
