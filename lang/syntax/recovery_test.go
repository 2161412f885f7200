package syntax

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
)

func TestGluedStrokesAreAdviceWithAFix(t *testing.T) {
	text, spans := unmark(t, "reeve long: litter⟦/grab /top \\\n runner~⟧ team # x")
	tree := parse(t, text)
	require.Len(t, tree.Problems, 1, "one for the whole line")
	p := tree.Problems[0]
	assert.Equal(t, RuleGluedStroke, p.Rule)
	assert.Equal(t, diag.Advice, p.Severity)
	assert.Equal(t, spans[0], p.Place.Span)
	assert.Equal(t, "3 strokes of long read better with a space on both sides", p.Message)
	require.Len(t, p.Fixes, 1)
	assert.False(t, tree.Statements[0].Faulty, "advice leaves a statement whole")
	mended := diag.Apply(tree.File, p.Fixes[0].Edits)
	assert.Equal(t, "reeve long: litter / grab / top \\\n runner ~ team # x", mended)
	assert.Empty(t, parse(t, mended).Problems)
}

func TestStrokesAtLineEndsAreNotGlued(t *testing.T) {
	for _, text := range []string{"reeve a: b /\nc", "reeve a: b\n/ c", "reeve a: b\r\n/\tc", "reeve a: b /\r\nc"} {
		assert.Empty(t, parse(t, text).Problems, "in %q", text)
	}
}

func TestRepeatedClauseNamesTheFirst(t *testing.T) {
	tree := parse(t, "pulley top on head strength 1 kN on litter strength 2 kN")
	require.Len(t, tree.Problems, 2)
	assert.Equal(t, "head", tree.Problems[0].Related[0].Place.Text())
	assert.Equal(t, "strength", tree.Problems[1].Related[0].Place.Text())
	assert.Equal(t, strings.Index(tree.File.Text, "strength"), tree.Problems[1].Related[0].Place.Span.Start)
	assert.Equal(t, "top", tree.Problems[1].Subject)
}

func TestBadStatementsKeepTheirNames(t *testing.T) {
	tree := parse(t, "reeve long: litter / / top (holds)\npuley runner on grab")
	var got []string
	for _, st := range tree.Statements {
		bad, is := st.Body.(*Bad)
		require.True(t, is)
		assert.True(t, st.Faulty)
		got = append(got, dumpWords("", bad.Names))
	}
	assert.Equal(t, []string{" long litter top", " puley runner grab"}, got)
	assert.Equal(t, "reeve", tree.Statements[0].Keyword.Text)
}

func TestFaultyTellsWhichStatements(t *testing.T) {
	tree := parse(t, "anchor a\npulley b strength 3\nanchor \x01c\nreeve x: a (hodls) / b\nreeve x: a/b\nanchor d # \x01")
	var faulty []bool
	for _, st := range tree.Statements {
		faulty = append(faulty, st.Faulty)
	}
	assert.Equal(t, []bool{false, true, true, true, false, false}, faulty)
}

func TestWordsAreNormalisedAndBytesKept(t *testing.T) {
	const decomposed, composed = "e\u0301tai", "\u00e9tai"
	tree := parse(t, "anchor "+decomposed)
	part := tree.Statements[0].Body.(*Part)
	assert.Equal(t, composed, part.Name.Text)
	assert.Equal(t, decomposed, tree.Statements[0].Tokens[1].Text)
}

func TestNearest(t *testing.T) {
	cases := []struct{ word, want string }{
		{"efficency", "efficiency"}, {"strenght", "strength"}, {"hodls", "holds"}, {"wieght", "weight"},
		{"strength", ""}, {"bowline", ""}, {"x", ""}, {"to", ""}, {"releasble", "releasable"},
		{"Efficiency", "efficiency"}, {"EFFICENCY", "efficiency"}, {"AT", "at"}, {"ta", "to at"}, {"A", ""},
		{strings.Repeat("strength", 20), ""},
	}
	for _, c := range cases {
		assert.Equal(t, c.want, strings.Join(nearest(c.word, clauseWords), " "), c.word)
	}
}
