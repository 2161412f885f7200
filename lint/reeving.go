package lint

import (
	"cmp"
	"slices"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// TakeOut gives the edits that take a node out of its reeving line, together with
// one of the two strokes beside it. Comments and line breaks stay.
func TakeOut(r *model.Rope, node, stroke int) []diag.Edit {
	return takeOut(r.Place.File, r.Nodes[node].Place.Span, r.StrokePlaces[stroke].Span)
}

// SetIn gives the edit that sets a node into a strand. The rope runs to it and on
// from it as the strand did.
func SetIn(r *model.Rope, stroke int, name string) diag.Edit {
	return insertion(r.Nodes[stroke].Place, " "+r.Strokes[stroke].String()+" "+name)
}

// LetHold gives the edit that makes a bend let the rope run one way only, so that
// it does not run back toward the first node of its run.
func LetHold(r *model.Rope, node int) diag.Edit { return addClause(r.Nodes[node], "holds") }

// Turn gives the edit that makes a grip or capture hold the other side of its run,
// and what to do in words: "write (holds team)". ok is false if the notation has no
// way to say it.
func (p *Pass) Turn(r *model.Rope, node int) (edit diag.Edit, how string, ok bool) {
	n := r.Nodes[node]
	first, last, open := r.Run(node)
	wanted, other := last, first
	if n.Holds == model.LastSide {
		wanted, other = first, last
	}
	says := "holds"
	switch {
	case n.Holds == model.NoSide, !open:
		return edit, "", false
	case r.Nodes[wanted].Part != nil && r.Nodes[wanted].Part != r.Nodes[other].Part:
		says += " " + r.Nodes[wanted].Part.Name
	case wanted == last: // only the end of the first node can stay unnamed
		return edit, "", false
	}
	written := p.clause(r, node, "holds")
	of := n.Part.Values
	switch {
	case written == nil:
		return addClause(n, says), "write (" + Clipped(says) + ")", true
	case wanted == first && of.HoldsEnd == nil && (of.Holds || n.Part.Kind.IsGrip()):
		// it holds so unless told otherwise
		return p.dropClause(r, node, *written), "take out " + Clipped(r.Place.File.Slice(written.Span)), true
	}
	return diag.Edit{Place: r.Place.File.At(written.Span), NewText: says}, "write (" + Clipped(says) + ")", true
}

// clause gives a clause written at a node; nil if there is none.
func (p *Pass) clause(r *model.Rope, node int, word string) *syntax.ClauseUse {
	if r.Place.File != p.file.File { // it is copied from elsewhere
		return nil
	}
	for _, s := range p.file.Tree.Statements {
		reeve, ok := s.Body.(*syntax.Reeve)
		if !ok || s.Span != r.Place.Span || node >= len(reeve.Nodes) {
			continue
		}
		for i := range reeve.Nodes[node].Clauses {
			if c := &reeve.Nodes[node].Clauses[i]; c.Word.Text == word {
				return c
			}
		}
	}
	return nil
}

// addClause adds a clause to a node, in its parentheses if it has some.
func addClause(n model.Node, clause string) diag.Edit {
	inside := n.Place
	if n.Place.Span.End == n.NamePlace.Span.End {
		return insertion(n.NamePlace, " ("+clause+")")
	}
	inside.Span.End-- // before the closing parenthesis
	return insertion(inside, " "+clause)
}

// dropClause takes a clause out of a node, with its parentheses if nothing else
// stands in them.
func (p *Pass) dropClause(r *model.Rope, node int, c syntax.ClauseUse) diag.Edit {
	n := r.Nodes[node]
	file := r.Place.File
	within := source.Span{Start: n.NamePlace.Span.End, End: n.Place.Span.End}
	left := file.Slice(source.Span{Start: within.Start, End: c.Span.Start}) +
		file.Slice(source.Span{Start: c.Span.End, End: within.End})
	if strings.Trim(left, " \t()") == "" {
		return diag.Edit{Place: file.At(within)}
	}
	cut := c.Span
	for cut.Start > within.Start && isBlank(file.Text[cut.Start-1]) {
		cut.Start--
	}
	for file.Text[cut.Start-1] == '(' && isBlank(file.Text[cut.End]) {
		cut.End++
	}
	return diag.Edit{Place: file.At(cut)}
}

// insertion gives the edit that writes text right after a place.
func insertion(after source.Place, text string) diag.Edit {
	end := after.Span.End
	return diag.Edit{Place: after.File.At(source.Span{Start: end, End: end}), NewText: text}
}

// takeOut gives the edits that take spans of text out of a file, each with the
// blanks that parted it from what stands before it, or at the start of a line from
// what follows. A line of which nothing is left goes too.
func takeOut(f *source.File, spans ...source.Span) []diag.Edit {
	var edits []diag.Edit
	for _, span := range joined(f, spans) {
		edits = append(edits, diag.Edit{Place: f.At(widened(f, span))})
	}
	return edits
}

// takeOutStatement gives the edits that take a whole statement out of a file, with
// the blank line before it if it would be left beside another one or at the end.
func takeOutStatement(f *source.File, s source.Span) []diag.Edit {
	edits := takeOut(f, s)
	line := f.Line(s.Start)
	blank := func(i int) bool { return strings.TrimSpace(f.Slice(f.LineSpan(i))) == "" }
	if after := f.Line(edits[0].Place.Span.End); line > 0 && blank(line-1) && blank(after) {
		edits[0].Place.Span.Start = f.LineSpan(line - 1).Start
	}
	return edits
}

// joined sorts spans and joins those that only blanks part.
func joined(f *source.File, spans []source.Span) []source.Span {
	var list []source.Span
	slices.SortFunc(spans, func(a, b source.Span) int { return cmp.Compare(a.Start, b.Start) })
	for _, s := range spans {
		if n := len(list); n > 0 {
			gap := source.Span{Start: list[n-1].End, End: s.Start}
			if strings.Trim(f.Slice(gap), " \t") == "" {
				list[n-1] = list[n-1].To(s)
				continue
			}
		}
		list = append(list, s)
	}
	return list
}

// widened adds to a span the blanks beside it that are not needed without it.
func widened(f *source.File, s source.Span) source.Span {
	start, end := s.Start, s.End
	for start > 0 && isBlank(f.Text[start-1]) {
		start--
	}
	for end < len(f.Text) && isBlank(f.Text[end]) {
		end++
	}
	startsLine := start == 0 || f.Text[start-1] == '\n'
	switch {
	case !startsLine:
		return source.Span{Start: start, End: s.End}
	case end == len(f.Text):
		return source.Span{Start: start, End: end}
	case f.Text[end] == '\n':
		return source.Span{Start: start, End: end + 1}
	case strings.HasPrefix(f.Text[end:], "\r\n"):
		return source.Span{Start: start, End: end + 2}
	}
	return source.Span{Start: s.Start, End: end}
}

func isBlank(b byte) bool { return b == ' ' || b == '\t' }
