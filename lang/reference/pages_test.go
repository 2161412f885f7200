package reference_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/reference"
)

func TestPages(t *testing.T) {
	pages := reference.Pages()
	require.NotEmpty(t, pages)
	overview := pages[0].Text
	for i, p := range pages {
		assert.True(t, strings.HasPrefix(p.Text, "# "+p.Title+"\n"), "%s does not begin with its title", p.Name)
		if i > 0 {
			assert.Contains(t, overview, "]("+p.Name+")", "the overview does not lead to it")
		}
	}
}

var link = regexp.MustCompile(`\]\(([^)#]+)(#[^)]*)?\)`)

// TestLinks follows every link from one page to a file beside it.
func TestLinks(t *testing.T) {
	for _, p := range reference.Pages() {
		for _, m := range link.FindAllStringSubmatch(p.Text, -1) {
			_, err := fs.Stat(os.DirFS("."), strings.TrimSuffix(m[1], "/"))
			assert.NoError(t, err, "%s leads to %s", p.Name, m[1])
		}
	}
}

// TestMachineOutputIsDocumented asks the page for every field of the schemas.
func TestMachineOutputIsDocumented(t *testing.T) {
	page, err := os.ReadFile("09-machine-output.md")
	require.NoError(t, err)
	for _, command := range []string{"solve", "count", "lint", "accepted"} {
		schema, ok := reference.Schema(command)
		require.True(t, ok)
		var tree any
		require.NoError(t, json.Unmarshal([]byte(schema), &tree))
		fields := fieldsOf(tree)
		assert.Greater(t, len(fields), 8, command)
		for _, field := range fields {
			word := regexp.MustCompile("[`\"." + `]` + regexp.QuoteMeta(field) + "[`\"\\[]")
			assert.Regexp(t, word, string(page), "%s: the field %s is not described", command, field)
		}
	}
	_, ok := reference.Schema("fmt")
	assert.False(t, ok)
}

// Two forms of output show findings: alike.
func TestSchemasShareTheFormOfFindings(t *testing.T) {
	forms := func(output string) map[string]any {
		schema, _ := reference.Schema(output)
		var tree struct {
			Defs map[string]any `json:"$defs"`
		}
		require.NoError(t, json.Unmarshal([]byte(schema), &tree))
		delete(tree.Defs, "claim")
		return tree.Defs
	}
	assert.Equal(t, forms("lint"), forms("accepted"))
}

// fieldsOf lists the property names of a schema.
func fieldsOf(tree any) []string {
	var names []string
	switch node := tree.(type) {
	case map[string]any:
		if properties, ok := node["properties"].(map[string]any); ok {
			for name := range properties {
				names = append(names, name)
			}
		}
		for _, child := range node {
			names = append(names, fieldsOf(child)...)
		}
	case []any:
		for _, child := range node {
			names = append(names, fieldsOf(child)...)
		}
	}
	return names
}
