package load

import (
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
)

// files writes files in a new folder and goes there.
func files(t *testing.T, texts map[string]string) {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range texts {
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	}
}

// one loads one file.
func one(t *testing.T, name string) *Loaded {
	t.Helper()
	loaded, err := Paths([]string{name}, nil, "")
	require.NoError(t, err)
	require.Len(t, loaded, 1)
	return loaded[0]
}

// messages gives what is found, each with its place.
func messages(found []diag.Diagnostic) []string {
	var list []string
	for _, d := range found {
		list = append(list, d.Place.File.Name+": "+d.Message)
	}
	return list
}

// useNames gives the names of the files that a file uses.
func useNames(l *Loaded) []string {
	var list []string
	for _, u := range l.Uses() {
		list = append(list, u.File.Name)
	}
	return list
}

const including = "rig both\ninclude stage as low\ninclude stage as high\njoin low.team to high.litter\n"

func TestUsedFiles(t *testing.T) {
	files(t, map[string]string{
		"rigs/yard.rig":         "use \"../shelf/stages.rig\"\n" + including,
		"rigs/same.rig":         "use \"near.rig\"\n" + including,
		"rigs/near.rig":         "rig stage\n" + rig,
		"shelf/stages.rig":      "use \"deep/models.rig\"\nrig stage\n" + strings.Replace(rig, "anchor head", "anchor head bolt", 1),
		"shelf/deep/models.rig": "stock anchor bolt strength 20 kN  # a trial\n",
	})
	for _, name := range []string{"rigs/yard.rig", "rigs/same.rig", "./rigs/yard.rig"} {
		l := one(t, name)
		assert.Empty(t, messages(l.Problems))
		assert.Len(t, l.Model.Rigs[0].Parts, 7)
	}
	l := one(t, "rigs/yard.rig")
	assert.Equal(t, []string{"shelf/stages.rig", "shelf/deep/models.rig"}, useNames(l))
	assert.Equal(t, "20000", l.Model.Rigs[0].Part("low.head").Values.Strength.Low.RatString())
	assert.Equal(t, "shelf/stages.rig", l.Model.Rigs[0].Part("low.head").Place.File.Name)
	assert.Equal(t, []string{"./shelf/stages.rig", "./shelf/deep/models.rig"}, useNames(one(t, "./rigs/yard.rig")))
	t.Chdir("rigs")
	assert.Equal(t, []string{"../shelf/stages.rig", "../shelf/deep/models.rig"}, useNames(one(t, "yard.rig")))
}

func TestUsedFilesThatCannotBeHad(t *testing.T) {
	files(t, map[string]string{
		"yard.rig":    "use \"gone.rig\"\nuse \"shelf\"\nuse \"\"\nuse \"/etc/stock.rig\"\nuse \"shelf\\\\a.rig\"\nuse \"yard.rig\"\nuse \"./shelf/../yard.rig\"\n",
		"shelf/a.rig": "",
	})
	assert.Equal(t, []string{
		"yard.rig: gone.rig cannot be read: there is no such file",
		"yard.rig: shelf cannot be read: it is a folder",
		"yard.rig: use names no file",
		"yard.rig: /etc/stock.rig is no path from this file's own folder, such as \"../stock.rig\"",
		"yard.rig: shelf\\a.rig is no path here: folders are parted by /",
		"yard.rig: yard.rig is this file itself",
		"yard.rig: ./shelf/../yard.rig is this file itself",
	}, messages(one(t, "yard.rig").Problems))
}

func TestSpecialFilesAreNotRead(t *testing.T) {
	files(t, map[string]string{"yard.rig": "use \"endless.rig\"\n"})
	if err := os.Symlink("/dev/zero", "endless.rig"); err != nil {
		t.Skip(err)
	}
	assert.Equal(t, []string{"yard.rig: endless.rig cannot be read: it is no ordinary file"}, messages(one(t, "yard.rig").Problems))
}

