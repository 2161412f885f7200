package ide

import (
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// HintSort says what a hint shows.
type HintSort int

const (
	// TensionHint: what a strand carries, after its stroke.
	TensionHint HintSort = iota
	// AdvantageHint: the ideal advantage, after the name or title of a rig.
	AdvantageHint
)

// Hint is a figure to show in the text, which is not part of it.
type Hint struct {
	Sort   HintSort
	Offset int
	Label  string
	// More says more than the label, as plain text.
	More string
}

// Hints gives the figures of the rigs that lie in a span. A rig of which an error left
// something out has none: they would be those of a rig that nobody drew.
func (d *Document) Hints(within source.Span) []Hint {
	h := hints{doc: d, within: within, at: map[int]int{}}
	for i, r := range d.Model.Rigs {
		if r.Incomplete || !h.touches(r) {
			continue
		}
		f := d.figures(i)
		if f == nil {
			return nil
		}
		h.advantage(f)
		for _, rope := range r.Ropes {
			h.rope(f, rope)
		}
	}
	var list []Hint
	for _, hint := range h.list {
		if hint.Label != "" {
			list = append(list, hint)
		}
	}
	return list
}

// hints gathers the hints of a document.
type hints struct {
	doc    *Document
	within source.Span
	list   []Hint
	// at finds the hint at an offset.
	at map[int]int
}

// touches says whether a rig has something to show in the span.
func (h *hints) touches(r *model.Rig) bool {
	meets := func(s source.Span) bool { return s.Start <= h.within.End && h.within.Start <= s.End }
	if meets(r.Place.Span) {
		return true
	}
	for _, rope := range r.Ropes {
		if rope.Place.File == h.doc.File && meets(rope.Place.Span) {
			return true
		}
	}
	return false
}

// add notes a hint. Where several rigs share a line, it stands if it is the same in all.
func (h *hints) add(hint Hint) {
	if hint.Offset < h.within.Start || hint.Offset > h.within.End || hint.Label == "" {
		return
	}
	i, there := h.at[hint.Offset]
	switch {
	case !there:
		h.at[hint.Offset] = len(h.list)
		h.list = append(h.list, hint)
	case h.list[i].Label != hint.Label:
		h.list[i].Label = ""
	}
}

// advantage puts the advantage after the title of the rig, after its name, or, in a
// document without "rig", at the end of its first reeving line.
func (h *hints) advantage(f *figures) {
	at := -1
	for _, st := range h.doc.Tree.Statements {
		switch body := st.Body.(type) {
		case *syntax.Rig:
			if body.Name.Span == f.rig.NamePlace.Span {
				at = st.Span.End
			}
		case *syntax.Reeve:
			if at < 0 && !h.doc.headed() {
				at = st.Span.End
			}
		}
	}
	if at >= 0 {
		h.add(Hint{Sort: AdvantageHint, Offset: at, Label: f.Advantage(), More: f.Line()})
	}
}

// rope puts the tension of each strand after its stroke.
func (h *hints) rope(f *figures, rope *model.Rope) {
	if rope.Broken || rope.Place.File != h.doc.File {
		return
	}
	solved := f.rope(rope)
	for k, place := range rope.StrokePlaces {
		if place.Span.End < h.within.Start || place.Span.End > h.within.End {
			continue
		}
		if label := f.Strand(solved, k); label != "" {
			h.add(Hint{Sort: TensionHint, Offset: place.Span.End, Label: label, More: f.StrandInPhases(solved, k)})
		}
	}
}
