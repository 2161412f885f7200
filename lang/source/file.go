package source

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// File is one text under one name. It never changes after New.
type File struct {
	// Name is the path as the user gave it; lang/load writes it with forward slashes.
	Name string
	// Text is the whole content, untouched: BOM, CRLF and all. Of notes, everything but
	// the notation is blank.
	Text string
	// Whole is what the file holds: Text, but for notes.
	Whole string

	lines []int // byte offset at which each line starts; lines[0] == 0
	of    *File // what this is a copy of; nil for a file of its own
	home  Place // where the copy is brought in
}

// New makes a file of a name and its text.
func New(name, text string) *File { return NewNotes(name, text, text) }

// NewNotes makes a file of notes: text is as long as whole, with everything blank that is
// no notation.
func NewNotes(name, text, whole string) *File {
	f := &File{Name: name, Text: text, Whole: whole, lines: []int{0}}
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' {
			f.lines = append(f.lines, i+1)
		}
	}
	return f
}

// Span is a half-open range of byte offsets in one file: Start is in it, End is not.
type Span struct {
	Start, End int
}

// Len gives the number of bytes in the span.
func (s Span) Len() int { return s.End - s.Start }

// Contains says whether t lies wholly inside s.
func (s Span) Contains(t Span) bool { return s.Start <= t.Start && t.End <= s.End }

// To gives the smallest span that holds both s and t.
func (s Span) To(t Span) Span {
	return Span{Start: min(s.Start, t.Start), End: max(s.End, t.End)}
}

// Place is a span in a named file. The zero Place is nowhere.
type Place struct {
	File *File
	Span Span
}

// At makes the place of a span in f.
func (f *File) At(s Span) Place { return Place{File: f, Span: s} }

// Text gives the bytes at the place; empty for the zero Place.
func (p Place) Text() string {
	if p.File == nil {
		return ""
	}
	return p.File.Slice(p.Span)
}

// Slice gives the bytes of a span, which is cut to the file if it reaches over its ends.
func (f *File) Slice(s Span) string {
	start, end := f.clamp(s.Start), f.clamp(s.End)
	if start >= end {
		return ""
	}
	return f.Text[start:end]
}

// Line gives the 0-based number of the line that holds the byte offset.
func (f *File) Line(offset int) int {
	offset = f.clamp(offset)
	return sort.Search(len(f.lines), func(i int) bool { return f.lines[i] > offset }) - 1
}

// LineSpan gives the span of a 0-based line, its line end not included.
func (f *File) LineSpan(line int) Span {
	if line < 0 || line >= len(f.lines) {
		return Span{Start: len(f.Text), End: len(f.Text)}
	}
	end := len(f.Text)
	if line+1 < len(f.lines) {
		end = f.lines[line+1] - 1
		if end > f.lines[line] && f.Text[end-1] == '\r' {
			end--
		}
	}
	return Span{Start: f.lines[line], End: end}
}

// Column gives the 0-based column of a byte offset in its line, counted in code points.
// A mark of the byte order at the start of the file takes none, as in editors.
func (f *File) Column(offset int) int {
	_, before := f.lineUpTo(offset)
	return utf8.RuneCountInString(before)
}

// UTF16 gives the 0-based line and the column in UTF-16 code units of a byte
// offset, as editors and the machine output count: a mark of the byte order is not
// counted.
func (f *File) UTF16(offset int) (line, character int) {
	line, before := f.lineUpTo(offset)
	for _, r := range before {
		character++
		if r > 0xFFFF {
			character++
		}
	}
	return line, character
}

// lineUpTo gives the line of an offset and what stands before it on the line.
func (f *File) lineUpTo(offset int) (line int, before string) {
	offset = f.clamp(offset)
	line = f.Line(offset)
	before = f.Text[f.lines[line]:offset]
	if line == 0 {
		before = strings.TrimPrefix(before, "\ufeff")
	}
	return line, before
}

func (f *File) clamp(offset int) int {
	return max(0, min(offset, len(f.Text)))
}
