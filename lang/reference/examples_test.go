package reference_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	rigfmt "fairlead/fmt"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
)

const examples = root + "/examples"

// TestExamples lints every example: its claims hold and nothing else is found, not
// even advice; it is in the standard style, documented, and the index leads to it.
func TestExamples(t *testing.T) {
	paths, err := filepath.Glob(examples + "/*.rig")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(paths), 14)
	var names []string
	for _, path := range paths {
		name := filepath.Base(path)
		names = append(names, name)
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			loaded, err := load.Paths([]string{path}, nil, "")
			require.NoError(t, err)
			file := loaded[0]
			found := lint.Run([]*load.Loaded{file}, rules.All())
			assert.Empty(t, found, "%s", said(found))
			formatted, _ := rigfmt.Format(file.File)
			assert.Equal(t, formatted, string(text), "not in the standard style")
			assert.True(t, strings.HasPrefix(string(text), "# "), "it does not begin with what it shows")
			for _, rig := range file.Model.Rigs {
				assert.NotEmpty(t, rig.Title, rig.Name)
				assert.NotEmpty(t, rig.Claims, rig.Name)
			}
			if rigs := file.Model.Rigs; assert.NotEmpty(t, rigs) && len(rigs) == 1 {
				assert.Equal(t, strings.TrimSuffix(name, ".rig"), rigs[0].Name)
			}
		})
	}
	index, err := os.ReadFile(examples + "/README.md")
	require.NoError(t, err)
	var listed []string
	for _, m := range regexp.MustCompile(`(?m)^\| \[([^\]]+)\]\(([^)]+)\)`).FindAllStringSubmatch(string(index), -1) {
		assert.Equal(t, m[1], m[2])
		listed = append(listed, m[1])
	}
	assert.ElementsMatch(t, names, listed, "the index")
}

// TestSamplePolicies lints the samples of house rules: each is sound, in the standard
// style, named after its file, and says that it is no advice.
func TestSamplePolicies(t *testing.T) {
	folder := filepath.Join(examples, "house-rules")
	paths, err := filepath.Glob(filepath.Join(folder, "*.rig"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(paths), 3)
	index, err := os.ReadFile(filepath.Join(folder, "README.md"))
	require.NoError(t, err)
	for _, path := range paths {
		name := filepath.Base(path)
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		file := load.Text(name, string(text))
		found := lint.Run([]*load.Loaded{file}, rules.All())
		assert.Empty(t, found, "%s", said(found))
		formatted, _ := rigfmt.Format(file.File)
		assert.Equal(t, formatted, string(text), "%s is not in the standard style", name)
		assert.True(t, strings.HasPrefix(string(text), "# A sample, not advice"), name)
		if assert.Len(t, file.Model.Policies, 1, name) {
			assert.Equal(t, strings.TrimSuffix(name, ".rig"), file.Model.Policies[0].Name)
		}
		assert.Contains(t, string(index), "]("+name+")")
	}
}
