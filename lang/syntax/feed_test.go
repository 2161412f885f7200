package syntax

import (
	"testing"

	"github.com/alecthomas/participle/v2/lexer"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestScannerIsALexerOfItsOwn(t *testing.T) {
	form, err := rigGrammar().ParseString("case.rig", "rig a \"b\" # a comment is no token")
	require.NoError(t, err)
	assert.Equal(t, "a", form.Name.Value)
	assert.Equal(t, `"b"`, form.Title.Value)
}

// TestClasses shows how words are told apart by where they stand.
func TestClasses(t *testing.T) {
	names := lexer.SymbolsByRune(definition{})
	classes := func(text string) []string {
		var out []string
		for _, token := range classify(parse(t, text).Lines[0].Tokens) {
			out = append(out, names[token.Type])
		}
		return out
	}
	cases := []struct {
		text string
		want []string
	}{
		{"pulley top kN", []string{"Keyword", "Name", "Name"}},
		{"strength 3 kN", []string{"Keyword", "Number", "Unit"}},
		{"strength 3furlong", []string{"Keyword", "Number", "Unit"}},
		{"strength 3 furlong", []string{"Keyword", "Number", "Unit"}},
		{"strength 3 furlong 5", []string{"Keyword", "Number", "Name", "Number"}},
		{"strength 3 holsd", []string{"Keyword", "Number", "Name"}},
		{"strength 3 holds", []string{"Keyword", "Number", "Keyword"}},
		{"friction 3 bowline", []string{"Keyword", "Number", "Name"}},
		{"share 3 to 4 bowline", []string{"Keyword", "Number", "Keyword", "Number", "Name"}},
		{"efficiency 92 percent", []string{"Keyword", "Number", "Unit"}},
		{"advantage 3 by team", []string{"Name", "Number", "Name", "Name"}},
		{"travel 3 m per 1 m", []string{"Name", "Number", "Unit", "Keyword", "Number", "Unit"}},
		{`/ : % "x" @`, []string{"Stroke", "Punctuation", "Unit", "String", "Invalid"}},
	}
	for _, c := range cases {
		assert.Equal(t, c.want, classes(c.text), c.text)
	}
}
