package langtest

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// Mark is one expected finding.
type Mark struct {
	Rule string
	Span source.Span
}

// Marked is a text whose marks are taken out, with what they said.
type Marked struct {
	File  *source.File
	Marks []Mark
}

const (
	opening = '⟦'
	closing = '⟧'
)

// Read takes the marks out of a text. A bracket without its partner, or a closing
// one without a rule, ends the test.
func Read(t testing.TB, name, marked string) Marked {
	t.Helper()
	text, marks, err := strip(marked)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return Marked{File: source.New(name, text), Marks: marks}
}

// strip does the work of Read.
func strip(marked string) (text string, marks []Mark, err error) {
	var out strings.Builder
	var open []int
	for i := 0; i < len(marked); {
		r, size := utf8.DecodeRuneInString(marked[i:])
		switch r {
		case opening:
			open = append(open, out.Len())
		case closing:
			if len(open) == 0 {
				return "", nil, fmt.Errorf("a mark closes at byte %d that was not opened", i)
			}
			names := ruleNames(marked[i+size:])
			if names == "" {
				return "", nil, fmt.Errorf("no rule follows the mark that closes at byte %d", i)
			}
			span := source.Span{Start: open[len(open)-1], End: out.Len()}
			open = open[:len(open)-1]
			for _, rule := range strings.Split(names, ",") {
				marks = append(marks, Mark{Rule: rule, Span: span})
			}
			i += len(names)
		default:
			out.WriteString(marked[i : i+size])
		}
		i += size
	}
	if len(open) > 0 {
		return "", nil, fmt.Errorf("a mark is not closed")
	}
	return out.String(), marks, nil
}

// ruleNames gives the rule names at the start of a text, commas included. A
// comma that no name follows belongs to the text.
func ruleNames(text string) string {
	end := strings.IndexFunc(text, func(r rune) bool { return (r < 'a' || r > 'z') && r != '-' && r != ',' })
	if end < 0 {
		end = len(text)
	}
	return strings.TrimRight(text[:end], ",")
}

// Check fails the test for each mark without a finding and each finding without
// a mark.
func (m Marked) Check(t testing.TB, found []diag.Diagnostic) {
	t.Helper()
	for _, problem := range m.compare(found) {
		t.Error(problem)
	}
}

// compare gives one line for each difference.
func (m Marked) compare(found []diag.Diagnostic) []string {
	var problems []string
	missing := slices.Clone(m.Marks)
	for _, d := range found {
		mark := Mark{Rule: d.Rule, Span: d.Place.Span}
		if at := slices.Index(missing, mark); at >= 0 && d.Place.File == m.File {
			missing = slices.Delete(missing, at, at+1)
			continue
		}
		problems = append(problems, fmt.Sprintf("%s: surplus %s at %q: %s", m.where(d.Place.Span), d.Rule, d.Place.Text(), d.Message))
	}
	for _, mark := range missing {
		problems = append(problems, fmt.Sprintf("%s: missing %s at %q", m.where(mark.Span), mark.Rule, m.File.Slice(mark.Span)))
	}
	return problems
}

// where gives file, line and column as people count them.
func (m Marked) where(s source.Span) string {
	return fmt.Sprintf("%s:%d:%d", m.File.Name, m.File.Line(s.Start)+1, m.File.Column(s.Start)+1)
}

// Show writes findings back into the text as marks, so that a failing test can
// be read at a glance. Findings must lie inside one another or apart.
func Show(f *source.File, found []diag.Diagnostic) string {
	type insertion struct {
		at, order int
		text      string
	}
	var all []insertion
	for _, d := range found {
		s := d.Place.Span
		end := string(closing) + d.Rule
		if s.Len() == 0 {
			all = append(all, insertion{s.Start, 0, string(opening) + end})
			continue
		}
		// at one place: what ends there, the inner first; what is empty; what begins
		all = append(all,
			insertion{s.Start, math.MaxInt - s.Len(), string(opening)},
			insertion{s.End, s.Len() - math.MaxInt, end})
	}
	slices.SortStableFunc(all, func(a, b insertion) int {
		if a.at != b.at {
			return a.at - b.at
		}
		return a.order - b.order
	})
	var out strings.Builder
	at := 0
	for _, in := range all {
		out.WriteString(f.Text[at:in.at])
		out.WriteString(in.text)
		at = in.at
	}
	return out.String() + f.Text[at:]
}
