package ide

import (
	"slices"
	"strings"
	"sync"

	"fairlead/lang/load"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Symbol is one thing that a document gives a name.
type Symbol struct {
	Name   string
	Detail string
	// Kind is the word of its statement: "rig", "pulley", "stock", "policy".
	Kind string
	// Whole is all of it, Own its name in it.
	Whole, Own source.Span
	Children   []Symbol
}

// Symbols gives the outline of a document: its rigs with their parts, its models and
// house rules.
func (d *Document) Symbols() []Symbol { return symbolsOf(d.File, d.Tree) }

func symbolsOf(file *source.File, tree *syntax.Tree) []Symbol {
	var list []Symbol
	rig := -1 // the place of the last rig in the list
	for _, st := range tree.Statements {
		s, ok := symbolOf(file, st)
		switch {
		case ok && s.Kind == "rig":
			rig = len(list)
			list = append(list, s)
		case rig >= 0 && !wholeFile(st):
			list[rig].Whole = list[rig].Whole.To(st.Span)
			if ok {
				list[rig].Children = append(list[rig].Children, s)
			}
		case ok:
			list = append(list, s)
		}
	}
	return list
}

// wholeFile says whether a statement belongs to no rig, wherever it stands.
func wholeFile(st *syntax.Statement) bool {
	return slices.Contains([]string{"use", "stock", "policy", "require", "rule"}, st.Keyword.Text)
}

// symbolOf gives what a statement names; ok is false if it names nothing.
func symbolOf(file *source.File, st *syntax.Statement) (s Symbol, ok bool) {
	s = Symbol{Kind: st.Keyword.Text, Whole: st.Span}
	var name syntax.Word
	switch b := st.Body.(type) {
	case *syntax.Rig:
		name = b.Name
		if b.Title != nil {
			s.Detail = b.Title.Value
		}
	case *syntax.Part:
		name = b.Name
		s.Detail = b.Kind.Text
		if b.On != nil {
			s.Detail += " on " + b.On.Text
		}
	case *syntax.Reeve:
		name = b.Rope
		rest := source.Span{Start: b.Nodes[0].Span.Start, End: st.Span.End}
		s.Detail = strings.Join(strings.Fields(file.Slice(rest)), " ")
	case *syntax.Stock:
		name = b.Model
		s.Detail = "stock " + b.Kind.Text
	case *syntax.Include:
		name = b.As
		s.Detail = "a copy of " + b.Rig.Text
	case *syntax.Policy:
		name = b.Name
		if b.Title != nil {
			s.Detail = b.Title.Value
		}
	default:
		return s, false
	}
	s.Name, s.Own = name.Text, name.Span
	return s, s.Name != ""
}

// Found is a symbol of some file.
type Found struct {
	Symbol
	File *source.File
	// In is what holds it: the rig of a part; empty for what stands by itself.
	In string
}

// mostFound is how many symbols one search gives.
const mostFound = 500

// Find gives the symbols of all rig files in some folders, and of the open texts, whose
// names have the letters of a query in their order.
func (s *Snapshot) Find(query string, folders []string) []Found {
	var list []Found
	query = strings.ToLower(query)
	add := func(file *source.File, symbol Symbol, in string) {
		// The rope of a reeving line has a statement of its own.
		if len(list) < mostFound && symbol.Kind != "reeve" && hasLetters(strings.ToLower(symbol.Name), query) {
			list = append(list, Found{Symbol: symbol, File: file, In: in})
		}
	}
	for _, o := range s.outlinesOf(folders) {
		for _, symbol := range o.symbols {
			add(o.file, symbol, "")
			for _, child := range symbol.Children {
				add(o.file, child, symbol.Name)
			}
		}
	}
	return list
}

// hasLetters says whether a word has the letters of another in their order.
func hasLetters(word, letters string) bool {
	for _, r := range letters {
		i := strings.IndexRune(word, r)
		if i < 0 {
			return false
		}
		word = word[i+len(string(r)):]
	}
	return true
}

// outline is what a file names.
type outline struct {
	file    *source.File
	symbols []Symbol
}

// outlines remembers the outlines of files, by their paths.
type outlines struct {
	mu    sync.Mutex
	known map[string]outline
}

// outlinesOf gives the outlines of the rig files in folders and of the open texts.
func (s *Snapshot) outlinesOf(folders []string) []outline {
	mem := &s.desk.outlines
	mem.mu.Lock()
	defer mem.mu.Unlock()
	now, list := map[string]outline{}, []outline{}
	paths := slices.Concat(folders, slices.Sorted(slices.Values(s.Paths())))
	texts, _ := load.Loader{Overlay: s.overlay()}.Texts(paths)
	for _, f := range texts {
		o, known := mem.known[f.Name]
		if !known || o.file.Text != f.Text {
			o = outline{f, symbolsOf(f, syntax.Parse(f))}
		}
		now[f.Name] = o
		list = append(list, o)
	}
	mem.known = now
	return list
}
