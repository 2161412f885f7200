package ide

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fairlead/lang/load"
	"fairlead/lang/reference"
	"fairlead/lang/source"
	"fairlead/lint/rules"
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
	desk := NewDesk(rules.All())
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

var block = regexp.MustCompile("(?ms)^```rig(?: file=(\\S+))?\n(.*?)^```")

// goodTexts are documents without errors: every block of the manual, beside the files
// that blocks use, and every example.
func goodTexts(t *testing.T) []*Document {
	t.Helper()
	folder, desk := t.TempDir(), NewDesk(rules.All())
	var paths []string
	for _, p := range reference.Pages() {
		for _, m := range block.FindAllStringSubmatch(p.Text, -1) {
			name := m[1]
			if name == "" {
				name = fmt.Sprintf("block-%d.rig", len(paths))
			}
			paths = append(paths, filepath.Join(folder, name))
			desk.Set(paths[len(paths)-1], Text{1, m[2]})
		}
	}
	for _, pattern := range []string{"../../../examples/*.rig", "../../../examples/*/*.rig"} {
		list, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, name := range list {
			path, err := filepath.Abs(name)
			require.NoError(t, err)
			paths = append(paths, path)
		}
	}
	require.Greater(t, len(paths), 40)
	var docs []*Document
	for _, path := range paths {
		doc := desk.Snapshot().Document(path)
		require.NotNil(t, doc, path)
		docs = append(docs, doc)
	}
	return docs
}

// changed gives a document with another text, beside the same other ones.
func changed(t *testing.T, d *Document, text string) *Document {
	t.Helper()
	desk := NewDesk(rules.All())
	for path, other := range d.desk.texts {
		desk.Set(path, other)
	}
	desk.Set(d.Path, Text{d.Version + 1, text})
	doc := desk.Snapshot().Document(d.Path)
	require.NotNil(t, doc)
	return doc
}

func span(start, end int) source.Span { return source.Span{Start: start, End: end} }

func loadedList(d *Document) []*load.Loaded { return []*load.Loaded{d.Loaded} }
