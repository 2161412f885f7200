package ide

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fairlead/lang/load"
	"fairlead/lang/reference"
	"fairlead/lang/source"
)

// cursor marks a place in a test text.
const cursor = "‸"

// at opens a text without its cursors, and gives their places.
func at(t *testing.T, marked string) (*Document, []int) {
	t.Helper()
	return named(t, "yard.rig", marked)
}

// named is at for a file of some name.
func named(t *testing.T, name, marked string) (*Document, []int) {
	t.Helper()
	var places []int
	pieces := strings.Split(marked, cursor)
	text := pieces[0]
	for _, piece := range pieces[1:] {
		places = append(places, len(text))
		text += piece
	}
	desk := NewDesk()
	path := filepath.Join(t.TempDir(), name)
	desk.Set(path, Text{Version: 1, Content: text})
	doc := desk.Snapshot().Document(path)
	require.NotNil(t, doc)
	return doc, places
}

// shaft is a whole rig with a cursor nowhere.
const shaft = `# Raise the litter.
rig shaft "Three to one"

anchor  head    strength 30 kN
load    litter  mass 180 kg
hauler  team    people 3
# The team's own wheel.
pulley  top     on head  efficiency 92 %  strength 36 kN  holds litter
hitch   grab    slips 7 kN
pulley  runner  on grab  efficiency 92 %
rope    long    strength 30 kN

reeve long: litter / grab / top \ runner / team

expect advantage 3:1
expect held when released
`

var block = regexp.MustCompile("(?ms)^```rig\n(.*?)^```")

// goodTexts are texts without errors: every block of the manual and every example.
func goodTexts(t *testing.T) []string {
	t.Helper()
	var texts []string
	for _, p := range reference.Pages() {
		for _, m := range block.FindAllStringSubmatch(p.Text, -1) {
			texts = append(texts, m[1])
		}
	}
	for _, pattern := range []string{"../../../examples/*.rig", "../../../examples/*/*.rig"} {
		list, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, name := range list {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			texts = append(texts, string(text))
		}
	}
	require.Greater(t, len(texts), 40)
	return texts
}

func span(start, end int) source.Span { return source.Span{Start: start, End: end} }

func loadedList(d *Document) []*load.Loaded { return []*load.Loaded{d.Loaded} }
