package tidy

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// topLevel is everything that stands at the top besides dot files. What would
// want to has a home below one of these.
var topLevel = strings.Fields("cmd lang lint solve fmt examples testdata go.mod go.sum README.md DEVELOPERS.md")

func TestTopLevelIsFixed(t *testing.T) {
	for _, name := range files(t) {
		top, _, _ := strings.Cut(name, "/")
		if !strings.HasPrefix(top, ".") {
			assert.Contains(t, topLevel, top, name)
		}
	}
}
