package rules

import (
	"slices"
	"strings"
	"testing"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
)

// checked names the rules that look at a solved rig; their fixes are proved.
func checked() map[string]bool {
	names := map[string]bool{}
	for _, r := range All() {
		names[r.Name] = r.Check != nil
	}
	return names
}

// Whatever the text, the linter ends, its places lie in the text, and what a fix of
// a solved rig leaves behind does not have the finding any more.
func FuzzRun(f *testing.F) {
	for _, r := range All() {
		text, _ := Page(r.Name)
		for _, b := range cutPage(text).blocks {
			if b.info == "rig" {
				f.Add(b.text)
			}
		}
	}
	for _, c := range wrong {
		f.Add(strings.NewReplacer("⟦", "", "⟧", " # ").Replace(c.text))
	}
	f.Add(drum)
	known := lint.Names(All())
	proved := checked()
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 3000 {
			t.Skip()
		}
		file, found := examined(text)
		for _, d := range found {
			if !slices.Contains(known, d.Rule) {
				t.Errorf("%s is no known rule", d.Rule)
			}
			if d.Message == "" || !inside(file, d.Place.Span.Start) || !inside(file, d.Place.Span.End) {
				t.Errorf("%q of %s is at %v", d.Message, d.Rule, d.Place.Span)
			}
			for _, fix := range d.Fixes {
				checkFix(t, file, d, fix, proved[d.Rule])
			}
		}
	})
}

func inside(f *load.Loaded, offset int) bool { return 0 <= offset && offset <= len(f.File.Text) }

// checkFix makes a fix whose edits must not overlap.
func checkFix(t *testing.T, file *load.Loaded, d diag.Diagnostic, fix diag.Fix, proved bool) {
	edits := slices.Clone(fix.Edits)
	slices.SortFunc(edits, func(a, b diag.Edit) int { return a.Place.Span.Start - b.Place.Span.Start })
	for i := 1; i < len(edits); i++ {
		if edits[i].Place.Span.Start < edits[i-1].Place.Span.End {
			t.Fatalf("the edits of %q overlap", fix.Title)
		}
	}
	if !proved {
		return
	}
	text := diag.Apply(file.File, edits)
	_, left := examined(text)
	for _, e := range left {
		if e.Rule == d.Rule && e.Subject == d.Subject {
			t.Errorf("%s at %s is still there after %q:\n%s\nbecomes\n%s", d.Rule, d.Subject, fix.Title, file.File.Text, text)
		}
	}
}
