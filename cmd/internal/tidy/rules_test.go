package tidy

import (
	"path"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lint/rules"
)

// A rule is two files and one line: NAME.go, NAME.md, and its place in the list.
// The code of a rule without a check of its own is elsewhere: in the reading of
// the text, or in the settling of claims.
func TestEveryRuleHasItsFileAndPage(t *testing.T) {
	list := files(t)
	known := map[string]bool{}
	for _, r := range rules.All() {
		known[r.Name] = true
		if r.Check != nil {
			mustHave(t, list, "lint/rules/"+strings.ReplaceAll(r.Name, "-", "_")+".go")
		}
		mustHave(t, list, "lint/rules/"+r.Name+".md")
		text, _ := rules.Page(r.Name)
		assert.True(t, strings.HasPrefix(text, "# "+r.Name+"\n"), "the page of %s begins with its name", r.Name)
		assert.NotEmpty(t, r.Summary, r.Name)
	}
	assert.NotEmpty(t, known)
	for _, name := range list {
		if path.Dir(name) == "lint/rules" && path.Ext(name) == ".md" {
			assert.True(t, known[strings.TrimSuffix(path.Base(name), ".md")], "%s is the page of no rule in the list", name)
		}
	}
}

func mustHave(t *testing.T, list []string, name string) {
	t.Helper()
	assert.True(t, slices.Contains(list, name), "%s is missing", name)
}
