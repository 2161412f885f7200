package rigfmt

import (
	"cmp"
	"slices"
	"strings"

	"fairlead/lang/syntax"
)

// cells are what the columns of a part statement hold: the kind, the name, and
// "model on PART", of which either may lack.
type cells [3]string

// cellsOf gives the cells of a statement and its clauses, as written.
func cellsOf(st *syntax.Statement) (c cells, kind string, clauses []syntax.ClauseUse) {
	text := func(w syntax.Word) string { return within(st.Tokens, w.Span)[0].Text }
	switch b := st.Body.(type) {
	case *syntax.Stock:
		return cells{st.Tokens[0].Text + " " + text(b.Kind), text(b.Model)}, b.Kind.Text, b.Clauses
	case *syntax.Part:
		var third []string
		if b.Model != nil {
			third = append(third, text(*b.Model))
		}
		if b.On != nil {
			third = append(third, "on", text(*b.On))
		}
		return cells{text(b.Kind), text(b.Name), strings.Join(third, " ")}, b.Kind.Text, b.Clauses
	}
	return cells{}, "", nil
}

// cellWidths gives the width of each column of the group; 0 for one that is empty.
func (g *group) cellWidths() []int {
	widths := make([]int, len(cells{}))
	for _, m := range g.members {
		if m.statement == nil {
			continue
		}
		c, _, _ := cellsOf(m.statement)
		for i, text := range c {
			if text != "" {
				widths[i] = max(widths[i], width(text)+2)
			}
		}
	}
	return widths
}

// partText writes a part statement: its cells, then its clauses in the order of
// the vocabulary, two spaces apart.
func partText(st *syntax.Statement, widths []int) string {
	c, kind, clauses := cellsOf(st)
	line := ""
	for i, text := range c {
		line += pad(text, widths[i])
	}
	order := syntax.ClausesOf(kind)
	clauses = slices.Clone(clauses)
	slices.SortStableFunc(clauses, func(a, b syntax.ClauseUse) int {
		return cmp.Compare(slices.Index(order, a.Word.Text), slices.Index(order, b.Word.Text))
	})
	texts := make([]string, len(clauses))
	for i, use := range clauses {
		texts[i] = spaced(within(st.Tokens, use.Span))
	}
	return strings.TrimRight(line+strings.Join(texts, "  "), " ")
}
