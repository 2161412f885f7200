package load

import (
	"path"
	"path/filepath"
	"strings"

	"fairlead/lang/markdown"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// shelf has the files that others use, each read and resolved once.
type shelf struct {
	// read gives the text of a file, with a key that is the same for all its names. Nil
	// opens nothing: what is not on the shelf then cannot be had.
	read func(name string) (key, text string, err error)
	// parse reads the text of a file.
	parse func(*source.File) *syntax.Tree
	// books finds the files by their keys, named by the names that were asked for.
	books map[string]*book
	named map[string]*book
}

// book is one file on the shelf.
type book struct {
	key  string
	file *source.File
	tree *syntax.Tree
	// notes is the document that it stands in; nil for a rig file.
	notes *markdown.Notes
	// err says why it could not be read.
	err error
	// resolved is what it means, once asked for.
	resolved *resolve.Resolved
}

// newBook parses a file.
func (s *shelf) newBook(key string, file *source.File) *book {
	tree := s.parse(file)
	return &book{key: key, file: tree.File, tree: tree}
}

// bookOf parses a text: of a Markdown document, its rig blocks.
func (s *shelf) bookOf(key, name, text string) *book {
	file, notes := fileOf(name, text)
	b := s.newBook(key, file)
	b.notes = notes
	return b
}

// fileOf makes the file of a text, and its notes if it is a Markdown document.
func fileOf(name, text string) (*source.File, *markdown.Notes) {
	name = filepath.ToSlash(name)
	if !markdown.Is(name) {
		return source.New(name, text), nil
	}
	notes := markdown.Read(text)
	return source.NewNotes(name, notes.Text, text), notes
}

func newShelf(read func(name string) (key, text string, err error)) *shelf {
	return &shelf{read: read, parse: syntax.Parse, books: map[string]*book{}, named: map[string]*book{}}
}

// closed gives the same shelf, on which nothing changes: several may read it at a time.
func (s *shelf) closed() *shelf { return &shelf{parse: syntax.Parse, books: s.books, named: s.named} }

// put adds a text that was read already, under its key.
func (s *shelf) put(key, name, text string) *book {
	b := s.bookOf(key, name, text)
	s.books[key], s.named[name] = b, b
	return b
}

// get gives the file of a name, read if that is new; nil if it cannot be had here.
func (s *shelf) get(name string) *book {
	if b := s.named[name]; b != nil || s.read == nil {
		return b
	}
	key, text, err := s.read(name)
	b := s.books[key]
	switch {
	case err != nil:
		b = &book{key: key, file: source.New(name, ""), tree: &syntax.Tree{}, err: err}
	case b == nil:
		b = s.put(key, name, text)
	}
	s.named[name] = b
	return b
}

// uses gives the files that a file uses, those that cannot be had left out.
func (s *shelf) uses(b *book) []*book {
	var list []*book
	for _, st := range b.tree.Statements {
		if use, ok := st.Body.(*syntax.Use); ok {
			if of := s.get(beside(b.file.Name, use.Path.Value)); of != nil {
				list = append(list, of)
			}
		}
	}
	return list
}

// beside gives the name of a file that another one names by a path from its own folder.
func beside(user, name string) string {
	joined := path.Join(path.Dir(user), name)
	if strings.HasPrefix(user, "./") && !strings.HasPrefix(joined, "../") {
		return "./" + joined
	}
	return joined
}

// resolve resolves a file, and first those that it uses. On a closed shelf nothing is
// noted, since others may be reading it.
func (s *shelf) resolve(b *book) *resolve.Resolved {
	if b.resolved != nil {
		return b.resolved
	}
	r := resolve.Using(b.tree, func(use *syntax.Use) (*resolve.Resolved, error) { return s.open(b, use) })
	if s.read != nil {
		b.resolved = r
	}
	return r
}

// open gives the file that another one uses. Whether that leads in a circle depends on
// the texts alone, not on which of the files was asked for first.
func (s *shelf) open(user *book, use *syntax.Use) (*resolve.Resolved, error) {
	of := s.get(beside(user.file.Name, use.Path.Value))
	switch {
	case of == nil:
		return nil, errNotRead
	case of.err != nil:
		return nil, of.err
	}
	if way, circle := s.way(of, user.key); circle {
		return nil, resolve.Circle{Through: way}
	}
	return s.resolve(of), nil
}

// way gives the files by which one file leads to another, the first one among them;
// ok is false if it does not. The shortest way is given.
func (s *shelf) way(from *book, to string) (through []string, ok bool) {
	if from.key == to {
		return nil, true
	}
	before := map[*book]*book{from: nil}
	for queue := []*book{from}; len(queue) > 0; queue = queue[1:] {
		b := queue[0]
		for _, next := range s.uses(b) {
			if next.key == to {
				for ; b != nil; b = before[b] {
					through = append([]string{b.file.Name}, through...)
				}
				return through, true
			}
			if _, met := before[next]; !met {
				before[next] = b
				queue = append(queue, next)
			}
		}
	}
	return nil, false
}

// under lists the files that a file uses, and those that they use.
func (s *shelf) under(b *book) []Used {
	met := map[*book]bool{b: true}
	var list []Used
	for queue := []*book{b}; len(queue) > 0; queue = queue[1:] {
		for _, next := range s.uses(queue[0]) {
			if !met[next] && next.key != b.key {
				met[next] = true
				list = append(list, Used{next.file, next.err})
				queue = append(queue, next)
			}
		}
	}
	return list
}

// loaded gives a file, which need not be on the shelf, as the rest of the program has it.
func (s *shelf) loaded(b *book) *Loaded {
	r := s.resolve(b)
	return &Loaded{File: b.file, Tree: b.tree, Model: r.Model, Problems: r.Problems, Notes: b.notes, shelf: s, key: b.key}
}
