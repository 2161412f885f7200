package tidy

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// root is the top of the tree, seen from this package.
const root = "../../.."

// module is the path that imports of our own packages begin with.
const module = "fairlead/"

// files lists the files of the project, with forward slashes from the top: those
// that git tracks or would, or everything where there is no repository.
func files(t *testing.T) []string {
	t.Helper()
	cmd := exec.Command("git", "-c", "safe.directory=*", "ls-files", "-z", "--cached", "--others", "--exclude-standard")
	cmd.Dir = root
	out, err := cmd.Output()
	if err != nil {
		return walked(t)
	}
	var list []string
	for _, name := range strings.Split(strings.TrimSuffix(string(out), "\x00"), "\x00") {
		if _, err := os.Stat(filepath.Join(root, name)); err == nil {
			list = append(list, name)
		}
	}
	slices.Sort(list)
	require.NotEmpty(t, list)
	return slices.Compact(list)
}

func walked(t *testing.T) []string {
	t.Helper()
	var list []string
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && d.IsDir() && d.Name() == ".git" {
			return fs.SkipDir
		}
		if err == nil && !d.IsDir() {
			list = append(list, name)
		}
		return err
	})
	require.NoError(t, err)
	return list
}

// goFile is one Go file, parsed.
type goFile struct {
	name string
	// folder is its package's folder from the top.
	folder string
	test   bool
	lines  int
	*ast.File
}

// goFiles parses every Go file of the project.
func goFiles(t *testing.T) ([]goFile, *token.FileSet) {
	t.Helper()
	set := token.NewFileSet()
	var list []goFile
	for _, name := range files(t) {
		if !strings.HasSuffix(name, ".go") {
			continue
		}
		f, err := parser.ParseFile(set, filepath.Join(root, name), nil, parser.ParseComments)
		require.NoError(t, err, name)
		list = append(list, goFile{
			name: name, folder: path.Dir(name), test: strings.HasSuffix(name, "_test.go"),
			lines: set.File(f.FileStart).LineCount(), File: f,
		})
	}
	require.NotEmpty(t, list)
	return list, set
}

// imports lists what a file imports.
func (f goFile) imports() []string {
	var list []string
	for _, i := range f.Imports {
		list = append(list, strings.Trim(i.Path.Value, `"`))
	}
	return list
}

// read gives the text of a file.
func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, name))
	require.NoError(t, err)
	return string(text)
}
