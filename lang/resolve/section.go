package resolve

import (
	"path"
	"strings"

	"fairlead/lang/markdown"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// maxCopies bounds how often what stands before the first rig is copied in all,
// in statements; a file over it would need memory by the square of its length.
const maxCopies = 100_000

// section is the statements of one rig.
type section struct {
	// head is the "rig" statement; nil in a file without any.
	head *syntax.Statement
	name syntax.Word
	// title is empty without one.
	title string
	// shared stand before the first rig of the file, own are the rig's.
	shared, own []*syntax.Statement
	// short says that shared was left out for its size.
	short bool

	// lines are its statements with those that it includes, size how many words they
	// have, height how deep its includes go; once it is resolved.
	lines        []*entry
	size, height int
	rig          *model.Rig
	// unsound says that errors keep the rig from being the one that is meant, faults
	// what was found in it.
	unsound bool
	faults  map[fault]bool
}

// cut divides the statements of a file among its rigs. Without "rig" there is
// one rig of the file's name, unless nothing in the file belongs to a rig.
func cut(tree *syntax.Tree) []*section {
	var sections []*section
	var before []*syntax.Statement
	for _, s := range tree.Statements {
		switch {
		case startsRig(s):
			sections = append(sections, newSection(tree.File, s))
		case !ofRig(s):
		case len(sections) == 0:
			before = append(before, s)
		default:
			last := sections[len(sections)-1]
			last.own = append(last.own, s)
		}
	}
	if len(sections) > 0 {
		for _, s := range sections {
			s.shared = before
		}
		return sections
	}
	if len(before) == 0 {
		return nil
	}
	return []*section{{name: syntax.Word{Text: fileRig(tree.File)}, own: before}}
}

// startsRig says whether a statement starts a rig, be it well written or not.
func startsRig(s *syntax.Statement) bool {
	if _, ok := s.Body.(*syntax.Rig); ok {
		return true
	}
	_, bad := s.Body.(*syntax.Bad)
	return bad && s.Keyword.Text == "rig"
}

// ofRig says whether a statement belongs to a rig, not to the file as a whole.
func ofRig(s *syntax.Statement) bool {
	switch s.Body.(type) {
	case *syntax.Use, *syntax.Stock, *syntax.Policy, *syntax.Require, *syntax.RuleSetting:
		return false
	case *syntax.Bad:
		switch s.Keyword.Text {
		case "use", "stock", "policy", "require", "rule":
			return false
		}
	}
	return true
}

// newSection begins a rig at its statement. One that cannot be read still begins
// a rig, so that its parts are not taken for those of the rig above.
func newSection(file *source.File, s *syntax.Statement) *section {
	rig, ok := s.Body.(*syntax.Rig)
	if !ok {
		name, found := wordAfterKeyword(s)
		if !found {
			name = syntax.Word{Text: fileRig(file), Span: s.Span}
		}
		return &section{head: s, name: name}
	}
	begun := &section{head: s, name: rig.Name}
	if rig.Title != nil {
		begun.title = rig.Title.Value
	}
	return begun
}

// fileRig gives the name of the rig of a file without "rig": the file's base
// name without ".rig", or without the ending of a Markdown document.
func fileRig(file *source.File) string {
	name := path.Base(file.Name)
	if markdown.Is(name) {
		return strings.TrimSuffix(name, path.Ext(name))
	}
	return strings.TrimSuffix(name, ".rig")
}

// nameRigs notes the names of the rigs and reports those given twice.
func (w *fileWork) nameRigs(sections []*section) {
	w.rigs = map[string]*section{}
	for _, s := range sections {
		w.rigNames = append(w.rigNames, s.name.Text)
		if s.bad() {
			continue
		}
		if old := w.rigs[s.name.Text]; old != nil {
			w.reportTwice(s.name, w.file.At(old.name.Span), "rig")
			continue
		}
		w.rigs[s.name.Text] = s
	}
}

// bad says whether the section begins with a "rig" that could not be read.
func (s *section) bad() bool {
	if s.head == nil {
		return false
	}
	_, bad := s.head.Body.(*syntax.Bad)
	return bad
}

// bound leaves out of the later rigs what stands before the first one, once it
// has been copied too often.
func (w *fileWork) bound(sections []*section) {
	copies := 0
	for i, s := range sections {
		copies += len(s.shared)
		if i == 0 || copies <= maxCopies {
			continue
		}
		w.report(tooLarge, s.name.Span, s.name.Text,
			"%s is one rig too many for the %d statements before the first one, which are left out from here on",
			s.name.Text, len(s.shared))
		for _, late := range sections[i:] {
			late.shared, late.short = nil, true
		}
		return
	}
}
