package load

import (
	"io"
	"path/filepath"

	"fairlead/lang/diag"
	"fairlead/lang/model"
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

	shelf *shelf // the files that it uses
	key   string // its own on the shelf
}

// Text loads a text under a name, without opening a file: what it uses is reported as
// missing.
func Text(name, text string) *Loaded {
	return (&Loaded{shelf: newShelf(nil)}).with(filepath.ToSlash(name), text)
}

// With loads another text under the same name. What it uses is what was read when l was
// loaded; no file is opened.
func (l *Loaded) With(text string) *Loaded {
	if l.shelf == nil {
		return Text(l.File.Name, text)
	}
	return l.with(l.File.Name, text)
}

func (l *Loaded) with(name, text string) *Loaded {
	file := source.New(name, text)
	b := &book{key: l.key, file: file, tree: syntax.Parse(file)}
	return b.loaded(l.shelf.closed())
}

// Uses lists the files that the file uses and those that they use in turn, by their
// names, each once, in the order in which they are met. Files that could not be read
// are among them.
func (l *Loaded) Uses() []string {
	if l.shelf == nil {
		return nil
	}
	return l.shelf.under(&book{key: l.key, file: l.File, tree: l.Tree})
}

// Paths loads files, folders and, for "-", standard input, which is then called
// as. See Loader for what is read, and in which order.
func Paths(args []string, stdin io.Reader, as string) ([]*Loaded, error) {
	return Loader{Stdin: stdin, As: as}.Paths(args)
}
