package reference_test

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
)

const root = "../.."

var (
	rigFile = regexp.MustCompile("(?ms)^```rig file=(\\S+)\n(.*?)^```\n")
	console = regexp.MustCompile("(?ms)^```console\n\\$ (fairlead [^\n]*)\n(.*?)^```\n")
)

// TestReadme runs what the README shows with the real program.
func TestReadme(t *testing.T) {
	program := build(t)
	path := filepath.Join(root, "README.md")
	readme, err := os.ReadFile(path)
	require.NoError(t, err)
	t.Run("output", func(t *testing.T) { compareOutput(t, program, path, string(readme)) })
	t.Run("commands", func(t *testing.T) { compareCommands(t, program, string(readme)) })
}

// compareOutput makes the files of the README, runs each command on them and
// compares what comes out; -update writes it.
func compareOutput(t *testing.T, program, path, readme string) {
	dir := t.TempDir()
	files := rigFile.FindAllStringSubmatch(readme, -1)
	require.NotEmpty(t, files)
	for _, m := range files {
		require.NoError(t, os.WriteFile(filepath.Join(dir, m[1]), []byte(m[2]), 0o600))
		assert.Empty(t, run(t, dir, program, []string{"fmt", "--check", m[1]}), "not in the standard style")
	}
	shown := map[string]bool{}
	now := console.ReplaceAllStringFunc(readme, func(block string) string {
		command := console.FindStringSubmatch(block)[1]
		words := strings.Fields(command)
		shown[words[1]] = true
		return "```console\n$ " + command + "\n" + run(t, dir, program, words[1:]) + "```\n"
	})
	assert.Equal(t, map[string]bool{"lint": true, "solve": true, "count": true}, shown)
	if now != readme {
		langtest.Golden(t, path, now)
	}
}

// compareCommands compares the table of commands with the program's own help.
func compareCommands(t *testing.T, program, readme string) {
	var listed, known []string
	for _, m := range regexp.MustCompile("(?m)^\\| `fairlead ([a-z]+)").FindAllStringSubmatch(readme, -1) {
		listed = append(listed, m[1])
	}
	help := run(t, t.TempDir(), program, nil)
	for _, m := range regexp.MustCompile("(?m)^  fairlead ([a-z]+)").FindAllStringSubmatch(help, -1) {
		known = append(known, m[1])
	}
	assert.NotEmpty(t, known)
	assert.ElementsMatch(t, known, listed)
}

// build makes the program of this tree: its packages can be imported below cmd only.
func build(t *testing.T) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "fairlead.exe")
	out, err := exec.Command("go", "build", "-o", program, "fairlead/cmd/fairlead").CombinedOutput()
	require.NoError(t, err, "%s", out)
	return program
}

// run gives the standard output of the program. A status of 1 is a finding, not a
// failure.
func run(t *testing.T, dir, program string, args []string) string {
	t.Helper()
	cmd := exec.Command(program, args...)
	cmd.Dir = dir
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	err := cmd.Run()
	var exit *exec.ExitError
	if errors.As(err, &exit) && exit.ExitCode() == 1 {
		err = nil
	}
	require.NoError(t, err, "%v: %s", args, errs.String())
	return out.String()
}
