package load

import (
	"io"
	"path/filepath"

	"fairlead/lang/diag"
	"fairlead/lang/markdown"
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
	// Problems are the findings of the text and of the names, in file order. Their fixes
	// are edits of the notation; Fitted makes edits of the document of them.
	Problems []diag.Diagnostic
	// Notes is the document that the rigs stand in; nil for a rig file.
	Notes *markdown.Notes
	// Policy is the file of house rules that holds for this one, apart from what it says
	// itself; nil if there is none.
	Policy *Loaded
}

// Text loads a text under a name, without opening a file. Of a Markdown document it
// loads the fenced rig blocks.
func Text(name, text string) *Loaded {
	name = filepath.ToSlash(name)
	if !markdown.Is(name) {
		return read(source.New(name, text))
	}
	notes := markdown.Read(text)
	l := read(source.NewNotes(name, notes.Text, text))
	l.Notes = notes
	return l
}

// Draft loads notation under a name, whatever kind of file that names.
func Draft(name, text string) *Loaded { return read(source.New(name, text)) }

// read parses and resolves a file.
func read(file *source.File) *Loaded {
	tree := syntax.Parse(file)
	resolved, problems := resolve.File(tree)
	return &Loaded{File: file, Tree: tree, Model: resolved, Problems: problems}
}

// Paths loads files, folders and, for "-", standard input, which is then called
// as. See Loader for what is read, and in which order.
func Paths(args []string, stdin io.Reader, as string) ([]*Loaded, error) {
	return Loader{Stdin: stdin, As: as}.Paths(args)
}
