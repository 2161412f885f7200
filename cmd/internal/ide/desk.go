package ide

import (
	"maps"
	"path/filepath"
	"sync"

	"fairlead/lang/load"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint"
)

// Text is one version of an open text.
type Text struct {
	Version int32
	Content string
}

// Desk is what an editor has open: the texts that stand in place of files. It
// remembers what it read of earlier versions, so that a new one costs no more than
// what changed. It is safe for several goroutines at once.
type Desk struct {
	rules []*lint.Rule

	mu    sync.Mutex
	texts map[string]Text
	// now is the snapshot of the texts; nil after a change.
	now    *Snapshot
	serial int

	memories sync.Map // of *memory, by path
	outlines outlines
}

// memory is what is remembered of one file.
type memory struct {
	mu       sync.Mutex // held while a version is read
	syntax   syntax.Memory
	tree     *syntax.Tree // of the last version
	findings *lint.Memory
	// examining is held while a version is examined.
	examining sync.Mutex
}

// NewDesk makes an empty desk, on which the rules given look at rigs.
func NewDesk(rules []*lint.Rule) *Desk {
	return &Desk{rules: rules, texts: map[string]Text{}}
}

// Set puts a text in place of a file, whose absolute path is given; the file need not
// exist.
func (d *Desk) Set(path string, text Text) {
	d.mu.Lock()
	defer d.mu.Unlock()
	texts := maps.Clone(d.texts)
	texts[path] = text
	d.texts, d.now = texts, nil
}

// Drop takes a text away, so that the file counts again.
func (d *Desk) Drop(path string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	texts := maps.Clone(d.texts)
	delete(texts, path)
	d.texts, d.now = texts, nil
	d.memories.Delete(path)
}

// Disturb says that files on the disk have changed.
func (d *Desk) Disturb() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.now = nil
}

// Snapshot gives the texts as they are now. The files beside them are read when they
// are needed.
func (d *Desk) Snapshot() *Snapshot {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.now == nil {
		d.serial++
		now := &Snapshot{Serial: d.serial, desk: d, texts: d.texts, documents: map[string]func() *Document{}}
		now.overlay = sync.OnceValue(now.overlaid)
		d.now = now
	}
	return d.now
}

// memoryOf gives what is remembered of a file.
func (d *Desk) memoryOf(path string) *memory {
	if m, known := d.memories.Load(path); known {
		return m.(*memory)
	}
	m, _ := d.memories.LoadOrStore(path, &memory{findings: lint.NewMemory(d.rules)})
	return m.(*memory)
}

// parse reads a file, or the next version of it.
func (m *memory) parse(f *source.File) *syntax.Tree {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.tree == nil || m.tree.File.Whole != f.Whole || m.tree.File.Name != f.Name {
		m.tree = m.syntax.Parse(f)
	}
	return m.tree
}

// Snapshot is all open texts in one version each. It never changes.
type Snapshot struct {
	// Serial grows from one snapshot of a desk to the next.
	Serial int

	desk  *Desk
	texts map[string]Text
	// overlay are the texts as a loader wants them.
	overlay func() map[string]string

	mu        sync.Mutex
	documents map[string]func() *Document
}

// Paths lists the open texts, in no order.
func (s *Snapshot) Paths() []string {
	paths := make([]string, 0, len(s.texts))
	for path := range s.texts {
		paths = append(paths, path)
	}
	return paths
}

// Text gives an open text; ok is false if none is open there.
func (s *Snapshot) Text(path string) (text Text, ok bool) {
	text, ok = s.texts[path]
	return text, ok
}

// Document gives a file as it is in this snapshot, open or saved; nil if it cannot be
// read. It is read once.
func (s *Snapshot) Document(path string) *Document {
	s.mu.Lock()
	read := s.documents[path]
	if read == nil {
		read = sync.OnceValue(func() *Document { return s.read(path) })
		s.documents[path] = read
	}
	s.mu.Unlock()
	return read()
}

// read reads a file with all that it depends on.
func (s *Snapshot) read(path string) *Document {
	doc := &Document{Path: path, Version: s.texts[path].Version, desk: s.desk, read: map[string]bool{}}
	loader := load.Loader{Overlay: s.overlay(), Parse: func(f *source.File) *syntax.Tree {
		doc.read[f.Name] = true
		return s.desk.memoryOf(filepath.FromSlash(f.Name)).parse(f)
	}}
	// What cannot be read beside it is not the document's fault.
	if doc.Loaded, _ = loader.File(path); doc.Loaded == nil {
		return nil
	}
	doc.memory = s.desk.memoryOf(path)
	return doc
}

// overlaid gives the open texts by their paths.
func (s *Snapshot) overlaid() map[string]string {
	texts := make(map[string]string, len(s.texts))
	for path, text := range s.texts {
		texts[path] = text.Content
	}
	return texts
}
