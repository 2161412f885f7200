package cli

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lint/rules"
)

// The catalogue has every page whole, and every link in it leads to a heading.
func TestCatalogue(t *testing.T) {
	text := catalogue()
	headings := map[string]int{}
	for _, m := range regexp.MustCompile(`(?m)^### (\S+)$`).FindAllStringSubmatch(text, -1) {
		headings[m[1]]++
	}
	assert.Len(t, headings, len(rules.All()))
	links := regexp.MustCompile(`\]\(([^)]*)\)`).FindAllStringSubmatch(text, -1)
	require.GreaterOrEqual(t, len(links), len(rules.All()))
	for _, m := range links {
		assert.Equal(t, 1, headings[strings.TrimPrefix(m[1], "#")], m[1])
	}
	for _, r := range rules.All() {
		page, _ := rules.Page(r.Name)
		assert.Contains(t, text, deeper(page), r.Name)
	}
}

func TestDeeperLeavesCodeAlone(t *testing.T) {
	assert.Equal(t, "### a\n\n```rig\n# a comment\n```\n#### b\n", deeper("# a\n\n```rig\n# a comment\n```\n## b\n"))
}
