package resolve

import (
	"strings"
	"unicode/utf8"

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
	whole := l.body.Nodes[0].Span.To(l.body.Nodes[len(nodes)-1].Span)
	offer(d, "turn the line of "+clipped(l.line.Name)+" round", l.replace(whole, l.turned(whole)))
}

// turned gives the text of the line's nodes and strokes from the last to the
// first, each stroke flipped. A node keeps its parentheses and the comments that
// follow it, and where the line was broken it is broken again.
func (l *ropeWork) turned(whole source.Span) string {
	var b strings.Builder
	newLine := newLineOf(l.file) + l.indent(whole)
	comments := l.comments()
	for k := len(l.body.Nodes) - 1; k >= 0; k-- {
		b.WriteString(l.file.Slice(l.body.Nodes[k].Span))
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
		gap := source.Span{Start: l.body.Nodes[k-1].Span.End, End: l.body.Nodes[k].Span.Start}
		if broken || strings.Contains(l.file.Slice(gap), "\n") {
			b.WriteString(newLine)
		} else {
			b.WriteString(" ")
		}
		b.WriteString(flipped(l.body.Strokes[k-1].Kind))
		b.WriteString(" ")
	}
	return b.String()
}

// comments gives for each node the comments between it and the next one.
func (l *ropeWork) comments() [][]string {
	nodes := l.body.Nodes
	after := make([][]string, len(nodes))
	k := -1 // the last node that begins before the token
	for _, t := range l.of.Tokens {
		for k+1 < len(nodes) && nodes[k+1].Span.Start <= t.Span.Start {
			k++
		}
		if t.Kind == syntax.CommentToken && k >= 0 && k+1 < len(nodes) {
			after[k] = append(after[k], strings.TrimRight(t.Text, " \t\r"))
		}
	}
	return after
}

// indent gives the blanks that a continued line begins with: those of the first
// one, or as many as put it under the first node.
func (l *ropeWork) indent(whole source.Span) string {
	text := l.file.Slice(whole)
	if _, rest, broken := strings.Cut(text, "\n"); broken {
		return rest[:len(rest)-len(strings.TrimLeft(rest, " \t"))]
	}
	start := l.file.LineSpan(l.file.Line(whole.Start)).Start
	return strings.Repeat(" ", utf8.RuneCountInString(l.file.Slice(source.Span{Start: start, End: whole.Start})))
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
