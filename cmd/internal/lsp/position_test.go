package lsp

import (
	"math/rand"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.lsp.dev/protocol"
)

func TestPositions(t *testing.T) {
	const text = "aä\r\n🧗b\rc\n\n"
	at := func(line, column uint32) protocol.Position { return protocol.Position{Line: line, Character: column} }
	wide, narrow := linesOf(text, true), linesOf(text, false)
	for _, c := range []struct {
		p            protocol.Position
		wide, narrow int
	}{
		{at(0, 0), 0, 0}, {at(0, 1), 1, 1}, {at(0, 2), 3, 1}, {at(0, 3), 3, 3}, {at(0, 99), 3, 3},
		{at(1, 0), 5, 5}, {at(1, 1), 5, 5}, {at(1, 2), 9, 5}, {at(1, 3), 10, 5}, {at(1, 5), 10, 10},
		{at(2, 0), 11, 11}, {at(2, 1), 12, 12}, {at(3, 0), 13, 13}, {at(3, 7), 13, 13}, {at(4, 0), 14, 14},
		{at(5, 0), 14, 14}, {at(4294967295, 4294967295), 14, 14},
	} {
		assert.Equal(t, c.wide, wide.offset(c.p), "UTF-16 %v", c.p)
		assert.Equal(t, c.narrow, narrow.offset(c.p), "UTF-8 %v", c.p)
	}
	assert.Equal(t, at(1, 2), wide.position(9))
	assert.Equal(t, at(1, 4), narrow.position(9))
	assert.Equal(t, at(4, 0), wide.position(99))
	backward := wide.span(protocol.Range{Start: at(2, 1), End: at(0, 1)})
	assert.Equal(t, 0, backward.Len())
}

// randomText writes characters of all widths and line ends of all kinds.
func randomText(dice *rand.Rand, n int) string {
	pieces := []string{"a", "ä", "の", "🧗", " ", "\n", "\r\n", "\r", "/", "e\u0301", "pulley top\n"}
	var b strings.Builder
	for range n {
		b.WriteString(pieces[dice.Intn(len(pieces))])
	}
	return b.String()
}

// TestPositionsAreThoseOfAnEditor compares with a slow way to count.
func TestPositionsAreThoseOfAnEditor(t *testing.T) {
	dice := rand.New(rand.NewSource(3))
	for range 300 {
		text := randomText(dice, dice.Intn(40))
		for offset := range text + "\x00" {
			before := text[:offset]
			if strings.HasSuffix(before, "\r") && strings.HasPrefix(text[offset:], "\n") {
				continue // inside a line end
			}
			unix := strings.ReplaceAll(strings.ReplaceAll(before, "\r\n", "\n"), "\r", "\n")
			line := strings.Count(unix, "\n")
			rest := unix[strings.LastIndex(unix, "\n")+1:]
			for _, wide := range []bool{true, false} {
				column := len(rest)
				if wide {
					column = len(utf16.Encode([]rune(rest)))
				}
				want := protocol.Position{Line: uint32(line), Character: uint32(column)}
				l := linesOf(text, wide)
				require.Equal(t, want, l.position(offset), "%q at %d", text, offset)
				require.Equal(t, offset, l.offset(want), "%q at %v", text, want)
			}
		}
	}
}
