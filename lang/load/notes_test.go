package load_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/load"
)

const notes = "# Shaft day\n\nThe parts:\n\n```rig\nanchor head\nload litter\nhauler team\npulley top on head holds litter\n```\n\n" +
	"and how the rope runs:\n\n> ```rig\n> rope long\n> reeve long: litter / top \\ teem\n> ```\n"

func TestNotesAreOneSource(t *testing.T) {
	l := load.Text("shaft-day.md", notes)
	require.NotNil(t, l.Notes)
	require.Len(t, l.Model.Rigs, 1)
	assert.Equal(t, "shaft-day", l.Model.Rigs[0].Name)
	assert.Equal(t, notes, l.File.Whole)
	require.NotEmpty(t, l.Problems)
	bad := l.Problems[0]
	assert.Equal(t, "unknown-part", bad.Rule)
	assert.Equal(t, "teem", bad.Place.Text())
	line, character := l.File.UTF16(bad.Place.Span.Start)
	assert.Equal(t, []int{15, 29}, []int{line, character}, "as the document counts")
}

func TestNotesInFolders(t *testing.T) {
	tree(t, map[string]string{"a.rig": "anchor head\n", "plain.md": "# no rig\n", "lesson.md": notes, "b.txt": "x\n"})
	loaded, err := load.Loader{}.Paths([]string{"."})
	require.NoError(t, err)
	var names []string
	for _, l := range loaded {
		names = append(names, l.File.Name)
	}
	assert.Equal(t, []string{"a.rig", "lesson.md"}, names)
	loaded, err = load.Loader{}.Paths([]string{"plain.md"})
	require.NoError(t, err)
	assert.Len(t, loaded, 1, "one that is named is read all the same")
	assert.Empty(t, loaded[0].Model.Rigs)
}
