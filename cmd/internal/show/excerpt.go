package show

import (
	"strings"
	"unicode/utf8"

	"fairlead/lang/source"
	"fairlead/solve/report/page"
)

// excerpt is a source line cut to the page, its culprit in brackets.
type excerpt struct{ before, culprit, after string }

// elision stands for what is left out of a line.
const elision = "…"

// elisions is what stands on both sides of the culprit at the least: an elision with a
// space; frame adds its brackets.
const (
	elisions = 2 * 2
	frame    = 2 + elisions
)

// excerptOf gives the line on which a place begins, in at most the given
// columns. What is missing at an empty place is shown as "[ ]".
func excerptOf(p source.Place, columns int) excerpt {
	f := p.File
	line := f.LineSpan(f.Line(p.Span.Start))
	start := min(p.Span.Start, line.End)
	end := max(start, min(p.Span.End, line.End))
	before := strings.TrimLeft(page.Clean(ends(f.Slice(source.Span{Start: line.Start, End: start}))), " \uFEFF")
	culprit := page.Clean(ends(f.Slice(source.Span{Start: start, End: end})))
	after := strings.TrimRight(page.Clean(ends(f.Slice(source.Span{Start: end, End: line.End}))), " ")
	if p.Span.End > line.End && p.Span.Len() > 0 {
		culprit = strings.TrimRight(culprit, " ") + " " + elision
	}
	if culprit == "" {
		culprit = " "
		before, after = spaced(before, after)
	}
	culprit = "[" + shorten(culprit, columns-frame) + "]"
	return fit(before, culprit, after, columns)
}

// near is how many bytes at the two ends of a text can matter for a line of the
// page, with room to spare for letters of many bytes.
const near = 1000

// ends leaves out the middle of a text of which the page can show the ends only,
// so that a huge line with many findings is not measured whole for each.
func ends(text string) string {
	if len(text) <= 3*near {
		return text
	}
	head, tail := near, len(text)-near
	for !utf8.RuneStart(text[head]) {
		head--
	}
	for !utf8.RuneStart(text[tail]) {
		tail++
	}
	return text[:head] + " " + elision + " " + text[tail:]
}

// spaced sets a gap between what is missing and the words beside it.
func spaced(before, after string) (string, string) {
	if before != "" && !strings.HasSuffix(before, " ") {
		before += " "
	}
	if after != "" && !strings.HasPrefix(after, " ") {
		after = " " + after
	}
	return before, after
}

// shorten leaves out the middle of a text that is too wide.
func shorten(text string, columns int) string {
	if page.Width(text) <= columns {
		return text
	}
	words := strings.SplitAfter(text, " ")
	i, j := 0, len(words)
	join := func(i, j int) string {
		return strings.Join(words[:i], "") + elision + " " + strings.Join(words[j:], "")
	}
	for i < j {
		head, tail := i+1, j
		if i > len(words)-j { // the end has fewer words so far
			head, tail = i, j-1
		}
		if page.Width(join(head, tail)) > columns {
			break
		}
		i, j = head, tail
	}
	if i == 0 {
		return cut(text, columns)
	}
	return join(i, j)
}

// cut keeps the beginning of a single word that is wider than the page.
func cut(word string, columns int) string {
	width := page.Width(elision)
	for i, r := range word {
		if width += page.Width(string(r)); width > columns {
			return word[:i] + elision
		}
	}
	return word
}

// fit leaves out words around the culprit until the line fits: the statement's
// first words and what stands nearest to the culprit are kept.
func fit(before, culprit, after string, columns int) excerpt {
	if page.Width(before+culprit+after) <= columns {
		return excerpt{before, culprit, after}
	}
	room := columns - page.Width(culprit)
	head, rest := opening(before)
	if page.Width(head) > min(room*2/3, room-elisions) {
		head, rest = "", before
	}
	room -= page.Width(head)
	left, right := strings.SplitAfter(rest, " "), strings.SplitAfter(after, " ")
	i, j := len(left), 0
	for grown := true; grown; {
		grown = false
		if j < len(right) && around(left[i:], right[:j+1], i, len(right)-j-1) <= room {
			j, grown = j+1, true
		}
		if i > 0 && around(left[i-1:], right[:j], i-1, len(right)-j) <= room {
			i, grown = i-1, true
		}
	}
	x := excerpt{head + strings.Join(left[i:], ""), culprit, strings.Join(right[:j], "")}
	if strings.TrimSpace(strings.Join(left[:i], "")) != "" {
		x.before = head + elision + " " + strings.Join(left[i:], "")
	}
	if j < len(right) {
		x.after = strings.TrimRight(x.after, " ") + " " + elision
	}
	return x
}

// around gives the width of the words kept on both sides, with the elisions that
// stand for the words left out.
func around(left, right []string, leftOut, rightOut int) int {
	width := page.Width(strings.Join(left, "")) + page.Width(strings.Join(right, ""))
	if leftOut > 0 {
		width += page.Width(elision) + 1
	}
	if rightOut > 0 {
		width += page.Width(elision) + 1
	}
	return width
}

// opening cuts off the words that say what the statement is: up to the colon of
// a reeving line, else its first two.
func opening(text string) (head, rest string) {
	if i := strings.Index(text, ": "); i >= 0 {
		return text[:i+2], text[i+2:]
	}
	words := strings.SplitAfterN(text, " ", 3)
	if len(words) < 3 {
		return "", text
	}
	return words[0] + words[1], words[2]
}
