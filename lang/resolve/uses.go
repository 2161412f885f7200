package resolve

import (
	"errors"
	"fmt"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// Opener gives the file that a "use" names, resolved. An error says in words why there
// is none, such as "there is no such file"; it may be a Circle.
type Opener func(use *syntax.Use) (*Resolved, error)

// Circle is the error of a "use" that leads back to the file that it stands in.
type Circle struct {
	// Through are the names of the files between, the used one first; none if it is the
	// file itself.
	Through []string
}

func (c Circle) Error() string { return "it leads back here" }

// usedFile is a file that another one uses.
type usedFile struct {
	*model.Use
	of *Resolved
}

// readUses brings in what the file uses. What a used file uses itself is its own
// affair: nothing of that can be named here.
func (w *fileWork) readUses(tree *syntax.Tree, open Opener) {
	first := map[*Resolved]*model.Use{}
	for _, s := range tree.Statements {
		body, ok := s.Body.(*syntax.Use)
		if !ok {
			w.lacking = w.lacking || s.Keyword.Text == "use"
			continue
		}
		use := &model.Use{Use: body, Place: w.file.At(s.Span)}
		w.out.Uses = append(w.out.Uses, use)
		of := w.openUse(body, open)
		switch old := first[of]; {
		case of == nil:
			w.lacking = true
		case old != nil:
			d := w.report(usedTwice, body.Path.Span, "", "%s is used already; once is enough", body.Path.Value)
			related(d, w.file.At(old.Path.Span), "the first use of it")
		default:
			use.File = of.Model
			first[of] = use
			w.used = append(w.used, &usedFile{use, of})
			w.reportFaults(body, of)
		}
	}
}

// openUse gives the file that a "use" names; nil if there is none, which is reported.
func (w *fileWork) openUse(use *syntax.Use, open Opener) *Resolved {
	path := use.Path.Value
	switch {
	case strings.TrimSpace(path) == "":
		w.report(unusableFile, use.Path.Span, "", "use names no file")
		return nil
	case strings.Contains(path, `\`):
		d := w.report(unusableFile, use.Path.Span, "", "%s is no path here: folders are parted by /", path)
		offer(d, "write /", w.replace(use.Path.Span, `"`+strings.NewReplacer(`\`, "/", `"`, `\"`).Replace(path)+`"`))
		return nil
	case strings.HasPrefix(path, "/") || strings.Contains(path, ":"):
		w.report(unusableFile, use.Path.Span, "",
			"%s is no path from this file's own folder, such as \"../stock.rig\"", path)
		return nil
	case open == nil:
		w.report(unusableFile, use.Path.Span, "", "%s is missing: no other file can be read here", path)
		return nil
	}
	of, err := open(use)
	var circle Circle
	switch {
	case errors.As(err, &circle) && len(circle.Through) == 0:
		w.report(unusableFile, use.Path.Span, "", "%s is this file itself", path)
	case errors.As(err, &circle) && len(circle.Through) == 1:
		w.report(unusableFile, use.Path.Span, "", "%s uses this file in turn, so that nothing is brought in", path)
	case errors.As(err, &circle):
		w.report(unusableFile, use.Path.Span, "", "%s uses this file in turn by way of %s, so that nothing is brought in",
			path, both(circle.Through[1:]))
	case err != nil:
		w.report(unusableFile, use.Path.Span, "", "%s cannot be read: %s", path, err.Error())
	}
	if err != nil {
		return nil
	}
	return of
}

// reportFaults says in one line that a used file has errors.
func (w *fileWork) reportFaults(use *syntax.Use, of *Resolved) {
	var first *diag.Diagnostic
	count := 0
	for i := range of.Problems {
		if d := &of.Problems[i]; d.Severity == diag.Error {
			count++
			if first == nil {
				first = d
			}
		}
	}
	if count == 0 {
		return
	}
	says := phrase("an error")
	if count > 1 {
		says = phrase(fmt.Sprintf("%d errors, the first", count))
	}
	d := w.report(unusableFile, use.Path.Span, "", "%s has %s on line %d",
		use.Path.Value, says, first.Place.File.Line(first.Place.Span.Start)+1)
	related(d, first.Place, "%s", phrase(first.Message))
}
