package resolve

import (
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// reportNoStatement reports a reeving line whose rope has no statement; the rope
// is there all the same. Where a line without a reeving line has nearly its name, one of
// the two is misspelt.
func (r *rigWork) reportNoStatement(s *syntax.Statement) {
	name := s.Body.(*syntax.Reeve).Rope
	if r.explained(name.Text) {
		return
	}
	near := r.nearNames(name.Text, func(p *partWork) bool {
		return p.Kind.IsLine() && p.body != nil && p.body.On == nil && r.reeves[p.Name] == nil
	})
	d := r.report(missingReeve, name.Span, name.Text,
		"%s has a reeving line but no statement of its own%s", name.Text, didYouMean(near))
	if len(near) == 0 {
		d.Severity = diag.Advice
		offer(d, "add rope "+clipped(name.Text), r.insert(r.lineAbove(s)))
		return
	}
	// One of them was meant, and what its statement says is not read for this line.
	r.rig.Incomplete = true
	for _, line := range near {
		r.meant[line] = true
	}
	r.offerName(d, name, near)
}

// lineAbove gives the edit that puts "rope NAME" on a line of its own above a
// statement and its comment lines.
func (r *rigWork) lineAbove(s *syntax.Statement) (offset int, text string) {
	at := s.Span.Start
	if len(s.Doc) > 0 {
		at = s.Doc[0].Span.Start
	}
	start := r.file.LineSpan(r.file.Line(at)).Start
	indent := r.file.Slice(source.Span{Start: start, End: at})
	blanks := indent[:len(indent)-len(strings.TrimLeft(indent, " \t\ufeff"))]
	return at, "rope " + s.Body.(*syntax.Reeve).Rope.Text + newLineOf(r.file) + strings.TrimPrefix(blanks, "\ufeff")
}

// newLineOf gives the line end of a file: that of its first line.
func newLineOf(f *source.File) string {
	if first := f.LineSpan(0); strings.HasPrefix(f.Text[first.End:], "\r\n") {
		return "\r\n"
	}
	return "\n"
}
