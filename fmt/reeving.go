package rigfmt

import (
	"strings"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// lineLimit is the width at which a reeving line is broken, in code points; its
// comment is not counted.
const lineLimit = 100

// headTokens are the tokens before the first node: reeve, the rope and the colon.
const headTokens = 3

// indent gives the column of the first nodes of a group of reeving lines.
func (g *group) indent() int {
	column := 0
	for _, m := range g.members {
		if m.statement != nil {
			column = max(column, width(spaced(m.statement.Tokens[:headTokens]))+1)
		}
	}
	return column
}

// reeveRows joins a reeving line and breaks it before strokes. A line that ends in
// a comment keeps its break, and a comment line keeps its place.
func reeveRows(f *source.File, st *syntax.Statement, indent int) []row {
	w := &reeveWriter{indent: indent, line: pad(spaced(st.Tokens[:headTokens]), indent), empty: true}
	var piece []syntax.Token
	for i, t := range st.Tokens[headTokens:] {
		before := st.Tokens[headTokens+i-1]
		switch {
		case t.Kind == syntax.CommentToken && f.Line(before.Span.Start) == f.Line(t.Span.Start):
			piece = w.piece(piece)
			w.end(t.Text)
		case t.Kind == syntax.CommentToken:
			if !isStroke(piece) { // a stroke goes with its node, under the comment
				piece = w.piece(piece)
			}
			w.end("")
			w.rows = append(w.rows, row{comment: t.Text})
		case t.Kind == syntax.StrokeToken:
			piece = append(w.piece(piece), t)
		default:
			piece = append(piece, t)
		}
	}
	w.piece(piece)
	w.end(trailing(st))
	return w.rows
}

func isStroke(piece []syntax.Token) bool {
	return len(piece) == 1 && piece[0].Kind == syntax.StrokeToken
}

// reeveWriter gathers the rows of one reeving line.
type reeveWriter struct {
	rows   []row
	indent int
	// line is the row being filled; empty says that it has no piece yet.
	line  string
	empty bool
}

// piece adds a stroke with its node, or a part of it that a comment cuts off, and
// gives the emptied piece.
func (w *reeveWriter) piece(tokens []syntax.Token) []syntax.Token {
	if len(tokens) == 0 {
		return nil
	}
	text := spaced(tokens)
	if !w.empty && width(w.line)+1+width(text) > lineLimit && tokens[0].Kind == syntax.StrokeToken {
		w.end("")
	}
	if !w.empty {
		w.line += " "
	}
	w.line += text
	w.empty = false
	return tokens[:0]
}

// end ends the row with a comment, which may be empty. A row without pieces is none.
func (w *reeveWriter) end(comment string) {
	if !w.empty {
		w.rows = append(w.rows, row{w.line, comment})
		w.line, w.empty = strings.Repeat(" ", w.indent), true
	}
}
