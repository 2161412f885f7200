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
		t.finding(d, remedy(d))
	}
	return t.write(w)
}

// text is findings being written.
type text struct {
	paint page.Paint
	out   strings.Builder
}

func (t *text) write(w io.Writer) error {
	_, err := io.WriteString(w, t.out.String())
	return err
}

// finding writes a finding with what stands below it, and a blank line.
func (t *text) finding(d diag.Diagnostic, below ...string) {
	mark := marks[d.Severity]
	t.sentence(mark.text, mark.style, d.Message)
	t.place(d.Place, indent)
	for _, r := range d.Related {
		t.words(page.Clean(r.Message), indent+2, page.Plain)
		t.place(r.Place, indent+2)
	}
	for _, words := range below {
		t.words(words, indent, page.Plain)
	}
	t.out.WriteString("\n")
}

// sentence writes what there is to say, with a mark before it.
func (t *text) sentence(mark string, style page.Style, sentence string) {
	for i, line := range page.Wrap(page.Clean(sentence), page.Columns-indent) {
		var l page.Line
		if i == 0 {
			l.Put(0, mark, style)
		}
		l.Put(indent, line, page.Strong)
		fmt.Fprintln(&t.out, l.String(t.paint))
	}
}

// place writes where something is, and its source line.
func (t *text) place(p source.Place, column int) {
	if p.File == nil {
		return
	}
	t.words(where(p), column, page.Faint)
	t.line(p, column+2, "")
}

// where says in which file and line a place is.
func where(p source.Place) string {
	return fmt.Sprintf("%s, line %d", page.Clean(p.File.Name), p.File.Line(p.Span.Start)+1)
}

// line writes the source line of a place, from a column on, with a word before it.
func (t *text) line(p source.Place, column int, word string) {
	var l page.Line
	l.Put(column, word, page.Faint)
	column += page.Width(word)
	x := excerptOf(p, page.Columns-column)
	l.Put(column, x.before, page.Plain)
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
		s += word + told(f)
	}
	return s
}

// told says what a fix does, and what it gives.
func told(f diag.Fix) string {
	if f.Gives == "" {
		return page.Clean(f.Title)
	}
	return page.Clean(f.Title) + "; " + page.Clean(f.Gives)
}
