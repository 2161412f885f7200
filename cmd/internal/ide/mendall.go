package ide

import (
	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lint"
)

// MendAll makes every fix of the document that is proved, and gives the edits and how
// many findings are gone then. It may take a while.
func (d *Document) MendAll() (edits []diag.Edit, mended int) {
	m := lint.Mend(d.Loaded, d.desk.rules)
	if m.Mended == 0 {
		return nil, 0
	}
	return d.changes(source.Span{Start: 0, End: len(d.File.Whole)}, m.File.File.Whole), m.Mended
}
