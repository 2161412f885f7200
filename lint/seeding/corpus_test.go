package seeding_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	rigfmt "fairlead/fmt"
	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
)

// folder holds the corpus: correct rigs of all classes, as people who rig would rig them.
const folder = "../../testdata/corpus"

// corpus loads every rig of the corpus, with the house rules beside them.
func corpus(t testing.TB) []*load.Loaded {
	t.Helper()
	files, err := load.Loader{}.Paths([]string{folder})
	require.NoError(t, err)
	var rigs []*load.Loaded
	for _, f := range files {
		if filepath.Base(f.File.Name) != load.PolicyName {
			require.NotNil(t, f.Policy, f.File.Name)
			rigs = append(rigs, f)
		}
	}
	return rigs
}

// said writes findings one a line.
func said(found []diag.Diagnostic) string {
	var list []string
	for _, d := range found {
		list = append(list, d.Rule+" at "+d.Place.Text()+": "+d.Message)
	}
	return strings.Join(list, "\n")
}

// Nothing is found in a correct rig, not even advice, under the usual house rules and
// under the stricter ones of the corpus.
func TestCorpusIsClean(t *testing.T) {
	files := corpus(t)
	assert.GreaterOrEqual(t, len(files), 45)
	for _, f := range files {
		t.Run(filepath.Base(f.File.Name), func(t *testing.T) {
			usual := load.Text(f.File.Name, f.File.Text)
			for house, f := range map[string]*load.Loaded{"the usual rules": usual, "those of the corpus": f} {
				found := lint.Run([]*load.Loaded{f}, rules.All())
				assert.Empty(t, found, "under %s:\n%s", house, said(found))
			}
		})
	}
}

// Each rig is in the standard style, says what it is, and claims what must be true of it.
func TestCorpusIsWrittenWell(t *testing.T) {
	for _, f := range corpus(t) {
		name := filepath.Base(f.File.Name)
		formatted, _ := rigfmt.Format(f.File)
		assert.Equal(t, formatted, f.File.Text, "%s is not in the standard style", name)
		assert.True(t, strings.HasPrefix(f.File.Text, "# "), "%s does not say what it is", name)
		if assert.Len(t, f.Model.Rigs, 1, name) {
			rig := f.Model.Rigs[0]
			assert.Equal(t, strings.TrimSuffix(name, ".rig"), rig.Name)
			assert.NotEmpty(t, rig.Title, name)
			assert.GreaterOrEqual(t, len(rig.Claims), 2, name)
		}
	}
	_, err := os.Stat(filepath.Join(folder, load.PolicyName))
	assert.NoError(t, err)
}
