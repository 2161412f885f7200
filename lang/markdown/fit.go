package markdown

import (
	"strings"

	"fairlead/lang/source"
)

// Fit turns an edit of Text, which is an edit of notation, into one of the document: new
// lines get what the document puts before the lines of their block. Ok is false where
// the edit reaches out of one block.
func (n *Notes) Fit(span source.Span, newText string) (fitted source.Span, text string, ok bool) {
	for _, b := range n.Blocks {
		if b.Span.Contains(span) {
			return n.fit(b, span, newText)
		}
	}
	return span, newText, false
}

// fit fits an edit into a block.
func (n *Notes) fit(b Block, span source.Span, newText string) (source.Span, string, bool) {
	if closes := n.Whole[:span.Start]; span.Start == b.Span.End && !strings.HasSuffix(closes, "\n") {
		return span, newText, false // the document ends in an unfinished line
	}
	atStart := span.Start == n.lineStart(span.Start)
	newText = unmasked(newText, b.Prefix)
	text := prefixed(newText, b.Prefix, atStart && (span.Len() > 0 || strings.HasSuffix(newText, "\n")))
	if !atStart && strings.HasSuffix(newText, "\n") && span.End != n.lineStart(span.End) {
		text += b.Prefix // the rest of the line begins a line now
	}
	return span, text, true
}

// unmasked takes from the lines after the first the blanks that stand for the prefix in
// Text, from which the indent of new lines is taken.
func unmasked(text, prefix string) string {
	first, rest, several := strings.Cut(text, "\n")
	if !several {
		return text
	}
	lines := strings.SplitAfter(rest, "\n")
	for i, line := range lines {
		lines[i] = strings.TrimPrefix(line, strings.Repeat(" ", len(prefix)))
	}
	return first + "\n" + strings.Join(lines, "")
}

// prefixed puts the prefix before every line of a text but an empty last one, and before
// the first one only if it begins a line of the document.
func prefixed(text, prefix string, first bool) string {
	if prefix == "" || text == "" {
		return text
	}
	lines := strings.SplitAfter(text, "\n")
	for i, line := range lines {
		switch {
		case i == 0 && !first || line == "":
		case strings.TrimRight(line, "\r\n") == "":
			lines[i] = strings.TrimRight(prefix, " \t") + line
		default:
			lines[i] = prefix + line
		}
	}
	return strings.Join(lines, "")
}

// Content gives the notation of a block as a text of its own.
func (n *Notes) Content(b Block) string {
	var out strings.Builder
	for _, line := range b.Lines {
		out.WriteString(n.Whole[line.Start:line.End])
	}
	return out.String()
}

// Replace gives the document with new notation in its blocks, one text for each.
// Everything else stays as it is, to the byte.
func (n *Notes) Replace(contents []string) string {
	var out strings.Builder
	at := 0
	for i, b := range n.Blocks {
		if n.Content(b) == contents[i] {
			continue
		}
		out.WriteString(n.Whole[at:b.Span.Start])
		out.WriteString(prefixed(contents[i], b.Prefix, true))
		at = b.Span.End
	}
	out.WriteString(n.Whole[at:])
	return out.String()
}
