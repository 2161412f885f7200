package ide

import (
	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// addPart offers statements for a name that no part has, of the kinds that can stand
// where it is named.
func (d *Document) addPart(f *diag.Diagnostic) []Action {
	st := d.statementAt(f.Place.Span.Start)
	if st == nil {
		return nil
	}
	at := f.Place.Span
	var list []Action
	for _, kind := range kindsAt(st, at) {
		line := kind + "  " + d.File.Slice(at)
		if edits, ok := d.newPart(d.rigAt(at.Start), line); ok {
			list = append(list, Action{Sort: AddAction, Title: "add " + kind + " " + d.File.Slice(at), Edits: edits, Finding: f})
		}
	}
	return list
}

// kindsAt lists the kinds of part that may be meant by a name at a place, the likeliest
// first.
func kindsAt(st *syntax.Statement, at source.Span) []string {
	is := func(w *syntax.Word) bool { return w != nil && w.Span == at }
	switch b := st.Body.(type) {
	case *syntax.Reeve:
		for i, n := range b.Nodes {
			switch {
			case n.Name.Span != at:
			case i == 0:
				return []string{"load", "anchor"}
			case i == len(b.Nodes)-1:
				return []string{"hauler", "anchor", "tender"}
			default:
				return []string{"pulley", "hitch", "carabiner"}
			}
		}
	case *syntax.Part:
		if is(b.On) {
			return []string{"anchor", "carabiner", "hitch"}
		}
		for _, use := range b.Clauses {
			switch {
			case !is(use.Name):
			case use.Word.Text == "from":
				return []string{"anchor"}
			case use.Word.Text == "to":
				return []string{"focal"}
			}
		}
	case *syntax.Expect:
		if is(b.By) {
			return []string{"hauler"}
		}
	}
	return nil
}

// newPart gives the edits that add a part statement to a rig: below its last one, else
// below its first line.
func (d *Document) newPart(rig int, line string) ([]diag.Edit, bool) {
	after, first := -1, -1
	for i, st := range d.Tree.Statements {
		if d.rigAt(st.Span.Start) != rig {
			continue
		}
		if first < 0 {
			first = i
		}
		if _, isPart := st.Body.(*syntax.Part); isPart {
			after = i
		}
	}
	if after < 0 {
		after = first
	}
	if after < 0 {
		return nil, false
	}
	end := linesOf(d.Tree, after).End
	return d.fit(diag.Edit{Place: d.File.At(source.Span{Start: end, End: end}), NewText: d.lineEnd() + line})
}