// A circle is reported in each of its files, whichever is asked for first; files that
// lead into it have it as an error of the file that they use.
func TestCirclesOfFiles(t *testing.T) {
	files(t, map[string]string{
		"a.rig":   "use \"b.rig\"\n",
		"b.rig":   "use \"c.rig\"\n",
		"c.rig":   "use \"a.rig\"\nrig stage\n" + rig,
		"x.rig":   "use \"y.rig\"\n",
		"y.rig":   "use \"x.rig\"\n",
		"out.rig": "use \"c.rig\"\n" + including,
	})
	want := map[string]string{
		"a.rig":   "a.rig: b.rig uses this file in turn by way of c.rig, so that nothing is brought in",
		"b.rig":   "b.rig: c.rig uses this file in turn by way of a.rig, so that nothing is brought in",
		"c.rig":   "c.rig: a.rig uses this file in turn by way of b.rig, so that nothing is brought in",
		"x.rig":   "x.rig: y.rig uses this file in turn, so that nothing is brought in",
		"y.rig":   "y.rig: x.rig uses this file in turn, so that nothing is brought in",
		"out.rig": "out.rig: c.rig has an error on line 1",
	}
	for name, message := range want {
		l := one(t, name)
		assert.Equal(t, []string{message}, messages(l.Problems))
		assert.Equal(t, []string{message}, messages(l.With(l.File.Text).Problems))
	}
	for _, order := range [][]string{{"."}, {"y.rig", "out.rig", "c.rig", "x.rig", "b.rig", "a.rig"}} {
		loaded, err := Paths(order, nil, "")
		require.NoError(t, err)
		for _, l := range loaded {
			assert.Equal(t, []string{want[l.File.Name]}, messages(l.Problems), order)
		}
	}
}

func TestFileUsedByTwoNames(t *testing.T) {
	files(t, map[string]string{
		"yard.rig":  "use \"a.rig\"\nuse \"pit/../a.rig\"\nuse \"link.rig\"\n" + including,
		"a.rig":     "rig stage\n" + rig,
		"pit/b.rig": "",
	})
	require.NoError(t, os.Symlink("a.rig", "link.rig"))
	assert.Equal(t, []string{
		"yard.rig: pit/../a.rig is used already; once is enough",
		"yard.rig: link.rig is used already; once is enough",
	}, messages(one(t, "yard.rig").Problems))
}

// What an editor has not saved yet stands for the file, in other files' uses too.
func TestOverlayOfUsedFiles(t *testing.T) {
	files(t, map[string]string{"pit/yard.rig": "use \"../a.rig\"\n" + including, "a.rig": "rig other\n" + rig})
	abs, err := filepath.Abs("a.rig")
	require.NoError(t, err)
	for _, key := range []string{"a.rig", "./a.rig", "pit/../a.rig", abs} {
		loader := Loader{Overlay: map[string]string{key: "rig stage\n" + rig}}
		loaded, err := loader.Paths([]string{"pit/yard.rig"})
		require.NoError(t, err)
		assert.Empty(t, messages(loaded[0].Problems), key)
		assert.Empty(t, messages(loader.Text("pit/new.rig", "use \"../a.rig\"\n"+including).Problems), key)
	}
	unsaved := Loader{Overlay: map[string]string{"new/b.rig": "rig stage\n" + rig}}
	l := unsaved.Text("new/yard.rig", "use \"b.rig\"\n"+including)
	assert.Empty(t, messages(l.Problems), "a file that is nowhere on the disk")
}

// A file that is both given and used is read once.
func TestGivenAndUsed(t *testing.T) {
	files(t, map[string]string{"yard.rig": "use \"a.rig\"\n" + including, "a.rig": "rig stage\n" + rig})
	loaded, err := Paths([]string{"yard.rig", "a.rig"}, nil, "")
	require.NoError(t, err)
	assert.Same(t, loaded[1].Model, loaded[0].Model.Uses[0].File)
	loaded, err = Loader{Stdin: strings.NewReader("rig stage\n" + rig), As: "b.rig"}.Paths([]string{"-", "yard.rig"})
	require.NoError(t, err)
	assert.Empty(t, messages(loaded[1].Problems))
}

