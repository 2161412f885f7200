package show

import (
	"fmt"
	"io"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/solve/report/page"
)

// indent is where everything under the sentence of a finding begins; what
// belongs deeper stands two columns to the right each time.
const indent = 4

// marks stand before the sentence of a finding.
var marks = map[diag.Severity]struct {
	text  string
	style page.Style
}{
	diag.Error:   {"!!", page.Alarm},
	diag.Warning: {"!", page.Caution},
	diag.Advice:  {"·", page.Faint},
}

// Text writes findings in their order, a blank line after each.
func Text(w io.Writer, list []diag.Diagnostic, paint page.Paint) error {
	t := text{paint: paint}
	for _, d := range list {
		t.finding(d)
		t.out.WriteString("\n")
	}
	_, err := io.WriteString(w, t.out.String())
	return err
}

// text is findings being written.
type text struct {
	paint page.Paint
	out   strings.Builder
}

func (t *text) finding(d diag.Diagnostic) {
	mark := marks[d.Severity]
	for i, line := range page.Wrap(page.Clean(d.Message), page.Columns-indent) {
		var l page.Line
		if i == 0 {
			l.Put(0, mark.text, mark.style)
		}
		l.Put(indent, line, page.Strong)
		fmt.Fprintln(&t.out, l.String(t.paint))
	}
	t.place(d.Place, indent)
	for _, r := range d.Related {
		t.words(page.Clean(r.Message), indent+2, page.Plain)
		t.place(r.Place, indent+2)
	}
	t.words(remedy(d), indent, page.Plain)
}

// place writes where something is, and its source line.
func (t *text) place(p source.Place, column int) {
	if p.File == nil {
		return
	}
	where := fmt.Sprintf("%s, line %d", page.Clean(p.File.Name), p.File.Line(p.Span.Start)+1)
	t.words(where, column, page.Faint)
	x := excerptOf(p, page.Columns-column-2)
	var l page.Line
	l.Put(column+2, x.before, page.Plain)
	l.Put(l.End(), x.culprit, page.Strong)
	l.Put(l.End(), x.after, page.Plain)
	fmt.Fprintln(&t.out, l.String(t.paint))
}

func (t *text) words(words string, column int, style page.Style) {
	for _, line := range page.Wrap(words, page.Columns-column) {
		var l page.Line
		l.Put(column, line, style)
		fmt.Fprintln(&t.out, l.String(t.paint))
	}
}

// remedy gives the rule, and the ways to mend the finding if there are any.
func remedy(d diag.Diagnostic) string {
	s := d.Rule
	for i, f := range d.Fixes {
		word := ". Or: "
		if i == 0 {
			word = ". Fix: "
		}
		s += word + page.Clean(f.Title)
		if f.Gives != "" {
			s += "; " + page.Clean(f.Gives)
		}
	}
	return s
}
