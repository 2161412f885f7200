package load

import (
	"io"

	"fairlead/lang/diag"
	"fairlead/lang/markdown"
	"fairlead/lang/model"
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

	shelf *shelf // the files that it uses
	key   string // its own on the shelf
}

// Text loads a text under a name, without opening a file: what it uses is reported as
// missing. Of a Markdown document it loads the fenced rig blocks.
func Text(name, text string) *Loaded {
	s := newShelf(nil)
	return s.loaded(s.bookOf("", name, text))
}

// With loads another text of the same file, under the same house rules. What it uses is
// what was read when l was loaded; no file is opened.
func (l *Loaded) With(text string) *Loaded {
	file, notes := fileOf(l.File.Name, text)
	return l.again(file, notes)
}

// Draft is With for a text that is notation, whatever kind of file the name is of.
func (l *Loaded) Draft(text string) *Loaded {
	return l.again(source.New(l.File.Name, text), nil)
}

func (l *Loaded) again(file *source.File, notes *markdown.Notes) *Loaded {
	s := l.shelf
	if s == nil {
		s = newShelf(nil)
	}
	s = s.closed()
	b := s.newBook(l.key, file)
	b.notes = notes
	now := s.loaded(b)
	now.Policy = l.Policy
	return now
}

// Used is a file that another one uses.
type Used struct {
	File *source.File
	// Err says why it could not be read; its text is empty then.
	Err error
}

// Uses lists the files that the file uses and those that they use in turn, each once, in
// the order in which they are met.
func (l *Loaded) Uses() []Used {
	if l.shelf == nil {
		return nil
	}
	return l.shelf.closed().under(&book{key: l.key, file: l.File, tree: l.Tree})
}

// Paths loads files, folders and, for "-", standard input, which is then called
// as. See Loader for what is read, and in which order.
func Paths(args []string, stdin io.Reader, as string) ([]*Loaded, error) {
	return Loader{Stdin: stdin, As: as}.Paths(args)
}
