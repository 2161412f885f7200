package syntax

import (
	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// stroke takes a stroke and notes one without white space around it.
func (rv *reeving) stroke(t lexer.Token) {
	span := spanOf(t)
	rv.reeve.Strokes = append(rv.reeve.Strokes, Stroke{Kind: StrokeKind(t.Value[0]), Span: span})
	var edits []diag.Edit
	for _, at := range []int{span.Start, span.End} {
		if !rv.blankBeside(at, at == span.Start) {
			edits = append(edits, diag.Edit{Place: rv.file.At(source.Span{Start: at, End: at}), NewText: " "})
		}
	}
	if len(edits) > 0 {
		rv.glued = append(rv.glued, diag.Diagnostic{
			Rule: RuleGluedStroke, Severity: diag.Advice, Place: rv.file.At(span),
			Message: "the stroke " + t.Value + " reads better with a space on both sides",
			Fixes:   []diag.Fix{{Title: "put spaces around the stroke", Edits: edits}},
		})
	}
}

// blankBeside says whether white space, or an end of the text, stands before or
// after an offset.
func (r *reporter) blankBeside(offset int, before bool) bool {
	if before {
		offset--
	}
	if offset < 0 || offset >= len(r.file.Text) {
		return true
	}
	switch r.file.Text[offset] {
	case ' ', '\t', '\r', '\n':
		return true
	}
	return before && offset == len(byteOrderMark)-1 && r.file.Text[:offset+1] == byteOrderMark
}
