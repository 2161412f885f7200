package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/solve/report/page"
)

func TestWrapKeepsEveryWordAndTheWidth(t *testing.T) {
	text := "the rope is fast between grab and top, so the team cannot pull a single millimetre"
	lines := page.Wrap(text, 30)
	assert.Equal(t, text, strings.Join(lines, " "))
	for _, line := range lines {
		assert.LessOrEqual(t, page.Width(line), 30, line)
	}
	assert.Equal(t, []string{"a-word-wider-than-the-page", "b"}, page.Wrap("a-word-wider-than-the-page b", 10))
	assert.Equal(t, []string{""}, page.Wrap("", 10))
}

func TestWidthCountsTerminalColumns(t *testing.T) {
	assert.Equal(t, 3, page.Width("été"))
	assert.Equal(t, 3, page.Width("été"), "combining marks take no column")
	assert.Equal(t, 4, page.Width("滑車"), "wide letters take two")
	assert.Equal(t, "滑車  |", page.Left("滑車", 6)+"|")
}

func TestCleanLeavesNoTerminalCommand(t *testing.T) {
	assert.Equal(t, "a�[31mb c", page.Clean("a\x1b[31mb\tc"))
	assert.Equal(t, "x�y", page.Clean("x\u202ey"))
	assert.Equal(t, "滑車 ~ é", page.Clean("滑車 ~ é"))
}

func TestLinePutsTextsAtTheirColumns(t *testing.T) {
	var l page.Line
	l.Put(2, "滑車", page.Plain)
	l.PutEnding(9, "1/3", page.Strong)
	assert.Equal(t, 10, l.End())
	assert.Equal(t, "  滑車 1/3", l.String(page.Paint{}))
	assert.Equal(t, "  滑車 \x1b[1m1/3\x1b[22m", l.String(page.Colours()))
}
