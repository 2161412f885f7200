package ide

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lint/rules"
)

const stages = "stock pulley block efficiency 90 %\n# The stage of our yard.\nrig three \"Three to one\"\nanchor head\nload litter mass 180 kg\nhauler team\n" +
	"pulley top block on head holds litter\nhitch grab\npulley runner block on grab\nrope line\nreeve line: litter / grab / top \\ runner / team\n"

// using opens a document beside a file that it uses.
func using(t *testing.T, marked string) (*Desk, *Document, []int) {
	t.Helper()
	folder, desk := t.TempDir(), NewDesk(rules.All())
	desk.Set(filepath.Join(folder, "stages.rig"), Text{1, stages})
	plain, places := at(t, marked)
	path := filepath.Join(folder, "yard.rig")
	desk.Set(path, Text{1, plain.File.Text})
	return desk, desk.Snapshot().Document(path), places
}

const heavy = "use \"sta‸ges.rig\"\nrig heavy\ninclude th‸ree as ma‸in with lit‸ter mass 250 kg\nexpect load on main.he‸ad under 3 kN\npulley own blo‸ck on main.grab\n"

func TestUsedFiles(t *testing.T) {
	_, d, places := using(t, heavy)
	var said, leads []string
	for _, p := range places {
		h, _ := d.Hover(p)
		first, _, _ := strings.Cut(strings.ReplaceAll(h.Text, "\n\n", " | "), "\n")
		said = append(said, first)
		for _, place := range d.Definition(p) {
			leads = append(leads, filepath.Base(place.File.Name)+" "+place.Text())
		}
	}
	assert.Equal(t, []string{
		"`stages.rig` brings in | rigs: `three` | models: pulley `block`",
		"`three`, a rig of `stages.rig` | Three to one", // it is solved in its own file
		"`main`: a copy of `three` | Three to one",
		"`main.litter` weighs 2.45 kN | `load litter mass 180 kg`: what is moved",
		"`main.head` carries 1.55 kN hauling, 2.45 kN held; if it fails: falls | `anchor head`: a fixed point",
		"`block`, a model of pulley: efficiency 90 %",
	}, said)
	assert.Equal(t, []string{"stages.rig ", "stages.rig three", "yard.rig main", "stages.rig litter", "stages.rig head", "stages.rig block"}, leads)
}

func TestCompletionOfWhatIsUsed(t *testing.T) {
	_, d, places := using(t, "use \"stages.rig\"\nrig heavy\ninclude ‸\ninclude three as main with ‸\nexpect load on ‸\npulley own ‸\ninclude three as other without ‸\n")
	assert.Contains(t, labels(d, places[0]), "three")
	assert.Contains(t, labels(d, places[1]), "litter")
	assert.NotContains(t, labels(d, places[1]), "main.litter")
	assert.Contains(t, labels(d, places[3]), "block")
	assert.Contains(t, labels(d, places[4]), "grab")
	_, d, places = using(t, "use \"stages.rig\"\nrig heavy\ninclude three as main\nexpect load on ‸ under 3\njoin ‸\n")
	assert.Contains(t, labels(d, places[0]), "main.head")
	assert.Contains(t, labels(d, places[1]), "main.team")
}

func TestUnsavedUsedFilesCount(t *testing.T) {
	desk, d, _ := using(t, "use \"stages.rig\"\nrig heavy\ninclude three as main\n")
	before := d.Lenses()
	require.Len(t, before, 1)
	assert.Contains(t, before[0].Title, "3:1")
	stagesPath := filepath.Join(filepath.Dir(d.Path), "stages.rig")
	assert.True(t, d.DependsOn(stagesPath))
	desk.Set(stagesPath, Text{2, strings.Replace(stages, "litter / grab / top \\ runner / team", "litter / top \\ team", 1)})
	assert.Contains(t, desk.Snapshot().Document(d.Path).Lenses()[0].Title, "1:1")
	desk.Drop(stagesPath)
	assert.Contains(t, rulesFound(t, desk.Snapshot().Document(d.Path)), "unusable-file")
	assert.True(t, desk.Snapshot().Document(d.Path).DependsOn(stagesPath), "it may be made")
}

func TestNamesOfUsedFilesAreNotRenamed(t *testing.T) {
	_, d, places := using(t, heavy)
	var refused []string
	for _, p := range places {
		_, _, err := d.Renamable(p)
		if err != nil {
			refused = append(refused, err.Error())
		}
	}
	assert.Equal(t, []string{
		"stages.rig is the name of a file", "three is not defined in this file", "litter is a part of a rig in another file",
		"head is a part of a rig in another file", "block is not defined in this file",
	}, refused)
}
