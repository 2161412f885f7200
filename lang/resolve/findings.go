package resolve

import (
	"fmt"
	"unicode/utf8"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// findings collects the faults of one file. What stands before the first rig is
// resolved once for each rig, so one fault may come several times; it is kept once.
type findings struct {
	file *source.File
	list []*diag.Diagnostic
	seen map[said]*diag.Diagnostic
	hint hinter
	// current is the rig that is being resolved, nil for the file as a whole.
	current *section
	// brought has what is known of the copies of files that includes made.
	brought map[*source.File]*bringing
}

// said is what makes two findings the same.
type said struct {
	rule    string
	place   source.Place
	message string
}

// fault is what makes two findings about one text the same, whatever the copy is called
// in which they are made.
type fault struct {
	rule  string
	place source.Place
}

func faultAt(d *diag.Diagnostic) fault { return fault{d.Rule, d.Place.Original()} }

func newFindings(file *source.File) *findings {
	return &findings{
		file: file, seen: map[said]*diag.Diagnostic{}, hint: hinter{left: hintBudget},
		brought: map[*source.File]*bringing{},
	}
}

// report notes a finding and gives it to be completed.
func (f *findings) report(rule Rule, at source.Span, subject, format string, args ...any) *diag.Diagnostic {
	return f.reportAt(rule, f.file.At(at), subject, format, args...)
}

// reportAt is report for a place that may be in another file.
func (f *findings) reportAt(rule Rule, at source.Place, subject, format string, args ...any) *diag.Diagnostic {
	d := f.compose(rule, at.Span, subject, format, args...)
	d.Place = at
	return f.add(d)
}

// compose makes a finding without noting it.
func (f *findings) compose(rule Rule, at source.Span, subject, format string, args ...any) *diag.Diagnostic {
	return &diag.Diagnostic{
		Rule:     rule.Name,
		Severity: rule.Severity,
		Place:    f.file.At(at),
		Message:  sentence(format, args),
		Subject:  subject,
	}
}

// phrase is a piece of a message that the package worded itself, which sentence
// therefore leaves whole.
type phrase string

// sentence words a message; what comes out of the file is shortened.
func sentence(format string, args []any) string {
	for i, arg := range args {
		if text, ok := arg.(string); ok {
			args[i] = clipped(text)
		}
	}
	return fmt.Sprintf(format, args...)
}

// clipped shortens a very long name so that a message stays a sentence.
func clipped(text string) string {
	const most = 60
	if len(text) <= most {
		return text
	}
	runes := []rune(text[:min(len(text), utf8.UTFMax*most)])
	if len(runes) <= most {
		return text
	}
	return string(runes[:most-1]) + "…"
}

// add notes a finding; one that is there already is given back with its related
// places and fixes cleared, to be completed anew. One about something copied that
// stands at the original already is not noted.
func (f *findings) add(d *diag.Diagnostic) *diag.Diagnostic {
	if f.current != nil {
		f.current.faults[faultAt(d)] = true
	}
	if b := f.brought[d.Place.File]; b != nil && b.known(d) {
		return d
	}
	key := said{d.Rule, d.Place, d.Message}
	if old := f.seen[key]; old != nil {
		*old = *d
		return old
	}
	f.seen[key] = d
	f.list = append(f.list, d)
	return d
}

// sorted gives the findings with those of the tree, sorted by place.
func (f *findings) sorted(ofTree []diag.Diagnostic) []diag.Diagnostic {
	list := append([]diag.Diagnostic(nil), ofTree...)
	for _, d := range f.list {
		list = append(list, d.Home())
	}
	diag.Sort(list, []*source.File{f.file})
	return list
}

// related adds another place to a finding.
func related(d *diag.Diagnostic, at source.Place, format string, args ...any) {
	d.Related = append(d.Related, diag.Related{Place: at, Message: sentence(format, args)})
}

// offer adds a fix to a finding.
func offer(d *diag.Diagnostic, title string, edits ...diag.Edit) {
	d.Fixes = append(d.Fixes, diag.Fix{Title: title, Edits: edits})
}

// replace is the edit that writes text over a span.
func (f *findings) replace(at source.Span, text string) diag.Edit {
	return diag.Edit{Place: f.file.At(at), NewText: text}
}

// insert is the edit that writes text before an offset.
func (f *findings) insert(offset int, text string) diag.Edit {
	return f.replace(source.Span{Start: offset, End: offset}, text)
}
