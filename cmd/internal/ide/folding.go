package ide

import (
	"slices"

	"fairlead/lang/syntax"
)

// FoldSort says what a fold hides.
type FoldSort int

const (
	// RigFold is a rig, or house rules.
	RigFold FoldSort = iota
	// CommentFold is a block of comment lines.
	CommentFold
	// StatementFold is a statement on several lines.
	StatementFold
)

// Fold is a stretch of lines that can be shown as its first one. Lines count from 0.
type Fold struct {
	Sort        FoldSort
	First, Last int
}

// Folds gives what can be folded, in the order of the first lines.
func (d *Document) Folds() []Fold {
	list := slices.Concat(d.blocks(), d.comments(), d.longStatements())
	slices.SortStableFunc(list, func(a, b Fold) int { return a.First - b.First })
	return list
}

// blocks are the rigs and the house rules, each to its last statement.
func (d *Document) blocks() []Fold {
	var list []Fold
	begun := false
	for _, st := range d.Tree.Statements {
		switch st.Keyword.Text {
		case "rig", "policy":
			begun = true
			line := d.File.Line(st.Span.Start)
			list = append(list, Fold{RigFold, line, line})
			continue
		}
		if begun {
			list[len(list)-1].Last = d.File.Line(st.Span.End)
		}
	}
	return slices.DeleteFunc(list, Fold.flat)
}

func (f Fold) flat() bool { return f.First == f.Last }

// comments are comment lines one under another.
func (d *Document) comments() []Fold {
	var list []Fold
	for i, line := range d.Tree.Lines {
		if line.Statement != nil || len(line.Tokens) == 0 || line.Tokens[0].Kind != syntax.CommentToken {
			continue
		}
		if n := len(list); n > 0 && list[n-1].Last == i-1 {
			list[n-1].Last = i
			continue
		}
		list = append(list, Fold{CommentFold, i, i})
	}
	return slices.DeleteFunc(list, Fold.flat)
}

// longStatements are those on several lines.
func (d *Document) longStatements() []Fold {
	var list []Fold
	for _, st := range d.Tree.Statements {
		list = append(list, Fold{StatementFold, d.File.Line(st.Span.Start), d.File.Line(st.Span.End)})
	}
	return slices.DeleteFunc(list, Fold.flat)
}