// Another text of a file has the same uses, without the disk.
func TestWithAnotherText(t *testing.T) {
	files(t, map[string]string{"pit/yard.rig": "use \"../a.rig\"\n" + including, "a.rig": "rig stage\n" + rig, "b.rig": "rig stage\n" + rig})
	l := one(t, "pit/yard.rig")
	require.NoError(t, os.Remove("a.rig"))
	var all sync.WaitGroup
	for range 4 {
		all.Add(1)
		go func() {
			defer all.Done()
			again := l.With(l.File.Text + "knot k on low.head\n")
			assert.Len(t, messages(again.Problems), 1)
			assert.Len(t, again.Model.Rigs[0].Parts, 8)
			assert.Len(t, again.With(l.File.Text).Model.Rigs[0].Parts, 7)
			assert.Equal(t, []string{"a.rig"}, useNames(again))
		}()
	}
	all.Wait()
	assert.Equal(t, []string{"pit/yard.rig: ../b.rig cannot be read: no other file can be read here"},
		messages(l.With("use \"../b.rig\"\n").Problems), "it was not read")
	assert.Equal(t, []string{"pit/yard.rig: yard.rig is this file itself"}, messages(l.With("use \"yard.rig\"\n").Problems))
}

func TestTextWithoutFiles(t *testing.T) {
	l := Text("yard.rig", "use \"a.rig\"\n")
	assert.Equal(t, []string{"yard.rig: a.rig cannot be read: no other file can be read here"}, messages(l.Problems))
	assert.Empty(t, l.Uses())
	assert.Empty(t, (&Loaded{File: l.File, Tree: l.Tree}).Uses())
	assert.Empty(t, (&Loaded{File: l.File, Tree: l.Tree}).With(rig).Problems)
}

// Files that use one another are looked through once each.
func TestManyUses(t *testing.T) {
	texts := map[string]string{}
	name := func(i int) string { return "f" + strings.Repeat("x", i) + ".rig" }
	const n = 60
	for i := range n {
		var b strings.Builder
		for k := i + 1; k < n; k++ {
			b.WriteString("use \"" + name(k) + "\"\n")
		}
		texts[name(i)] = b.String() + "rig r" + strings.Repeat("x", i) + "\n" + rig
	}
	files(t, texts)
	l := one(t, name(0))
	assert.Empty(t, messages(l.Problems))
	assert.Len(t, l.Uses(), n-1)
}

func TestUsesThatCannotBeRead(t *testing.T) {
	files(t, map[string]string{"yard.rig": "use \"gone.rig\"\nuse \"a.rig\"\n", "a.rig": rig})
	uses := one(t, "yard.rig").Uses()
	require.Len(t, uses, 2)
	assert.Error(t, uses[0].Err)
	assert.Equal(t, "gone.rig", uses[0].File.Name)
	assert.NoError(t, uses[1].Err)
	assert.Equal(t, rig, uses[1].File.Whole)
}

// Rigs in notes use files, and files use the rigs of notes.
func TestNotesAndUses(t *testing.T) {
	files(t, map[string]string{
		"notes.md": "# A day\n\n```rig\nuse \"a.rig\"\n" + including + "```\n",
		"a.rig":    "rig stage\n" + rig,
		"b.rig":    "use \"more.md\"\n" + including,
		"more.md":  "> ```rig\n> rig stage\n> " + strings.ReplaceAll(strings.TrimSpace(rig), "\n", "\n> ") + "\n> ```\n",
	})
	for _, name := range []string{"notes.md", "b.rig"} {
		l := one(t, name)
		assert.Empty(t, messages(l.Problems), name)
		assert.Empty(t, messages(l.With(l.File.Whole).Problems), name)
		assert.Empty(t, messages(l.Draft(l.File.Text).Problems), name)
		assert.Len(t, l.With(l.File.Whole).Model.Rigs, 1, name)
	}
}

// House rules are files like others: they may use some, and stay with another text.
func TestPolicyOfAFileWithUses(t *testing.T) {
	files(t, map[string]string{
		"policy.rig": "policy house\nrequire factor 10\nuse \"a.rig\"\n",
		"yard.rig":   "use \"a.rig\"\n" + including,
		"a.rig":      "rig stage\n" + rig,
	})
	l := one(t, "yard.rig")
	require.NotNil(t, l.Policy)
	assert.Empty(t, messages(l.Policy.Problems))
	assert.Same(t, l.Policy, l.With(l.File.Whole).Policy)
	text := Loader{}.Text("yard.rig", l.File.Whole)
	require.NotNil(t, text.Policy)
	assert.Empty(t, messages(text.Problems))
	assert.Nil(t, Loader{}.Text("policy.rig", "policy house\n").Policy)
}
