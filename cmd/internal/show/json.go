package show

import (
	"io"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve/report"
)

// Version is the version of the machine output of findings.
const Version = 1

type findings struct {
	Version  int       `json:"version"`
	Findings []finding `json:"findings"`
	// Mended has each finding that was mended, with the one fix that was made; nil if
	// nothing was to be.
	Mended *[]finding `json:"mended,omitempty"`
}

type finding struct {
	Rule     string `json:"rule"`
	Severity string `json:"severity"`
	at
	Message string    `json:"message"`
	Related []related `json:"related"`
	Fixes   []fix     `json:"fixes"`
}

// at is a place: the two fields that every place in machine output begins with.
type at struct {
	File  string       `json:"file"`
	Range report.Range `json:"range"`
}

type related struct {
	at
	Message string `json:"message"`
}

type fix struct {
	Title string `json:"title"`
	Gives string `json:"gives"`
	Edits []edit `json:"edits"`
}

type edit struct {
	at
	NewText string `json:"newText"`
}

// JSON writes findings in their order as machine output, indented.
func JSON(w io.Writer, list []diag.Diagnostic) error {
	return report.Encode(w, findings{Version: Version, Findings: findingsOf(list)})
}

// MendedJSON writes as machine output what is left in files and what was mended.
func MendedJSON(w io.Writer, files []*lint.Mending) error {
	var left, mended []diag.Diagnostic
	for _, m := range files {
		left = append(left, m.Left.Findings...)
		for _, s := range m.Steps {
			d := s.Finding
			d.Fixes = []diag.Fix{s.Fix}
			mended = append(mended, d)
		}
	}
	made := findingsOf(mended)
	return report.Encode(w, findings{Version: Version, Findings: findingsOf(left), Mended: &made})
}

func findingsOf(list []diag.Diagnostic) []finding {
	out := make([]finding, 0, len(list))
	for _, d := range list {
		out = append(out, findingOf(d))
	}
	return out
}

func findingOf(d diag.Diagnostic) finding {
	f := finding{
		Rule: d.Rule, Severity: d.Severity.String(), Message: d.Message,
		at:      at{report.FileName(d.Place), report.RangeOf(d.Place)},
		Related: []related{}, Fixes: []fix{},
	}
	for _, r := range d.Related {
		f.Related = append(f.Related, related{at{report.FileName(r.Place), report.RangeOf(r.Place)}, r.Message})
	}
	for _, x := range d.Fixes {
		f.Fixes = append(f.Fixes, fixOf(x))
	}
	return f
}

func fixOf(x diag.Fix) fix {
	f := fix{Title: x.Title, Gives: x.Gives, Edits: []edit{}}
	for _, e := range x.Edits {
		f.Edits = append(f.Edits, edit{at{report.FileName(e.Place), report.RangeOf(e.Place)}, e.NewText})
	}
	return f
}
