package lsp

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/reference"
)

// keys lists the settings of a value, those inside others by their way.
func keys(value any, way string) []string {
	nested, ok := value.(map[string]any)
	if !ok {
		return []string{way}
	}
	var list []string
	for name, v := range nested {
		if way != "" {
			name = way + "." + name
		}
		list = append(list, keys(v, name)...)
	}
	return list
}

// TestManualHasEverySettingAndCommand asks the page for each by its name.
func TestManualHasEverySettingAndCommand(t *testing.T) {
	page := ""
	for _, p := range reference.Pages() {
		if p.Name == "11-editor.md" {
			page = p.Text
		}
	}
	b, err := json.Marshal(usual())
	require.NoError(t, err)
	var settings map[string]any
	require.NoError(t, json.Unmarshal(b, &settings))
	for _, key := range keys(settings, "") {
		assert.Contains(t, page, "| `"+key+"` | `true` |")
	}
	for _, command := range commandNames() {
		assert.Contains(t, page, "| `"+command+"` |")
	}
}
