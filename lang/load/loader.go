package load

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"strings"

	"fairlead/lang/markdown"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// DefaultName is what standard input is called if nobody names it.
const DefaultName = "stdin.rig"

// Loader reads files.
type Loader struct {
	// Stdin is what "-" reads.
	Stdin io.Reader
	// As is the name of standard input; empty for DefaultName.
	As string
	// Overlay has the texts that stand in place of files, by their paths, relative or
	// absolute. A path that is in it need not exist.
	Overlay map[string]string
	// Policy is the file of house rules that holds for all files; empty for the one in
	// each file's folder or the nearest above.
	Policy string
	// Parse reads the text of each file; nil for syntax.Parse. An editor's remembers what
	// it read of the version before. It may give the tree of another source.File of the
	// same name and content.
	Parse func(*source.File) *syntax.Tree
}

// text is one file's name and content.
type text struct{ name, content string }

// Paths loads what the arguments name, in their order: a file whatever its name,
// a folder with all rig files and notes in it and below, sorted, or "-". Markdown
// documents in a folder that hold no rig are passed over. Hidden files
// and folders are passed over unless given by name. Links are followed; a file
// that is reached twice is read once. Names are kept as given, with forward slashes.
//
// The error joins one for each path that could not be read, which it names; what
// could be read is given all the same.
func (l Loader) Paths(args []string) ([]*Loaded, error) { return l.read(args).load() }

// File loads one file. The error names what could not be read, of the file or of what
// it depends on; the file is nil if it could not be read itself, as a folder cannot.
func (l Loader) File(name string) (*Loaded, error) {
	r := l.reading()
	if !r.overlaid(name) {
		r.file(name)
	}
	loaded, err := r.load()
	if len(loaded) == 0 {
		return nil, err
	}
	return loaded[0], err
}

// load loads the texts that were read.
func (r *reading) load() ([]*Loaded, error) {
	books := make([]*book, len(r.texts))
	for i, t := range r.texts { // all of them first: one may use another
		books[i] = r.shelf.put(realName(t.name), filepath.ToSlash(t.name), t.content)
	}
	loaded := make([]*Loaded, len(books))
	rules := r.policies()
	for i, b := range books {
		loaded[i] = r.shelf.loaded(b)
		if path.Base(b.file.Name) == PolicyName {
			rules.read(r.texts[i].name, loaded[i])
		}
	}
	for i, one := range loaded {
		if one.Policy = rules.of(r.texts[i].name); one.Policy == one {
			one.Policy = nil
		}
	}
	return loaded, errors.Join(r.errs...)
}

// Texts is Paths without a look into the files.
func (l Loader) Texts(args []string) ([]*source.File, error) {
	r := l.read(args)
	var files []*source.File
	for _, t := range r.texts {
		file, _ := fileOf(t.name, t.content)
		files = append(files, file)
	}
	return files, errors.Join(r.errs...)
}

// Text loads a text under a name, with the files that it uses and its house rules read
// from the overlay or the disk. House rules that cannot be read are left out.
func (l Loader) Text(name, content string) *Loaded {
	r := l.reading()
	loaded := r.shelf.loaded(r.shelf.put(realName(name), filepath.ToSlash(name), content))
	rules := r.policies()
	rules.read(name, loaded)
	if loaded.Policy = rules.of(name); loaded.Policy == loaded {
		loaded.Policy = nil
	}
	return loaded
}

// reading begins a run of the loader.
func (l Loader) reading() *reading {
	r := &reading{Loader: l, unsaved: l.unsaved(), seen: map[string]bool{}, folders: map[string]bool{}}
	r.shelf = newShelf(r.unsaved.read)
	if l.Parse != nil {
		r.shelf.parse = l.Parse
	}
	return r
}

// read reads what the arguments name.
func (l Loader) read(args []string) *reading {
	r := l.reading()
	for _, arg := range args {
		if arg == "-" {
			r.standardInput()
			continue
		}
		r.path(arg)
	}
	return r
}

// reading is one run of a Loader.
type reading struct {
	Loader
	unsaved unsaved
	shelf   *shelf
	texts   []text
	errs    []error
	// seen are the files read, folders the folders walked, by their real paths.
	seen, folders map[string]bool
	stdinRead     bool
}

func (r *reading) fail(err error) { r.errs = append(r.errs, err) }

// standardInput reads standard input, once.
func (r *reading) standardInput() {
	if r.stdinRead {
		return
	}
	r.stdinRead = true
	name := r.As
	if name == "" {
		name = DefaultName
	}
	if r.Stdin == nil {
		r.fail(fmt.Errorf("%s: there is no standard input", name))
		return
	}
	content, err := io.ReadAll(r.Stdin)
	if err != nil {
		r.fail(fmt.Errorf("%s: %w", name, err))
		return
	}
	r.texts = append(r.texts, text{name, string(content)})
}

// path reads a file or a folder that was given by name.
func (r *reading) path(name string) {
	if r.overlaid(name) {
		return
	}
	info, err := os.Stat(name)
	switch {
	case err != nil:
		r.fail(err)
	case info.IsDir():
		r.folder(name)
	default:
		r.file(name)
	}
}

// overlaid takes a file's text from the overlay; false if it is not there.
func (r *reading) overlaid(name string) bool {
	content, there := r.unsaved[realName(name)]
	if there && r.first(r.seen, name) {
		r.texts = append(r.texts, text{name, content})
	}
	return there
}

// file reads a file from the disk.
func (r *reading) file(name string) {
	if !r.first(r.seen, name) {
		return
	}
	content, err := os.ReadFile(name)
	if err != nil {
		r.fail(err)
		return
	}
	r.texts = append(r.texts, text{name, string(content)})
}

// folder reads the rig files of a folder and of those below it.
func (r *reading) folder(name string) {
	if !r.first(r.folders, name) {
		return
	}
	entries, err := os.ReadDir(name) // sorted by name
	if err != nil {
		r.fail(err)
		return
	}
	for _, entry := range entries {
		if strings.HasPrefix(entry.Name(), ".") {
			continue
		}
		r.entry(below(name, entry.Name()), entry)
	}
}

// entry reads one entry of a folder, if it is a folder or a rig file.
func (r *reading) entry(path string, entry os.DirEntry) {
	isRig := strings.HasSuffix(entry.Name(), ".rig")
	isNotes := markdown.Is(entry.Name())
	mode := entry.Type()
	if mode&os.ModeSymlink != 0 {
		info, err := os.Stat(path)
		if err != nil {
			if isRig { // another link that leads nowhere is nobody's concern
				r.fail(err)
			}
			return
		}
		mode = info.Mode()
	}
	switch {
	case mode.IsDir():
		r.folder(path)
	case (isRig || isNotes) && mode.IsRegular():
		if !r.overlaid(path) {
			r.file(path)
		}
		if last := len(r.texts) - 1; isNotes && last >= 0 && r.texts[last].name == path && !markdown.HasRig(r.texts[last].content) {
			r.texts = r.texts[:last]
		}
	}
}

// below gives the path of an entry of a folder, which keeps its name as given.
func below(folder, entry string) string {
	if folder == "." {
		return entry
	}
	return strings.TrimRight(filepath.ToSlash(folder), "/") + "/" + entry
}

// first says whether a path is met for the first time in a set of real paths.
func (r *reading) first(seen map[string]bool, name string) bool {
	key := realName(name)
	if seen[key] {
		return false
	}
	seen[key] = true
	return true
}
