package show

import (
	"fmt"
	"io"

	"fairlead/lang/diag"
	"fairlead/solve/report/page"
)

// Brief writes one line a finding, "file:line:column: severity: sentence [rule]",
// the form that the lists of editors read. Lines and columns count from 1, columns
// in code points.
func Brief(w io.Writer, list []diag.Diagnostic) error {
	for _, d := range list {
		line, column := 1, 1
		if f := d.Place.File; f != nil {
			line, column = f.Line(d.Place.Span.Start)+1, f.Column(d.Place.Span.Start)+1
		}
		_, err := fmt.Fprintf(w, "%s:%d:%d: %s: %s [%s]\n",
			page.Clean(nameOf(d)), line, column, d.Severity, page.Clean(d.Message), d.Rule)
		if err != nil {
			return err
		}
	}
	return nil
}

func nameOf(d diag.Diagnostic) string {
	if d.Place.File == nil {
		return ""
	}
	return d.Place.File.Name
}
