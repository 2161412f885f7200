package rigfmt

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// formatted formats a text twice and asserts what is true of every text: an error
// leaves it as it is; else the second run changes nothing, the statements say the
// same with the same tokens, and the comments are the same and in order.
func formatted(t testing.TB, text string) string {
	t.Helper()
	before := source.New("case.rig", text)
	out, problems := Format(before)
	tree := syntax.Parse(before)
	if hasErrors(tree) {
		require.NotEmpty(t, problems)
		require.Equal(t, text, out)
		return out
	}
	require.Empty(t, problems)
	after := source.New("case.rig", out)
	again, problems := Format(after)
	require.Empty(t, problems, "formatting makes no error of %q", text)
	require.Equal(t, out, again, "the second run changes nothing")
	checkSame(t, tree, syntax.Parse(after))
	checkShape(t, out)
	return out
}

func hasErrors(tree *syntax.Tree) bool {
	return slices.ContainsFunc(tree.Problems, func(d diag.Diagnostic) bool { return d.Severity == diag.Error })
}

// checkSame asserts that two trees differ in layout and in clause order only.
func checkSame(t testing.TB, before, after *syntax.Tree) {
	t.Helper()
	require.Equal(t, comments(before), comments(after))
	require.Len(t, after.Statements, len(before.Statements))
	for i, a := range before.Statements {
		b := after.Statements[i]
		require.Equal(t, tokenTexts(a), tokenTexts(b))
		require.Equal(t, bare(a.Body), bare(b.Body))
		require.Equal(t, texts(a.Doc), texts(b.Doc))
		require.Equal(t, trailing(a), trailing(b))
	}
	require.Empty(t, after.Problems, "formatting mends glued strokes too")
}

// checkShape asserts point 1 of the style, which every output has.
func checkShape(t testing.TB, out string) {
	t.Helper()
	if out == "" {
		return
	}
	end := "\n"
	if strings.HasSuffix(out, "\r\n") {
		end = "\r\n"
	}
	require.True(t, strings.HasSuffix(out, end))
	lines := strings.Split(strings.TrimSuffix(out, end), end)
	require.NotEmpty(t, lines[0])
	require.NotEmpty(t, lines[len(lines)-1])
	for i, line := range lines {
		require.Equal(t, strings.TrimRight(line, " \t"), line)
		require.NotContains(t, line, "\n")
		require.False(t, i > 0 && line == "" && lines[i-1] == "", "one blank line in a row")
	}
}

func comments(tree *syntax.Tree) []string {
	var out []string
	for _, line := range tree.Lines {
		for _, token := range line.Tokens {
			if token.Kind == syntax.CommentToken {
				out = append(out, token.Text)
			}
		}
	}
	return out
}

// tokenTexts gives the tokens of a statement; sorted where clauses may change places.
func tokenTexts(st *syntax.Statement) []string {
	var out []string
	for _, token := range st.Tokens {
		if token.Kind != syntax.CommentToken {
			out = append(out, token.Text)
		}
	}
	if classOf(st) == partClass {
		slices.Sort(out)
	}
	return out
}

func texts(tokens []syntax.Token) []string {
	var out []string
	for _, token := range tokens {
		out = append(out, token.Text)
	}
	return out
}

// bare gives a body without its places and with the clauses of a part sorted.
func bare(body syntax.Body) any {
	byWord := func(a, b syntax.ClauseUse) int { return strings.Compare(a.Word.Text, b.Word.Text) }
	switch b := body.(type) {
	case *syntax.Part:
		slices.SortFunc(b.Clauses, byWord)
	case *syntax.Stock:
		slices.SortFunc(b.Clauses, byWord)
	}
	clearSpans(reflect.ValueOf(body))
	return body
}

func clearSpans(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			clearSpans(v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			clearSpans(v.Index(i))
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[source.Span]() {
			v.SetZero()
			return
		}
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				clearSpans(v.Field(i))
			}
		}
	}
}
