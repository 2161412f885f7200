package seeding

import (
	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Strip takes every claim about figures out of a file: with the author's own answer in it, no
// fault would go unnoticed. What is accepted stays, and so do the house rules.
func Strip(f *load.Loaded) *load.Loaded {
	var edits []diag.Edit
	for _, s := range f.Tree.Statements {
		if _, ok := s.Body.(*syntax.Expect); ok {
			edits = append(edits, wholeLines(f.File, s.Span))
		}
	}
	stripped := load.Text(f.File.Name, diag.Apply(f.File, edits))
	stripped.Policy = f.Policy
	return stripped
}

// wholeLines gives the edit that takes the lines of a span out of a file.
func wholeLines(f *source.File, s source.Span) diag.Edit {
	start, end := f.LineSpan(f.Line(s.Start)).Start, f.LineSpan(f.Line(s.End)).End
	for end < len(f.Text) && (f.Text[end] == '\r' || f.Text[end] == '\n') {
		end++
		if f.Text[end-1] == '\n' {
			break
		}
	}
	return diag.Edit{Place: f.At(source.Span{Start: start, End: end})}
}
