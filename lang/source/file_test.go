package source

import (
	"strings"
	"testing"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestNames(t *testing.T) {
	assert.Equal(t, `rigs\a.rig`, New(`rigs\a.rig`, "").Name, "names are kept as given")
	assert.Equal(t, "x", New("a", "x").Text)
}

func TestLines(t *testing.T) {
	f := New("a.rig", "ab\ncd\r\n\n\re")
	spans := []Span{{0, 2}, {3, 5}, {7, 7}, {8, 10}}
	for line, want := range spans {
		assert.Equal(t, want, f.LineSpan(line))
		assert.Equal(t, line, f.Line(want.Start))
		assert.Equal(t, line, f.Line(want.End))
	}
	assert.Equal(t, 1, f.Line(6), "the line end belongs to its line")
	end := Span{Start: 10, End: 10}
	assert.Equal(t, end, f.LineSpan(-1))
	assert.Equal(t, end, f.LineSpan(4))
	assert.Equal(t, Span{}, New("a", "").LineSpan(0))
	assert.Equal(t, Span{Start: 0, End: 0}, New("a", "\r\n").LineSpan(0))
}

func TestPlacesOutsideAreBroughtInside(t *testing.T) {
	f := New("a.rig", "ab\nü")
	assert.Equal(t, 0, f.Line(-5))
	assert.Equal(t, 1, f.Line(99))
	assert.Equal(t, 1, f.Column(99))
	assert.Equal(t, "ü", f.Slice(Span{Start: 3, End: 99}))
	assert.Equal(t, "", f.Slice(Span{Start: 4, End: 2}))
	assert.Equal(t, "", f.Slice(Span{Start: 99, End: 100}))
}

func TestColumns(t *testing.T) {
	f := New("a.rig", "x\nü𝄞z")
	cases := []struct{ offset, column, character int }{{2, 0, 0}, {4, 1, 1}, {8, 2, 3}, {9, 3, 4}}
	for _, c := range cases {
		line, character := f.UTF16(c.offset)
		assert.Equal(t, 1, line)
		assert.Equal(t, c.character, character)
		assert.Equal(t, c.column, f.Column(c.offset))
	}
}

func TestTheMarkOfTheByteOrderTakesNoColumn(t *testing.T) {
	f := New("a.rig", "\ufeffü𝄞\n\ufeffx")
	cases := []struct{ offset, line, column, character int }{{0, 0, 0, 0}, {3, 0, 0, 0}, {5, 0, 1, 1}, {9, 0, 2, 3}, {13, 1, 1, 1}}
	for _, c := range cases {
		line, character := f.UTF16(c.offset)
		assert.Equal(t, c.line, line)
		assert.Equal(t, c.character, character)
		assert.Equal(t, c.column, f.Column(c.offset))
	}
}

func TestSpans(t *testing.T) {
	s := Span{Start: 3, End: 7}
	assert.Equal(t, 4, s.Len())
	assert.True(t, s.Contains(Span{Start: 3, End: 7}))
	assert.True(t, s.Contains(Span{Start: 7, End: 7}))
	assert.False(t, s.Contains(Span{Start: 2, End: 4}))
	assert.False(t, s.Contains(Span{Start: 6, End: 8}))
	assert.Equal(t, Span{Start: 1, End: 7}, s.To(Span{Start: 1, End: 2}))
	assert.Equal(t, Span{Start: 3, End: 9}, s.To(Span{Start: 8, End: 9}))
}

func TestPlaces(t *testing.T) {
	f := New("a.rig", "anchor head")
	assert.Equal(t, "head", f.At(Span{Start: 7, End: 11}).Text())
	assert.Equal(t, "", Place{}.Text())
}

// TestAnyOffset compares lines and columns with a count from the start of the text.
func TestAnyOffset(t *testing.T) {
	piece := rapid.SampledFrom([]string{"a", "ü", "𝄞", "\n", "\r\n", "\t", "\xff"})
	rapid.Check(t, func(r *rapid.T) {
		text := strings.Join(rapid.SliceOf(piece).Draw(r, "pieces"), "")
		f := New("a.rig", text)
		offset := rapid.IntRange(0, len(text)).Draw(r, "offset")
		for offset < len(text) && !utf8.RuneStart(text[offset]) {
			offset--
		}
		before := text[:offset]
		start := strings.LastIndexByte(before, '\n') + 1
		line, character := f.UTF16(offset)
		require.Equal(r, strings.Count(before, "\n"), line)
		require.Equal(r, line, f.Line(offset))
		require.Equal(r, utf8.RuneCountInString(before[start:]), f.Column(offset))
		require.Equal(r, len(utf16.Encode([]rune(before[start:]))), character)
		require.LessOrEqual(r, f.LineSpan(line).Start, offset)
	})
}
