package langtest

import (
	"testing"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// Fixed gives the text after the one fix whose title is given; it ends the test
// if no finding, or more than one, offers it.
func Fixed(t testing.TB, f *source.File, found []diag.Diagnostic, title string) string {
	t.Helper()
	var titles, texts []string
	for _, d := range found {
		for _, fix := range d.Fixes {
			titles = append(titles, fix.Title)
			if fix.Title == title {
				texts = append(texts, diag.Apply(f, fix.Edits))
			}
		}
	}
	if len(texts) != 1 {
		t.Fatalf("%s: %d fixes have the title %q; there are %q", f.Name, len(texts), title, titles)
	}
	return texts[0]
}
