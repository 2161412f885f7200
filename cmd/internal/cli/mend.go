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
	list := unmended(load.Policies(loaded))
	for _, f := range loaded {
		m := lint.Mend(f, rules.All())
		fmt.Fprint(t.out, udiff.Unified(f.File.Name, f.File.Name, f.File.Whole, m.File.File.Whole))
		list = append(list, m)
	}
	fails := func(m *lint.Mending) bool { return l.fails(m.Before.Findings) }
	return outcome(unread, slices.ContainsFunc(list, fails))
}

// mend mends files and says what was done and what is left. As a filter, it writes the
// text of standard input to standard output and the report to standard error.
func (t *tool) mend(l *linting, loaded []*load.Loaded, unread error, filter bool) error {
	var list []*lint.Mending
	errs := []error{unread}
	report := t.out
	for _, f := range loaded {
		m := lint.Mend(f, rules.All())
		if len(m.Steps) > 0 && !filter {
			if err := replace(f.File, m.File.File.Whole); err != nil {
				errs = append(errs, err)
				m = &lint.Mending{File: f, Before: m.Before, Left: m.Before}
			}
		}
		list = append(list, m)
	}
	if filter {
		report = t.errs
		for _, m := range list {
			if _, err := t.out.WriteString(m.File.File.Whole); err != nil {
				return err
			}
		}
	}
	list = append(list, unmended(load.Policies(loaded))...)
	failed := errors.Join(errs...)
	if err := t.showMended(report, l.format.value, list, failed); err != nil {
		return err
	}
	fails := func(m *lint.Mending) bool { return l.fails(m.Left.Findings) }
	return outcome(failed, slices.ContainsFunc(list, fails))
}

// unmended gives files that are examined only: house rules that are wrong themselves
// hold for less than their author thinks.
func unmended(files []*load.Loaded) []*lint.Mending {
	var list []*lint.Mending
	for _, f := range files {
		found := lint.Examine([]*load.Loaded{f}, rules.All())
		list = append(list, &lint.Mending{File: f, Before: found, Left: found})
	}
	return list
}

// showMended writes what was mended and what is left.
func (t *tool) showMended(out *stream, format string, mended []*lint.Mending, failed error) error {
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
		return show.SARIF(out, sarifRun(files, left, failed))
	}
	paint := t.paint(out)
	if err := show.Mended(out, mended, paint); err != nil {
		return err
	}
	_, err := fmt.Fprintln(out, paint.Set(page.Strong, show.MendedTotal(mended)))
	return err
}
