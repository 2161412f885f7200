package tidy

import (
	"go/ast"
	"go/token"
	"path"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The longest that a Go file and a function may be, in lines.
const (
	longestFile     = 600
	longestFunction = 60
)

func TestFilesAndFunctionsAreShort(t *testing.T) {
	list, set := goFiles(t)
	for _, f := range list {
		assert.LessOrEqual(t, f.lines, longestFile, f.name)
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok {
				assert.LessOrEqual(t, length(set, fn), longestFunction, "%s: %s", f.name, fn.Name.Name)
			}
		}
	}
}

// length gives the lines of a function. Tables and texts are data, not steps to
// follow: each counts as one line.
func length(set *token.FileSet, fn *ast.FuncDecl) int {
	lines := func(n ast.Node) int { return set.Position(n.End()).Line - set.Position(n.Pos()).Line }
	sum := lines(fn) + 1
	ast.Inspect(fn, func(n ast.Node) bool {
		switch n.(type) {
		case *ast.CompositeLit, *ast.BasicLit:
			sum -= lines(n)
			return false
		}
		return true
	})
	return sum
}

// Every package says in its doc.go what it is given, what it gives and what it
// must not know.
func TestEveryPackageHasItsDoc(t *testing.T) {
	list, _ := goFiles(t)
	documented := map[string]bool{}
	for _, f := range list {
		if path.Base(f.name) == "doc.go" {
			assert.Regexp(t, `^Package `+f.Name.Name+` `, f.Doc.Text(), f.name)
			documented[f.folder] = true
		}
	}
	for _, f := range list {
		if f.Name.Name != "main" {
			assert.True(t, documented[f.folder], "%s has no doc.go", f.folder)
		}
	}
}

// Names that say nothing about the field hide what is in a package.
func TestPackagesAreNamedFromTheField(t *testing.T) {
	list, _ := goFiles(t)
	for _, f := range list {
		assert.NotRegexp(t, `^(util|utils|common|helper|helpers|types|misc|shared|base)$`, f.Name.Name, f.name)
	}
}
