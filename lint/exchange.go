package lint

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// ofPlace are the clauses that say how a part is used where it is; all others say what it
// is made of.
var ofPlace = []string{"at", "holds", "sideways"}

// ExchangeHardware gives the edits that exchange what two parts are made of: their kinds,
// models and clauses. Names, clips and what says how a part is used stay. ok is false if
// their statements are not in the rig's own text.
func (p *Pass) ExchangeHardware(a, b *model.Part) (edits []diag.Edit, ok bool) {
	first, second := p.statement(a), p.statement(b)
	if first == nil || second == nil {
		return nil, false
	}
	return append(p.remade(first, second), p.remade(second, first)...), true
}

// ExchangeNodes gives the edits that exchange two nodes of a rope with what stands in
// their parentheses; ok is false if the rope is not in the rig's own text.
func (p *Pass) ExchangeNodes(r *model.Rope, a, b int) (edits []diag.Edit, ok bool) {
	first, second := r.Nodes[a].Place, r.Nodes[b].Place
	return []diag.Edit{{Place: first, NewText: second.Text()}, {Place: second, NewText: first.Text()}}, p.OwnText(r.Place)
}

// statement finds the statement of a part in the rig's own text; nil if there is none.
func (p *Pass) statement(part *model.Part) *syntax.Statement {
	if !p.OwnText(part.Place) {
		return nil
	}
	for _, s := range p.file.Tree.Statements {
		if _, is := s.Body.(*syntax.Part); is && s.Span == part.Place.Span {
			return s
		}
	}
	return nil
}

// remade gives the edits that make a statement one of another's hardware.
func (p *Pass) remade(s, like *syntax.Statement) []diag.Edit {
	part, other := s.Body.(*syntax.Part), like.Body.(*syntax.Part)
	f := p.file.File
	edits := []diag.Edit{{Place: f.At(part.Kind.Span), NewText: f.Slice(other.Kind.Span)}}
	switch {
	case part.Model != nil && other.Model != nil:
		edits = append(edits, diag.Edit{Place: f.At(part.Model.Span), NewText: f.Slice(other.Model.Span)})
	case part.Model != nil:
		edits = append(edits, takeOut(f, part.Model.Span)...)
	case other.Model != nil:
		edits = append(edits, insertion(f.At(part.Name.Span), " "+f.Slice(other.Model.Span)))
	}
	var gone []source.Span
	for _, c := range part.Clauses {
		as := clauseOf(other, c.Word.Text)
		switch {
		case slices.Contains(ofPlace, c.Word.Text):
		case as == nil:
			gone = append(gone, c.Span)
		default:
			edits = append(edits, diag.Edit{Place: f.At(c.Span), NewText: f.Slice(as.Span)})
		}
	}
	edits = append(edits, takeOut(f, gone...)...)
	added := ""
	for _, c := range other.Clauses {
		if !slices.Contains(ofPlace, c.Word.Text) && clauseOf(part, c.Word.Text) == nil {
			added += "  " + f.Slice(c.Span)
		}
	}
	if added != "" {
		edits = append(edits, insertion(f.At(s.Span), added))
	}
	return edits
}

// clauseOf finds a clause of a part statement; nil if there is none.
func clauseOf(part *syntax.Part, word string) *syntax.ClauseUse {
	i := slices.IndexFunc(part.Clauses, func(c syntax.ClauseUse) bool { return c.Word.Text == word })
	if i < 0 {
		return nil
	}
	return &part.Clauses[i]
}
