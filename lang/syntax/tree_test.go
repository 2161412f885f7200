package syntax

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// checkTree asserts what is true of the tree of any text whatever.
func checkTree(t testing.TB, tree *Tree) {
	t.Helper()
	checkLossless(t, tree)
	checkStatements(t, tree)
	checkProblems(t, tree)
}

// checkLossless: the tokens are the bytes of the file in order, and between them
// stands white space only, within lines no line end.
func checkLossless(t testing.TB, tree *Tree) {
	t.Helper()
	f := tree.File
	require.Len(t, tree.Lines, strings.Count(f.Text, "\n")+1)
	at := 0
	for i, line := range tree.Lines {
		span := f.LineSpan(i)
		for j, token := range line.Tokens {
			require.True(t, span.Contains(token.Span), "token %q lies in its line", token.Text)
			require.Equal(t, f.Slice(token.Span), token.Text)
			require.NotEmpty(t, token.Text)
			require.Empty(t, strings.Trim(f.Text[at:token.Span.Start], " \t\r\n\uFEFF"), "only white space before %q", token.Text)
			require.True(t, token.Kind != CommentToken || j == len(line.Tokens)-1, "a comment ends its line")
			at = token.Span.End
		}
	}
	require.Empty(t, strings.Trim(f.Text[at:], " \t\r\n\uFEFF"))
}

// checkStatements: statements hold all tokens that are no comments, each once,
// and their words are those of the file.
func checkStatements(t testing.TB, tree *Tree) {
	t.Helper()
	var fromLines, fromStatements []Token
	comments := 0
	for _, line := range tree.Lines {
		for _, token := range line.Tokens {
			if token.Kind == CommentToken {
				comments++
				continue
			}
			require.NotNil(t, line.Statement)
			fromLines = append(fromLines, token)
		}
	}
	end := 0
	for _, st := range tree.Statements {
		require.NotEmpty(t, st.Tokens)
		require.Equal(t, st.Tokens[0].Span.To(st.Tokens[len(st.Tokens)-1].Span), st.Span)
		require.LessOrEqual(t, end, st.Span.Start)
		end = st.Span.End
		fromStatements = append(fromStatements, withoutComments(st.Tokens)...)
		require.NotNil(t, st.Body)
		if st.Keyword.Text != "" {
			require.Equal(t, norm.NFC.String(tree.File.Slice(st.Keyword.Span)), st.Keyword.Text)
		}
		for _, c := range st.Doc {
			require.Equal(t, CommentToken, c.Kind)
		}
		checkWords(t, tree.File, st)
	}
	require.Equal(t, fromLines, fromStatements)
}

// checkWords: the words and spans of a body lie in its statement.
func checkWords(t testing.TB, f *source.File, st *Statement) {
	t.Helper()
	word := func(w *Word) {
		if w == nil {
			return
		}
		require.True(t, st.Span.Contains(w.Span))
		require.Equal(t, norm.NFC.String(f.Slice(w.Span)), w.Text)
	}
	clauses := func(uses []ClauseUse) {
		for _, use := range uses {
			word(&use.Word)
			word(use.Name)
			require.True(t, st.Span.Contains(use.Span) && use.Span.Contains(use.Word.Span))
			for _, a := range []*Amount{use.Amount, use.Second} {
				if a != nil {
					require.True(t, use.Span.Contains(a.Span) && a.Span.Contains(a.LowSpan) && a.Span.Contains(a.HighSpan))
					require.Equal(t, a.Unit, f.Slice(a.UnitSpan))
				}
			}
		}
	}
	switch b := st.Body.(type) {
	case *Part:
		word(&b.Kind)
		word(&b.Name)
		word(b.Model)
		word(b.On)
		clauses(b.Clauses)
	case *Reeve:
		word(&b.Rope)
		strokes := len(b.Nodes) - 1
		if b.Loop != nil {
			strokes++
		}
		require.Len(t, b.Strokes, strokes)
		for _, n := range b.Nodes {
			word(&n.Name)
			word(n.Knot)
			require.True(t, n.Span.Contains(n.Name.Span))
			clauses(n.Clauses)
		}
	}
}

// checkProblems: every fault has its place in the file and one plain sentence, in
// file order; a bad statement and an invalid token have at least one.
func checkProblems(t testing.TB, tree *Tree) {
	t.Helper()
	end := source.Span{Start: 0, End: len(tree.File.Text)}
	errors := 0
	at := 0
	for _, p := range tree.Problems {
		require.NotEmpty(t, p.Rule)
		require.True(t, end.Contains(p.Place.Span) && p.Place.Span.Len() >= 0)
		require.LessOrEqual(t, at, p.Place.Span.Start)
		at = p.Place.Span.Start
		require.True(t, utf8.ValidString(p.Message) && p.Message != "" && !strings.ContainsAny(p.Message, "\n\r"), p.Message)
		require.False(t, strings.HasSuffix(p.Message, ".") || strings.Contains(p.Message, "Form"), p.Message)
		if p.Severity == diag.Error {
			errors++
		} else {
			require.Equal(t, RuleGluedStroke, p.Rule)
		}
	}
	for _, st := range tree.Statements {
		_, bad := st.Body.(*Bad)
		require.True(t, st.Faulty || !bad)
		require.True(t, errors > 0 || !st.Faulty)
		for _, token := range st.Tokens {
			require.True(t, token.Kind != InvalidToken || errors > 0 && st.Faulty)
		}
	}
}

func parse(t testing.TB, text string) *Tree {
	t.Helper()
	tree := Parse(source.New("case.rig", text))
	checkTree(t, tree)
	return tree
}

func TestEmptyFiles(t *testing.T) {
	for _, text := range []string{"", "\n", " \t\r\n\n", "\uFEFF", "# only a comment", "\uFEFF# one\n\n# two\n"} {
		tree := parse(t, text)
		assert.Empty(t, tree.Statements)
		assert.Empty(t, tree.Problems)
	}
}
