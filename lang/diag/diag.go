package diag

import (
	"cmp"
	"slices"

	"fairlead/lang/source"
)

// Severity says how bad a finding is. The zero value is Advice.
type Severity int

const (
	// Advice: the rig works, there is better.
	Advice Severity = iota
	// Warning: a hazard.
	Warning
	// Error: the rig cannot do its job or contradicts itself.
	Error
)

// String gives the word that users write and read.
func (s Severity) String() string {
	return [...]string{"advice", "warning", "error"}[s]
}

// SeverityNamed gives the severity of a word; ok is false for any other word.
func SeverityNamed(word string) (severity Severity, ok bool) {
	for s := Advice; s <= Error; s++ {
		if s.String() == word {
			return s, true
		}
	}
	return Advice, false
}

// Diagnostic is one finding.
type Diagnostic struct {
	// Rule is the name of the rule or of the kind of text error, such as "unknown-part".
	Rule     string
	Severity Severity
	// Place is the exact culprit. An empty span means that something is missing there.
	Place source.Place
	// Message is one sentence without a final full stop; it begins with the part.
	Message string
	// Subject is the name of the part that the finding is about, which "at PART"
	// of expect and accept names. Empty if there is none.
	Subject string
	// Also names further parts that "at PART" may name instead.
	Also    []string
	Related []Related
	Fixes   []Fix
}

// Related is another place that helps to understand a finding.
type Related struct {
	Place   source.Place
	Message string
}

// Fix is one way to mend a finding. Its edits do not overlap and refer to the
// text as it was read.
type Fix struct {
	// Title says what to do, imperative, no full stop: "set grab on litter / top".
	Title string
	// Gives says what the rig does after it: "it is 3 : 1 there". May be empty.
	Gives string
	Edits []Edit
}

// Edit replaces the text at a place; an empty span inserts.
type Edit struct {
	Place   source.Place
	NewText string
}

// Named says whether "at name" means this finding.
func (d Diagnostic) Named(name string) bool {
	return d.Subject == name || slices.Contains(d.Also, name)
}

// Sort puts findings in the order of files (as in order), then of places,
// graver ones first at one place, then of rule names and messages.
func Sort(list []Diagnostic, order []*source.File) {
	rank := make(map[*source.File]int, len(order))
	for i, f := range order {
		rank[f] = i
	}
	slices.SortStableFunc(list, func(a, b Diagnostic) int {
		return cmp.Or(
			cmp.Compare(rank[a.Place.File], rank[b.Place.File]),
			cmp.Compare(a.Place.Span.Start, b.Place.Span.Start),
			cmp.Compare(b.Severity, a.Severity),
			cmp.Compare(a.Rule, b.Rule),
			cmp.Compare(a.Message, b.Message),
		)
	})
}

// Apply makes the edits of one file in what it holds. They must not overlap.
func Apply(f *source.File, edits []Edit) string { return apply(f, f.Whole, edits) }

// Draft makes the edits of one file in its notation alone, which is all that a trial
// reads. They must not overlap.
func Draft(f *source.File, edits []Edit) string { return apply(f, f.Text, edits) }

func apply(f *source.File, text string, edits []Edit) string {
	mine := make([]Edit, 0, len(edits))
	for _, e := range edits {
		if e.Place.File == f {
			mine = append(mine, e)
		}
	}
	slices.SortStableFunc(mine, func(a, b Edit) int {
		return cmp.Compare(a.Place.Span.Start, b.Place.Span.Start)
	})
	var out []byte
	at := 0
	for _, e := range mine {
		out = append(out, text[at:e.Place.Span.Start]...)
		out = append(out, e.NewText...)
		at = e.Place.Span.End
	}
	return string(append(out, text[at:]...))
}

// Home gives the finding as it is to be reported: one about something copied stands
// where the copy is brought in, with the original as the first related place. What
// would edit copied text is no fix: the text is another rig's.
func (d Diagnostic) Home() Diagnostic {
	related := make([]Related, 0, len(d.Related)+1)
	if d.Place.IsCopy() {
		related = append(related, Related{Place: d.Place.Original(), Message: "written here"})
	}
	for _, r := range d.Related {
		related = append(related, Related{Place: r.Place.Original(), Message: r.Message})
	}
	d.Place = d.Place.Home()
	d.Related = slices.Clip(related)
	d.Fixes = slices.DeleteFunc(slices.Clone(d.Fixes), func(f Fix) bool {
		return slices.ContainsFunc(f.Edits, func(e Edit) bool { return e.Place.IsCopy() })
	})
	if len(d.Related) == 0 {
		d.Related = nil
	}
	return d
}
