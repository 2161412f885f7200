package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The catalogue has every rule once, under a heading.
func TestGroups(t *testing.T) {
	titles, names := map[string]bool{}, map[string]bool{}
	for _, g := range Groups() {
		assert.NotEmpty(t, g.Title)
		assert.False(t, titles[g.Title], "%s stands twice", g.Title)
		titles[g.Title] = true
		for _, r := range g.Rules {
			assert.False(t, names[r.Name], "%s stands twice", r.Name)
			names[r.Name] = true
		}
	}
	assert.Len(t, All(), len(names))
}
