package seeding

import (
	"cmp"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/source"
)

// Kind is one kind of fault.
type Kind struct {
	// Name is what reports call it, such as "hitch-moved".
	Name string
	// Summary says in a few words what is wrong on the board.
	Summary string

	make func(*board) []Seed
}

// Seed is one fault drawn into one rig.
type Seed struct {
	Kind *Kind
	// Done says what was done: "grab is set on top \ runner instead of litter / grab".
	Done string
	// Parts names the parts at fault, as they are called in the seeded text.
	Parts []string
	// Edits make the fault. They do not overlap.
	Edits []diag.Edit

	file *load.Loaded
	rig  string
}

// Kinds lists every kind of fault, in the order of the report.
func Kinds() []*Kind { return slices.Clone(kinds) }

// Of gives every fault of every kind that can be drawn into a rig of a file, in the order
// of the kinds. Two seeds never give the same text.
func Of(f *load.Loaded, rig string) []Seed {
	b := newBoard(f, rig)
	if b == nil {
		return nil
	}
	var list []Seed
	seen := map[string]bool{f.File.Text: true}
	for _, k := range kinds {
		for _, s := range k.make(b) {
			s.Kind, s.file, s.rig = k, f, rig
			slices.SortStableFunc(s.Edits, func(a, b diag.Edit) int {
				return cmp.Compare(a.Place.Span.Start, b.Place.Span.Start)
			})
			if text := s.Text(); !seen[text] {
				seen[text] = true
				list = append(list, s)
			}
		}
	}
	return list
}

// Sample gives at most so many seeds of each kind, spread evenly over those there are:
// the same ones each time.
func Sample(list []Seed, most int) []Seed {
	byKind := map[*Kind][]Seed{}
	for _, s := range list {
		byKind[s.Kind] = append(byKind[s.Kind], s)
	}
	var picked []Seed
	for _, k := range kinds {
		of := byKind[k]
		n := min(most, len(of))
		for i := range n {
			picked = append(picked, of[i*len(of)/n])
		}
	}
	return picked
}

// Text gives the text with the fault in it.
func (s Seed) Text() string { return diag.Apply(s.file.File, s.Edits) }

// Load reads the text with the fault in it, under the name and the house rules of the
// file that it comes from.
func (s Seed) Load() *load.Loaded {
	f := load.Text(s.file.File.Name, s.Text())
	f.Policy = s.file.Policy
	return f
}

// Places gives where a reader of the seeded text should look: what the edits wrote, or
// where they took something out, and wherever a part at fault stands.
func (s Seed) Places(seeded *load.Loaded) []source.Span {
	var list []source.Span
	shift := 0
	for _, e := range s.Edits {
		start := e.Place.Span.Start + shift
		list = append(list, source.Span{Start: start, End: start + len(e.NewText)})
		shift += len(e.NewText) - e.Place.Span.Len()
	}
	for _, rig := range seeded.Model.Rigs {
		if rig.Name != s.rig {
			continue
		}
		for _, name := range s.Parts {
			if p := rig.Part(name); p != nil {
				list = append(list, p.Place.Span)
			}
		}
		for _, r := range rig.Ropes {
			for _, n := range r.Nodes {
				if n.Part != nil && slices.Contains(s.Parts, n.Part.Name) {
					list = append(list, n.Place.Span)
				}
			}
		}
	}
	return list
}

// At says whether a finding in the seeded text points to the fault: it is about a part at
// fault or stands where one is named, or its place, a related one or an edit of a fix
// touches where a reader should look.
func (s Seed) At(d diag.Diagnostic, places []source.Span) bool {
	if slices.ContainsFunc(s.Parts, d.Named) || slices.Contains(s.Parts, d.Place.Text()) {
		return true
	}
	touches := func(p source.Place) bool {
		return p.File != nil && slices.ContainsFunc(places, func(q source.Span) bool {
			return p.Span.Start <= q.End && q.Start <= p.Span.End
		})
	}
	if touches(d.Place) {
		return true
	}
	for _, r := range d.Related {
		if touches(r.Place) {
			return true
		}
	}
	for _, fix := range d.Fixes {
		for _, e := range fix.Edits {
			if touches(e.Place) {
				return true
			}
		}
	}
	return false
}
