package show

import (
	"io"
	"slices"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lint"
	"fairlead/solve/report"
	"fairlead/solve/report/page"
)

// Run is one run of the linter, as services that keep findings want to know it.
type Run struct {
	// Files are the files that were examined.
	Files []*source.File
	Found lint.Outcome
	// Rules are all rules there are, and Page gives the page of one as Markdown.
	Rules []*lint.Rule
	Page  func(rule string) string
	// Version is that of the program.
	Version string
	// Failed says which files could not be read or written; nil if all could.
	Failed error
}

// base is what the URIs of files that were given by relative paths begin at.
const base = "START"

// SARIF writes a run in the form SARIF 2.1.0. What the rigs accept or expect is among
// the results, as suppressed. The same files give the same text on every machine.
func SARIF(w io.Writer, run Run) error {
	s := &sarif{Run: run}
	results := s.results()
	return report.Encode(w, sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0",
		Runs: []sarifRun{{
			Tool:        sarifTool{sarifDriver{"Fairlead", run.Version, s.describe()}},
			Invocations: []sarifInvocation{s.invocation()},
			BaseIDs:     map[string]sarifArtifact{base: {Description: &sarifMessage{Text: "the folder in which the program was started"}}},
			Artifacts:   s.analysed(),
			ColumnKind:  "utf16CodeUnits",
			Results:     results,
		}},
	})
}

// sarif is a run being written.
type sarif struct {
	Run
	// used are the rules that have results, in the order of the catalogue.
	used []*lint.Rule
}

// results lists the findings, reported or not, in the order of files and places.
func (s *sarif) results() []sarifResult {
	silent := map[identity][]sarifSuppression{}
	list := slices.Clone(s.Found.Findings)
	for _, d := range list {
		silent[identityOf(d)] = nil
	}
	silence := func(found []diag.Diagnostic, because string, at source.Place) {
		for _, d := range found {
			of, known := silent[identityOf(d)]
			if known && of == nil {
				continue // it is reported all the same
			}
			if !known {
				list = append(list, d)
			}
			silent[identityOf(d)] = append(of, sarifSuppression{"inSource", because, s.location(at)})
		}
	}
	for _, a := range s.Found.Acceptances {
		silence(a.Findings, a.Because.Value, a.Place)
	}
	for _, e := range s.Found.Expectations {
		silence(e.Findings, strings.Join(strings.Fields(e.Place.Text()), " "), e.Place)
	}
	diag.Sort(list, s.Files)
	s.use(list)
	prints := fingerprints{}
	results := []sarifResult{}
	for _, d := range list {
		r := s.result(d, prints)
		r.Suppressions = append(r.Suppressions, silent[identityOf(d)]...)
		results = append(results, r)
	}
	return results
}

// identity tells findings apart.
type identity struct {
	rule, message string
	place         source.Place
}

func identityOf(d diag.Diagnostic) identity { return identity{d.Rule, d.Message, d.Place} }

// use notes which rules have results.
func (s *sarif) use(list []diag.Diagnostic) {
	for _, r := range s.Rules {
		if slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Rule == r.Name }) {
			s.used = append(s.used, r)
		}
	}
}

func (s *sarif) result(d diag.Diagnostic, prints fingerprints) sarifResult {
	r := sarifResult{
		RuleID: d.Rule, Level: levels[d.Severity], Message: message(d.Message),
		Locations: []sarifLocation{}, Suppressions: []sarifSuppression{},
		RuleIndex:    slices.IndexFunc(s.used, func(r *lint.Rule) bool { return r.Name == d.Rule }),
		Fingerprints: map[string]string{"finding/v1": prints.of(d)},
	}
	if d.Place.File != nil {
		r.Locations = append(r.Locations, s.location(d.Place))
	}
	for _, rel := range d.Related {
		if rel.Place.File != nil {
			at, words := s.location(rel.Place), message(rel.Message)
			at.Message = &words
			r.Related = append(r.Related, at)
		}
	}
	for _, f := range d.Fixes {
		r.Fixes = append(r.Fixes, s.fix(f))
	}
	return r
}

// levels are the standard's words for severities.
var levels = map[diag.Severity]string{diag.Error: "error", diag.Warning: "warning", diag.Advice: "note"}

// message makes a text a message: braces would be placeholders.
func message(text string) sarifMessage {
	return sarifMessage{Text: strings.NewReplacer("{", "{{", "}", "}}").Replace(text)}
}

// describe describes the rules that have results.
func (s *sarif) describe() []sarifRule {
	list := []sarifRule{}
	for _, r := range s.used {
		markdown := s.Page(r.Name)
		list = append(list, sarifRule{
			ID: r.Name, Name: inOneWord(r.Name), Short: sarifMessage{Text: r.Summary},
			Help:          sarifMessage{Text: PlainPage(markdown), Markdown: markdown},
			Configuration: sarifLevel{levels[r.Severity]},
		})
	}
	return list
}

// inOneWord writes "no-capture" as "NoCapture".
func inOneWord(name string) string {
	var b strings.Builder
	for _, word := range strings.Split(name, "-") {
		if word != "" {
			b.WriteString(strings.ToUpper(word[:1]) + word[1:])
		}
	}
	return b.String()
}

func (s *sarif) invocation() sarifInvocation {
	i := sarifInvocation{Successful: s.Failed == nil}
	if s.Failed != nil {
		for _, line := range strings.Split(s.Failed.Error(), "\n") {
			i.Notifications = append(i.Notifications, sarifNotification{"error", message(page.Clean(line))})
		}
	}
	return i
}
