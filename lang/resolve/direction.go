package resolve

import (
	"strings"
	"unicode/utf8"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// checkDirection reports a line that begins at its haulers and ends elsewhere:
// its grips, read from the loaded end, would all hold the wrong way.
func (l *ropeWork) checkDirection() {
	nodes := l.rope.Nodes
	if l.rope.Loop || len(nodes) < 2 || len(l.rope.Strokes) != len(nodes)-1 {
		return
	}
	first, last := nodes[0].Part, nodes[len(nodes)-1].Part
	if first == nil || first.Kind != model.Hauler || last != nil && last.Kind == model.Hauler {
		return
	}
	if last == nil && !l.body.Nodes[len(nodes)-1].IsTail() {
		return
	}
	d := l.fault(reevedBackward, 0,
		"%s stands first, but a rope is written from its loaded end to its pulled end", first.Name)
	related(d, l.file.At(l.body.Rope.Span), "the reeving line of %s", l.line.Name)
	edit := Turn(l.file, l.of.Statement, l.body)
	offer(d, "turn the line of "+clipped(l.line.Name)+" round", edit)
}

// Turn gives the edit that writes a reeving line from its last node to its first, each
// stroke flipped. A node keeps its parentheses and the comments that follow it, and
// where the line was broken it is broken again. The line is no loop.
func Turn(f *source.File, st *syntax.Statement, line *syntax.Reeve) diag.Edit {
	t := &turning{file: f, statement: st, Reeve: line}
	whole := line.Nodes[0].Span.To(line.Nodes[len(line.Nodes)-1].Span)
	return diag.Edit{Place: f.At(whole), NewText: t.turned(whole)}
}

// turning is a reeving line that is turned round.
type turning struct {
	*syntax.Reeve
	file      *source.File
	statement *syntax.Statement
}

// turned gives the text of the line's nodes and strokes from the last to the first.
func (t *turning) turned(whole source.Span) string {
	var b strings.Builder
	newLine := newLineOf(t.file) + t.indent(whole)
	comments := t.comments()
	for k := len(t.Nodes) - 1; k >= 0; k-- {
		b.WriteString(t.file.Slice(t.Nodes[k].Span))
		broken := false
		for n, comment := range comments[k] {
			if n > 0 {
				b.WriteString(newLine)
			} else {
				b.WriteString("  ")
			}
			b.WriteString(comment)
			broken = true
		}
		if k == 0 { // only a comment can follow on the line, which the last one may join
			break
		}
		gap := source.Span{Start: t.Nodes[k-1].Span.End, End: t.Nodes[k].Span.Start}
		if broken || strings.Contains(t.file.Slice(gap), "\n") {
			b.WriteString(newLine)
		} else {
			b.WriteString(" ")
		}
		b.WriteString(flipped(t.Strokes[k-1].Kind))
		b.WriteString(" ")
	}
	return b.String()
}

// comments gives for each node the comments between it and the next one.
func (t *turning) comments() [][]string {
	after := make([][]string, len(t.Nodes))
	k := -1 // the last node that begins before the token
	for _, token := range t.statement.Tokens {
		for k+1 < len(t.Nodes) && t.Nodes[k+1].Span.Start <= token.Span.Start {
			k++
		}
		if token.Kind == syntax.CommentToken && k >= 0 && k+1 < len(t.Nodes) {
			after[k] = append(after[k], strings.TrimRight(token.Text, " \t\r"))
		}
	}
	return after
}

// indent gives the blanks that a continued line begins with: those of the first
// one, or as many as put it under the first node.
func (t *turning) indent(whole source.Span) string {
	text := t.file.Slice(whole)
	if _, rest, broken := strings.Cut(text, "\n"); broken {
		return rest[:len(rest)-len(strings.TrimLeft(rest, " \t"))]
	}
	start := t.file.LineSpan(t.file.Line(whole.Start)).Start
	return strings.Repeat(" ", utf8.RuneCountInString(t.file.Slice(source.Span{Start: start, End: whole.Start})))
}

// flipped gives the stroke of the way back.
func flipped(s syntax.StrokeKind) string {
	switch s {
	case syntax.Up:
		return string(rune(syntax.Down))
	case syntax.Down:
		return string(rune(syntax.Up))
	}
	return string(rune(s))
}
