package syntax

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// The marks that stand around the place of an expected fault in a test's text.
const openMark, closeMark = "⟦", "⟧"

// unmark gives a text without its marks and the spans between them, in order.
func unmark(t testing.TB, marked string) (text string, spans []source.Span) {
	t.Helper()
	var b strings.Builder
	start := -1
	for marked != "" {
		switch {
		case strings.HasPrefix(marked, openMark):
			require.Equal(t, -1, start, "marks do not nest")
			start, marked = b.Len(), marked[len(openMark):]
		case strings.HasPrefix(marked, closeMark):
			require.NotEqual(t, -1, start, "a mark closes that was not opened")
			spans = append(spans, source.Span{Start: start, End: b.Len()})
			start, marked = -1, marked[len(closeMark):]
		default:
			b.WriteByte(marked[0])
			marked = marked[1:]
		}
	}
	require.Equal(t, -1, start, "a mark is not closed")
	return b.String(), spans
}

// faultCase is a text whose every fault is marked, with what is said of each.
type faultCase struct {
	text string
	// want has "rule: message" for each mark, in order.
	want []string
	// reads is what is still read of the text, a line for each statement that is
	// not bad; not checked if empty.
	reads string
}

// checkFaults parses a marked text. A missing fault, a surplus one and one at
// another place all fail.
func checkFaults(t *testing.T, c faultCase) {
	t.Helper()
	text, spans := unmark(t, c.text)
	require.Len(t, spans, len(c.want), "one mark for each fault")
	tree := Parse(source.New("case.rig", text))
	checkTree(t, tree)
	var want, got []string
	for i, w := range c.want {
		want = append(want, fmt.Sprintf("%d-%d %s", spans[i].Start, spans[i].End, w))
	}
	for _, p := range tree.Problems {
		got = append(got, fmt.Sprintf("%d-%d %s: %s", p.Place.Span.Start, p.Place.Span.End, p.Rule, p.Message))
	}
	assert.Equal(t, want, got, "in %q", text)
	if c.reads != "" {
		assert.Equal(t, c.reads, dumpTree(tree))
	}
}

func runFaults(t *testing.T, cases []faultCase) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.text, func(t *testing.T) { checkFaults(t, c) })
	}
}

// faultTexts are the texts of all tables of faults, unmarked: seeds for fuzzing.
func faultTexts(t testing.TB) []string {
	var texts []string
	for _, table := range [][]faultCase{characterFaults, statementFaults, clauseFaults, unitFaults, reeveFaults, nodeFaults, claimFaults, otherFaults} {
		for _, c := range table {
			text, _ := unmark(t, c.text)
			texts = append(texts, text)
		}
	}
	return texts
}
