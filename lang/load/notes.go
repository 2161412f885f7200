package load

import "fairlead/lang/diag"

// Fitted gives findings whose fixes are edits of what the file holds: in notes the edits
// of the notation are fitted into the document, and a fix that does not fit is left out.
func (l *Loaded) Fitted(list []diag.Diagnostic) []diag.Diagnostic {
	if l.Notes == nil {
		return list
	}
	fitted := make([]diag.Diagnostic, len(list))
	for i, d := range list {
		fixes := d.Fixes
		d.Fixes = nil
		for _, fix := range fixes {
			if edits, ok := l.fit(fix.Edits); ok {
				fix.Edits = edits
				d.Fixes = append(d.Fixes, fix)
			}
		}
		fitted[i] = d
	}
	return fitted
}

func (l *Loaded) fit(edits []diag.Edit) ([]diag.Edit, bool) {
	var fitted []diag.Edit
	for _, e := range edits {
		if e.Place.File != l.File {
			fitted = append(fitted, e)
			continue
		}
		span, text, ok := l.Notes.Fit(e.Place.Span, e.NewText)
		if !ok {
			return nil, false
		}
		fitted = append(fitted, diag.Edit{Place: l.File.At(span), NewText: text})
	}
	return fitted, true
}
