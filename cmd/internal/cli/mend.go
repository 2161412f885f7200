package cli

import (
	"errors"
	"fmt"
	"slices"

	"github.com/aymanbagabas/go-udiff"

	"fairlead/cmd/internal/show"
	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/solve/report/page"
)

// mendable counts the findings that would be gone if the files were mended.
func mendable(loaded []*load.Loaded, found []diag.Diagnostic) int {
	n := 0
	for _, l := range loaded {
		if slices.ContainsFunc(found, func(d diag.Diagnostic) bool { return d.Place.File == l.File && len(d.Fixes) == 1 }) {
			n += lint.Mend(l, rules.All()).Mended
		}
	}
	return n
}

// showMending shows what mending the files would change. They stay as they are, and
// so does what is found in them.
func (t *tool) showMending(l *linting, loaded []*load.Loaded, unread error) error {
	found := false
	for _, f := range loaded {
		m := lint.Mend(f, rules.All())
		fmt.Fprint(t.out, udiff.Unified(f.File.Name, f.File.Name, f.File.Text, m.File.File.Text))
		found = found || l.fails(m.Before.Findings)
	}
	return outcome(unread, found)
}

// mend mends files and says what was done and what is left. The text of standard
// input goes to standard output instead.
func (t *tool) mend(l *linting, loaded []*load.Loaded, unread error, filter bool) error {
	var mended []*lint.Mending
	var left []diag.Diagnostic
	errs := []error{unread}
	report := t.out
	for _, f := range loaded {
		m := lint.Mend(f, rules.All())
		switch {
		case filter:
			report = t.errs
			if _, err := t.out.WriteString(m.File.File.Text); err != nil {
				return err
			}
		case len(m.Steps) > 0:
			if err := replace(f.File, m.File.File.Text); err != nil {
				errs = append(errs, err)
				m = &lint.Mending{File: f, Before: m.Before, Left: m.Before}
			}
		}
		mended = append(mended, m)
		left = append(left, m.Left.Findings...)
	}
	if err := t.showMended(report, l.format.value, mended, unread); err != nil {
		return err
	}
	return outcome(errors.Join(errs...), l.fails(left))
}

// showMended writes what was mended and what is left.
func (t *tool) showMended(out *stream, format string, mended []*lint.Mending, unread error) error {
	var files []*load.Loaded
	var left lint.Outcome
	for _, m := range mended {
		files = append(files, m.File)
		left.Findings = append(left.Findings, m.Left.Findings...)
		left.Acceptances = append(left.Acceptances, m.Left.Acceptances...)
		left.Expectations = append(left.Expectations, m.Left.Expectations...)
	}
	switch format {
	case formatJSON:
		return show.MendedJSON(out, mended)
	case formatBrief:
		return show.Brief(out, left.Findings)
	case formatSARIF:
		return show.SARIF(out, sarifRun(files, left, unread))
	}
	paint := t.paint(out)
	if err := show.Mended(out, mended, paint); err != nil {
		return err
	}
	_, err := fmt.Fprintln(out, paint.Set(page.Strong, show.MendedTotal(mended)))
	return err
}
