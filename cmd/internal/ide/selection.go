package ide

import (
	"slices"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Around gives spans that hold a place, each inside the next: the word, its clause or
// node, the statement, the rig, the whole text.
func (d *Document) Around(offset int) []source.Span {
	all := source.Span{Start: 0, End: len(d.File.Text)}
	spans := []source.Span{all}
	if !d.notation(offset) {
		return spans
	}
	for _, r := range d.Model.Rigs {
		spans = append(spans, r.Place.Span)
	}
	if st := d.statementAt(offset); st != nil {
		spans = append(spans, st.Span)
		switch b := st.Body.(type) {
		case *syntax.Part:
			spans = append(spans, spansOf(b.Clauses)...)
		case *syntax.Stock:
			spans = append(spans, spansOf(b.Clauses)...)
		case *syntax.Reeve:
			for _, n := range b.Nodes {
				spans = append(append(spans, n.Span), spansOf(n.Clauses)...)
			}
		}
	}
	if t, ok := d.tokenAt(offset); ok {
		spans = append(spans, t.Span)
	}
	spans = slices.DeleteFunc(spans, func(s source.Span) bool { return s.Start > offset || s.End < offset })
	slices.SortStableFunc(spans, func(a, b source.Span) int { return a.Len() - b.Len() })
	nested := spans[:1]
	for _, s := range spans[1:] {
		if last := nested[len(nested)-1]; s.Contains(last) && s != last {
			nested = append(nested, s)
		}
	}
	return nested
}

func spansOf(list []syntax.ClauseUse) []source.Span {
	var spans []source.Span
	for _, use := range list {
		spans = append(spans, use.Span)
	}
	return spans
}
