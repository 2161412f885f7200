package ide

import (
	"github.com/aymanbagabas/go-udiff"

	"fairlead/fmt"
	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Format gives the edits that bring the document into the standard style; none if it
// is, or if its text has errors, in which case ok is false.
func (d *Document) Format() (edits []diag.Edit, ok bool) {
	text, problems := rigfmt.Format(d.File)
	if len(problems) > 0 {
		return nil, false
	}
	return d.changes(source.Span{Start: 0, End: len(d.File.Text)}, text), true
}

// FormatRange is Format for the statements that a span touches, and what stands between
// them: those lines come out as they do when the whole document is formatted.
func (d *Document) FormatRange(within source.Span) (edits []diag.Edit, ok bool) {
	text, problems := rigfmt.Format(d.File)
	if len(problems) > 0 {
		return nil, false
	}
	first, last := -1, -1
	for i := range d.Tree.Statements {
		if touches(within, linesOf(d.Tree, i)) {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 {
		return nil, true
	}
	after := syntax.Parse(source.New(d.File.Name, text))
	old := linesOf(d.Tree, first).To(linesOf(d.Tree, last))
	now := linesOf(after, first).To(linesOf(after, last))
	return d.changes(old, after.File.Slice(now)), true
}

// touches says whether a span has something of lines in it. One that ends where they
// begin has nothing of them.
func touches(within, lines source.Span) bool {
	if within.Len() == 0 {
		return lines.Start <= within.Start && within.Start <= lines.End
	}
	return lines.Start < within.End && within.Start <= lines.End
}

// changes gives the smallest edits that make a stretch of the document another text.
func (d *Document) changes(old source.Span, now string) []diag.Edit {
	var edits []diag.Edit
	for _, e := range udiff.Strings(d.File.Slice(old), now) {
		span := source.Span{Start: old.Start + e.Start, End: old.Start + e.End}
		edits = append(edits, diag.Edit{Place: d.File.At(span), NewText: e.New})
	}
	return edits
}
