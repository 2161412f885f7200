package setups

import (
	"encoding/json"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/cmd/internal/ide"
)

// manifest is what the extension says of itself, as far as it is compared here.
type manifest struct {
	Main        string
	Contributes struct {
		Languages []struct{ Configuration string }
		Grammars  []struct {
			ScopeName string
			Path      string
		}
		SemanticTokenScopes []struct{ Scopes map[string][]string }
		ProblemMatchers     []struct{ Pattern struct{ Regexp string } }
	}
	Dependencies map[string]string
}

func extensionManifest(t *testing.T) manifest {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(editors, "vscode/package.json"))
	require.NoError(t, err)
	var m manifest
	require.NoError(t, json.Unmarshal(text, &m))
	return m
}

// The client of the extension talks with the server: the library is the real one, the
// editor's module a stand-in.
func TestExtension(t *testing.T) {
	program, packages := node(t)
	extension, err := filepath.Abs(filepath.Join(editors, "vscode"))
	require.NoError(t, err)
	standIn, err := filepath.Abs("testdata")
	require.NoError(t, err)
	try(t, "", []string{
		"EXTENSION=" + extension,
		"NODE_PATH=" + strings.Join([]string{standIn, packages}, string(os.PathListSeparator)),
		"PATH=" + fairlead(t) + string(os.PathListSeparator) + os.Getenv("PATH"),
	}, program, script(t, "extension.js"))
}

// What the manifest names is there, and is what the server and the linter write.
func TestExtensionManifest(t *testing.T) {
	m := extensionManifest(t)
	files := []string{m.Main}
	for _, l := range m.Contributes.Languages {
		files = append(files, l.Configuration)
	}
	for _, g := range m.Contributes.Grammars {
		files = append(files, g.Path)
		text, err := os.ReadFile(filepath.Join(editors, "vscode", g.Path))
		require.NoError(t, err)
		assert.Contains(t, string(text), `"scopeName": "`+g.ScopeName+`"`)
	}
	for _, f := range files {
		assert.FileExists(t, filepath.Join(editors, "vscode", f))
	}

	// The colours before and after the server has spoken are the same.
	require.Len(t, m.Contributes.SemanticTokenScopes, 1)
	var sorts []string
	for s, names := range m.Contributes.SemanticTokenScopes[0].Scopes {
		sorts = append(sorts, s)
		for _, n := range names {
			assert.Contains(t, slices.Collect(maps.Values(scopes)), n, s)
		}
	}
	assert.ElementsMatch(t, ide.TokenSorts, sorts)

	// Tests and users have the same library.
	text, err := os.ReadFile(filepath.Join(root, "testdata/clients/package.json"))
	require.NoError(t, err)
	var clients manifest
	require.NoError(t, json.Unmarshal(text, &clients))
	for name, version := range m.Dependencies {
		assert.Equal(t, version, clients.Dependencies[name], name)
	}
}

// The problem matcher reads what the linter writes.
func TestExtensionProblemMatcher(t *testing.T) {
	matchers := extensionManifest(t).Contributes.ProblemMatchers
	require.Len(t, matchers, 1)
	pattern, err := regexp.Compile(matchers[0].Pattern.Regexp)
	require.NoError(t, err)
	program := filepath.Join(fairlead(t), "fairlead")
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "a rig.rig"), []byte("anchor head\nload sack\nrope long\nreeve long: sack / hed\n"), 0o600))
	lint := exec.Command(program, "lint", "--format", "brief", "a rig.rig")
	lint.Dir = folder
	out, _ := lint.Output() // its status says that something was found
	var read [][]string
	for _, line := range strings.Split(strings.TrimSuffix(string(out), "\n"), "\n") {
		m := pattern.FindStringSubmatch(line)
		require.NotNil(t, m, line)
		read = append(read, m[1:])
	}
	assert.Contains(t, read, []string{"a rig.rig", "4", "20", "error", "hed is not a part of this rig, did you mean head?", "unknown-part"})
}
