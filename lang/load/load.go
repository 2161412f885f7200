package load

import (
	"io"
	"path/filepath"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Loaded is one file, read, parsed and resolved.
type Loaded struct {
	File  *source.File
	Tree  *syntax.Tree
	Model *model.File
	// Problems are the findings of the text and of the names, in file order.
	Problems []diag.Diagnostic
	// Policy is the file of house rules that holds for this one, apart from what it says
	// itself; nil if there is none.
	Policy *Loaded
}

// Text loads a text under a name, without opening a file.
func Text(name, text string) *Loaded { return Loader{}.Text(name, text) }

// Text loads a text under a name, without opening a file.
func (l Loader) Text(name, text string) *Loaded {
	parse := l.Parse
	if parse == nil {
		parse = syntax.Parse
	}
	tree := parse(source.New(filepath.ToSlash(name), text))
	resolved, problems := resolve.File(tree)
	return &Loaded{File: tree.File, Tree: tree, Model: resolved, Problems: problems}
}

// Paths loads files, folders and, for "-", standard input, which is then called
// as. See Loader for what is read, and in which order.
func Paths(args []string, stdin io.Reader, as string) ([]*Loaded, error) {
	return Loader{Stdin: stdin, As: as}.Paths(args)
}
