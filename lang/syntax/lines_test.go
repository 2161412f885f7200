package syntax

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStatementsAreCut(t *testing.T) {
	cases := []struct {
		text string
		// statements are the token texts of each statement, comments included.
		statements []string
	}{
		{"anchor a\nanchor b", []string{"anchor a", "anchor b"}},
		{"reeve a: b /\nc\nanchor b", []string{"reeve a : b / c", "anchor b"}},
		{"reeve a: b\n~ c", []string{"reeve a : b ~ c"}},
		{"reeve a: b / # x\n# y\n# z\nc # w", []string{"reeve a : b / # x # y # z c"}},
		{"reeve a: b\n# y\n\\ c", []string{`reeve a : b # y \ c`}},
		// A blank line ends a statement, and so does a keyword.
		{"reeve a: b /\n\nc", []string{"reeve a : b /", "c"}},
		{"reeve a: b\n\n/ c", []string{"reeve a : b", "/ c"}},
		{"reeve a: b /\n# y\n\nc", []string{"reeve a : b /", "c"}},
		{"reeve a: b /\n# y\nanchor b", []string{"reeve a : b /", "anchor b"}},
		{"reeve a: b /\nefficiency", []string{"reeve a : b / efficiency"}},
		{"reeve a: b / c\n# y\n# z\nd", []string{"reeve a : b / c", "d"}},
	}
	for _, c := range cases {
		tree := parse(t, c.text)
		var got []string
		for _, st := range tree.Statements {
			var texts []string
			for _, token := range st.Tokens {
				texts = append(texts, token.Text)
			}
			got = append(got, strings.Join(texts, " "))
		}
		assert.Equal(t, c.statements, got, "in %q", c.text)
	}
}

func TestCommentsHaveAPlace(t *testing.T) {
	tree := parse(t, "# far\n\n# near\n  # nearer \t\nanchor a # after  \n# next\nanchor b\n# last")
	require.Len(t, tree.Statements, 2)
	a, b := tree.Statements[0], tree.Statements[1]
	require.Len(t, a.Doc, 2)
	assert.Equal(t, "# near", a.Doc[0].Text)
	assert.Equal(t, "# nearer", a.Doc[1].Text)
	require.NotNil(t, a.Trailing)
	assert.Equal(t, "# after", a.Trailing.Text)
	require.Len(t, b.Doc, 1)
	assert.Equal(t, "# next", b.Doc[0].Text)
	assert.Nil(t, b.Trailing)
	assert.Equal(t, "# last", tree.Lines[7].Tokens[0].Text)
	assert.Nil(t, tree.Lines[7].Statement)
	assert.Same(t, a, tree.Lines[4].Statement)
}

func TestCommentOfADanglingStrokeDocumentsTheNext(t *testing.T) {
	tree := parse(t, "reeve a: b /\n# of c\nanchor c")
	require.Len(t, tree.Statements, 2)
	require.Len(t, tree.Statements[1].Doc, 1)
}

func TestTokenKinds(t *testing.T) {
	tree := parse(t, `a.b -1.5 % "x" / \ ~ : , ( ) # c`)
	var kinds []TokenKind
	for _, token := range tree.Lines[0].Tokens {
		kinds = append(kinds, token.Kind)
	}
	assert.Equal(t, []TokenKind{
		WordToken, NumberToken, UnitToken, StringToken, StrokeToken, StrokeToken, StrokeToken,
		PunctuationToken, PunctuationToken, PunctuationToken, PunctuationToken, CommentToken,
	}, kinds)
}
