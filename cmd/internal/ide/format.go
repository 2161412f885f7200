package ide

import (
	"github.com/aymanbagabas/go-udiff"

	"fairlead/fmt"
	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/source"
)

// Format gives the edits that bring the document into the standard style; none if it
// is, or if its text has errors, in which case ok is false.
func (d *Document) Format() (edits []diag.Edit, ok bool) {
	text, ok := d.formatted()
	if !ok {
		return nil, false
	}
	return d.changes(source.Span{Start: 0, End: len(d.File.Whole)}, text), true
}

// formatted gives the whole document in the standard style.
func (d *Document) formatted() (text string, ok bool) {
	var problems []diag.Diagnostic
	if d.Notes != nil {
		text, problems = rigfmt.FormatNotes(d.File, d.Notes)
	} else {
		text, problems = rigfmt.Format(d.File)
	}
	return text, len(problems) == 0
}

// FormatRange is Format for the statements that a span touches, and what stands between
// them: those lines come out as they do when the whole document is formatted.
func (d *Document) FormatRange(within source.Span) (edits []diag.Edit, ok bool) {
	text, ok := d.formatted()
	if !ok {
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
	after := load.Text(d.File.Name, text).Tree
	old := linesOf(d.Tree, first).To(linesOf(d.Tree, last))
	now := linesOf(after, first).To(linesOf(after, last))
	return d.changes(old, after.File.Whole[now.Start:now.End]), true
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
	for _, e := range udiff.Strings(d.File.Whole[old.Start:old.End], now) {
		span := source.Span{Start: old.Start + e.Start, End: old.Start + e.End}
		edits = append(edits, diag.Edit{Place: d.File.At(span), NewText: e.New})
	}
	return edits
}
