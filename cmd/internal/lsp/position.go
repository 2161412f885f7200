package lsp

import (
	"sort"
	"strings"
	"unicode/utf8"

	"go.lsp.dev/protocol"

	"fairlead/lang/source"
)

// lines finds positions of the protocol in a text. A line ends with a line feed, a
// carriage return, or both, as the protocol has it.
type lines struct {
	text   string
	starts []int
	// wide says that columns count UTF-16 code units, not bytes.
	wide bool
}

func linesOf(text string, wide bool) *lines {
	l := &lines{text: text, starts: []int{0}, wide: wide}
	for at := 0; ; {
		n := strings.IndexAny(text[at:], "\r\n")
		if n < 0 {
			return l
		}
		at += n + 1
		if text[at-1] == '\r' && strings.HasPrefix(text[at:], "\n") {
			at++
		}
		l.starts = append(l.starts, at)
	}
}

// end gives the offset at which the text of a line ends, its line end not included.
func (l *lines) end(line int) int {
	end := len(l.text)
	if line+1 < len(l.starts) {
		end = l.starts[line+1]
	}
	return l.starts[line] + len(strings.TrimRight(l.text[l.starts[line]:end], "\r\n"))
}

// offset gives the byte offset of a position. One behind the end of its line means that
// end, one behind the last line the end of the text.
func (l *lines) offset(p protocol.Position) int {
	if int64(p.Line) >= int64(len(l.starts)) {
		return len(l.text)
	}
	start, end := l.starts[p.Line], l.end(int(p.Line))
	if !l.wide {
		at := int(min(int64(start)+int64(p.Character), int64(end)))
		for at > start && at < end && !utf8.RuneStart(l.text[at]) {
			at--
		}
		return at
	}
	units := int64(p.Character)
	for i, r := range l.text[start:end] {
		if units -= int64(width(r)); units < 0 {
			return start + i
		}
	}
	return end
}

// position gives the position of a byte offset.
func (l *lines) position(offset int) protocol.Position {
	offset = max(0, min(offset, len(l.text)))
	line := sort.Search(len(l.starts), func(i int) bool { return l.starts[i] > offset }) - 1
	before := l.text[l.starts[line]:offset]
	column := len(before)
	if l.wide {
		column = 0
		for _, r := range before {
			column += width(r)
		}
	}
	return protocol.Position{Line: uint32(line), Character: uint32(column)}
}

// span gives the bytes of a range. One that is written backward is empty.
func (l *lines) span(r protocol.Range) source.Span {
	start, end := l.offset(r.Start), l.offset(r.End)
	return source.Span{Start: start, End: max(start, end)}
}

func (l *lines) rangeOf(s source.Span) protocol.Range {
	return protocol.Range{Start: l.position(s.Start), End: l.position(s.End)}
}

// width gives the UTF-16 code units of a character.
func width(r rune) int {
	if r > 0xFFFF {
		return 2
	}
	return 1
}
