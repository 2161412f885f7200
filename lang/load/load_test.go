package load

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

const rig = "anchor head\nload litter\nhauler team\nreeve long: litter / head \\ team\nrope long\n"

// tree makes files in a new folder and goes there; a path with "->" is a link.
func tree(t *testing.T, paths ...string) {
	t.Helper()
	t.Chdir(t.TempDir())
	for _, p := range paths {
		if link, to, ok := strings.Cut(p, " -> "); ok {
			require.NoError(t, os.MkdirAll(filepath.Dir(link), 0o755))
			require.NoError(t, os.Symlink(to, link))
			continue
		}
		require.NoError(t, os.MkdirAll(filepath.Dir(p), 0o755))
		require.NoError(t, os.WriteFile(p, []byte(rig), 0o644))
	}
}

func names(loaded []*Loaded) []string {
	var out []string
	for _, l := range loaded {
		out = append(out, l.File.Name)
	}
	return out
}

func TestTextIsResolved(t *testing.T) {
	l := Text("yard.rig", rig)
	assert.Empty(t, l.Problems)
	require.Len(t, l.Model.Rigs, 1)
	assert.Equal(t, "yard", l.Model.Rigs[0].Name)
	assert.Same(t, l.File, l.Tree.File)
	assert.Same(t, l.File, l.Model.Source)
}

func TestPathsFindsFiles(t *testing.T) {
	cases := []struct {
		name  string
		files []string
		args  []string
		want  []string
	}{
		{"a file of any name", []string{"notes.txt"}, []string{"notes.txt"}, []string{"notes.txt"}},
		{"order of arguments", []string{"a.rig", "b.rig"}, []string{"b.rig", "a.rig"}, []string{"b.rig", "a.rig"}},
		{"a folder, sorted, deep", []string{"pit/z.rig", "pit/a.rig", "pit/m/k.rig", "pit/read.me"},
			[]string{"pit"}, []string{"pit/a.rig", "pit/m/k.rig", "pit/z.rig"}},
		{"names as given", []string{"pit/a.rig"}, []string{"./pit/"}, []string{"./pit/a.rig"}},
		{"this folder", []string{"a.rig"}, []string{"."}, []string{"a.rig"}},
		{"hidden ones", []string{"pit/.old/a.rig", "pit/.b.rig", "pit/c.rig"}, []string{"pit"}, []string{"pit/c.rig"}},
		{"a hidden one given by name", []string{".old/a.rig"}, []string{".old"}, []string{".old/a.rig"}},
		{"given twice", []string{"pit/a.rig"}, []string{"pit/a.rig", "./pit/a.rig", "pit"}, []string{"pit/a.rig"}},
		{"a link to a file", []string{"a.rig", "b.rig -> a.rig"}, []string{"b.rig", "a.rig"}, []string{"b.rig"}},
		{"links in a circle", []string{"pit/a.rig", "pit/deep/b.rig", "pit/deep/up -> ..", "pit/self -> ."},
			[]string{"pit"}, []string{"pit/a.rig", "pit/deep/b.rig"}},
		{"a link to another folder", []string{"pit/a.rig", "store/b.rig", "pit/more -> ../store"},
			[]string{"pit"}, []string{"pit/a.rig", "pit/more/b.rig"}},
		{"a folder named like a rig", []string{"x.rig/a.rig"}, []string{"x.rig"}, []string{"x.rig/a.rig"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			tree(t, c.files...)
			loaded, err := Paths(c.args, nil, "")
			require.NoError(t, err)
			assert.Equal(t, c.want, names(loaded))
		})
	}
}

func TestUnreadablePathsAreNamed(t *testing.T) {
	tree(t, "a.rig", "pit/b.rig -> nowhere.rig", "pit/plain -> nowhere")
	loaded, err := Paths([]string{"gone.rig", "a.rig", "pit"}, nil, "")
	assert.ErrorContains(t, err, "gone.rig")
	assert.ErrorContains(t, err, "pit/b.rig")
	assert.NotContains(t, err.Error(), "pit/plain")
	assert.ErrorIs(t, err, fs.ErrNotExist)
	assert.Equal(t, []string{"a.rig"}, names(loaded), "the rest is read")
}

func TestStandardInput(t *testing.T) {
	for _, c := range []struct{ as, want, rig string }{
		{"", "stdin.rig", "stdin"},
		{filepath.FromSlash("pit/yard.rig"), "pit/yard.rig", "yard"},
	} {
		loaded, err := Paths([]string{"-", "-"}, strings.NewReader(rig), c.as)
		require.NoError(t, err)
		require.Len(t, loaded, 1, "it is read once")
		assert.Equal(t, c.want, loaded[0].File.Name)
		assert.Equal(t, c.rig, loaded[0].Model.Rigs[0].Name)
		assert.Equal(t, rig, loaded[0].File.Text)
	}
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, errors.New("the pipe broke") }

func TestStandardInputThatFails(t *testing.T) {
	_, err := Paths([]string{"-"}, broken{}, "yard.rig")
	assert.ErrorContains(t, err, "yard.rig: the pipe broke")
	_, err = Paths([]string{"-"}, nil, "")
	assert.ErrorContains(t, err, "stdin.rig")
}

func TestOverlayStandsForFiles(t *testing.T) {
	tree(t, "pit/a.rig", "pit/b.rig")
	abs, err := filepath.Abs("pit/b.rig")
	require.NoError(t, err)
	loader := Loader{Overlay: map[string]string{
		"pit/a.rig": "anchor one\n", abs: "anchor two\n", "unsaved.rig": "anchor three\n",
	}}
	loaded, err := loader.Paths([]string{"pit", "unsaved.rig", "./pit/b.rig"})
	require.NoError(t, err)
	var texts []string
	for _, l := range loaded {
		texts = append(texts, l.File.Text)
	}
	assert.Equal(t, []string{"pit/a.rig", "pit/b.rig", "unsaved.rig"}, names(loaded))
	assert.Equal(t, []string{"anchor one\n", "anchor two\n", "anchor three\n"}, texts)
}

func TestParseReadsEveryFile(t *testing.T) {
	tree(t, "pit/a.rig", "policy.rig")
	memory, read := &syntax.Memory{}, []string{}
	loader := Loader{Parse: func(f *source.File) *syntax.Tree {
		read = append(read, f.Name)
		return memory.Parse(f)
	}}
	loaded, err := loader.Paths([]string{"pit/a.rig"})
	require.NoError(t, err)
	assert.Equal(t, []string{"pit/a.rig", "policy.rig"}, read)
	assert.Equal(t, Text("pit/a.rig", rig).Model.Rigs[0].Parts[0].Name, loaded[0].Model.Rigs[0].Parts[0].Name)
}

func TestFileIsOneFile(t *testing.T) {
	tree(t, "pit/a.rig", "pit/b.rig", "policy.rig")
	one, err := Loader{}.File("pit/a.rig")
	require.NoError(t, err)
	assert.Equal(t, "pit/a.rig", one.File.Name)
	assert.NotNil(t, one.Policy)
	one, err = Loader{Overlay: map[string]string{"new.rig": "anchor one\n"}}.File("new.rig")
	require.NoError(t, err)
	assert.Equal(t, "anchor one\n", one.File.Text)
	for _, name := range []string{"pit", "none.rig", "-"} {
		one, err = Loader{Stdin: strings.NewReader(rig)}.File(name)
		assert.ErrorContains(t, err, name)
		assert.Nil(t, one)
	}
}
