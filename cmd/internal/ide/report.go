package ide

import (
	"strings"

	"fairlead/solve"
	"fairlead/solve/report"
	"fairlead/solve/report/page"
)

// Report gives all that is computed of a rig as the command line prints it; ok is false
// if the document has no such rig.
func (d *Document) Report(rig string) (text string, ok bool) {
	for i, r := range d.Model.Rigs {
		if r.Name != rig {
			continue
		}
		if f := d.figures(i); f != nil {
			var b strings.Builder
			_ = report.Text(&b, []*solve.Result{f.result}, false, page.Paint{}) // a Builder never fails
			return b.String(), true
		}
	}
	return "", false
}
