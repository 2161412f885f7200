package rigfmt

import (
	"slices"
	"strings"
	"unicode/utf8"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// class says which statements are aligned with one another.
type class int

const (
	otherClass class = iota
	partClass        // parts, lines and stock: what has cells
	reeveClass
)

func classOf(st *syntax.Statement) class {
	switch st.Body.(type) {
	case *syntax.Part, *syntax.Stock:
		return partClass
	case *syntax.Reeve:
		return reeveClass
	}
	return otherClass
}

// group is a run of statements of one class, with the comment lines among them.
type group struct {
	file    *source.File
	class   class
	members []member
}

// member is a statement of a group, or a comment line if it has none.
type member struct {
	statement *syntax.Statement
	comment   string
}

// row is one line to write: its text and the comment after it.
type row struct {
	text, comment string
}

// close writes the group and empties it.
func (g *group) close() []string {
	rows := g.rows()
	g.members = g.members[:0]
	column := 0
	for _, r := range rows {
		if r.text != "" && r.comment != "" {
			column = max(column, width(r.text)+2)
		}
	}
	lines := make([]string, len(rows))
	for i, r := range rows {
		switch {
		case r.comment == "":
			lines[i] = r.text
		case r.text == "":
			lines[i] = r.comment
		default:
			lines[i] = pad(r.text, column) + r.comment
		}
	}
	return lines
}

// rows lays out the members of the group.
func (g *group) rows() []row {
	var rows []row
	var cells []int
	indent := 0
	switch g.class {
	case partClass:
		cells = g.cellWidths()
	case reeveClass:
		indent = g.indent()
	}
	for _, m := range g.members {
		switch {
		case m.statement == nil:
			rows = append(rows, row{comment: m.comment})
		case g.class == partClass:
			rows = append(rows, row{partText(m.statement, cells), trailing(m.statement)})
		case g.class == reeveClass:
			rows = append(rows, reeveRows(g.file, m.statement, indent)...)
		default:
			rows = append(rows, row{spaced(m.statement.Tokens), trailing(m.statement)})
		}
	}
	return rows
}

// trailing gives the comment after a statement; empty without one.
func trailing(st *syntax.Statement) string {
	if st.Trailing == nil {
		return ""
	}
	return st.Trailing.Text
}

// width counts the code points of a text.
func width(text string) int { return utf8.RuneCountInString(text) }

// pad fills a text with spaces up to a column.
func pad(text string, column int) string {
	return text + strings.Repeat(" ", max(0, column-width(text)))
}

// within gives the tokens that lie in a span.
func within(tokens []syntax.Token, span source.Span) []syntax.Token {
	from := slices.IndexFunc(tokens, func(t syntax.Token) bool { return t.Span.Start >= span.Start })
	to := from
	for to < len(tokens) && tokens[to].Span.End <= span.End {
		to++
	}
	return tokens[from:to]
}
