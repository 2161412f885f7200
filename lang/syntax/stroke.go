package syntax

import (
	"fmt"

	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// stroke takes a stroke and notes what white space lacks around it.
func (rv *reeving) stroke(t lexer.Token) {
	span := spanOf(t)
	rv.reeve.Strokes = append(rv.reeve.Strokes, Stroke{Kind: StrokeKind(t.Value[0]), Span: span})
	glued := false
	for _, at := range []int{span.Start, span.End} {
		if !rv.blankBeside(at, at == span.Start) {
			glued = true
			rv.blanks = append(rv.blanks, diag.Edit{Place: rv.file.At(source.Span{Start: at, End: at}), NewText: " "})
		}
	}
	if glued {
		rv.glued = append(rv.glued, t)
	}
}

// reportGlued gives one advice for all strokes of the line without white space.
func (rv *reeving) reportGlued() {
	n := len(rv.glued)
	if n == 0 {
		return
	}
	message, title := "the stroke "+rv.glued[0].Value+" reads", "put spaces around the stroke"
	if n > 1 {
		message, title = fmt.Sprintf("%d strokes of %s read", n, clip(rv.reeve.Rope.Text)), "put spaces around the strokes"
	}
	rv.problems = append(rv.problems, diag.Diagnostic{
		Rule: RuleGluedStroke, Severity: diag.Advice,
		Place:   rv.file.At(spanOf(rv.glued[0]).To(spanOf(rv.glued[n-1]))),
		Message: message + " better with a space on both sides",
		Fixes:   []diag.Fix{{Title: title, Edits: rv.blanks}},
	})
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
