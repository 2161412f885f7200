package setups

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// scopes are the names that the TextMate grammar gives to the sorts of tokens.
var scopes = map[sort]string{
	statement: "keyword.other.statement.rig",
	kind:      "storage.type.kind.rig",
	clause:    "entity.other.attribute-name.clause.rig",
	structure: "keyword.other.structure.rig",
	claim:     "keyword.other.claim.rig",
	figure:    "entity.other.attribute-name.figure.rig",
	choice:    "constant.language.choice.rig",
	number:    "constant.numeric.rig",
	unit:      "keyword.other.unit.rig",
	quoted:    "string.quoted.double.rig",
	stroke:    "keyword.operator.stroke.rig",
	comment:   "comment.line.number-sign.rig",
	title:     "entity.name.namespace.rig",
	declared:  "variable.other.declaration.part.rig",
	name:      "variable.other.part.rig",
	model:     "support.type.model.rig",
	rule:      "support.function.rule.rig",
	word:      "constant.language.word.rig",
}

// scoped is a stretch of a line with the scopes that hold there, the innermost last.
type scoped struct {
	start, end int
	scopes     []string
}

func (s *scoped) UnmarshalJSON(b []byte) error {
	return json.Unmarshal(b, &[]any{&s.start, &s.end, &s.scopes})
}

// textmate has the grammars of the VS Code extension tokenize texts.
func textmate(t *testing.T, scope string, texts []string) [][][]scoped {
	t.Helper()
	program, packages := node(t)
	syntaxes, err := filepath.Abs(filepath.Join(editors, "vscode/syntaxes"))
	require.NoError(t, err)
	type text struct {
		Scope string `json:"scope"`
		Text  string `json:"text"`
	}
	order := map[string]any{
		"grammars": map[string]string{
			"source.rig":             filepath.Join(syntaxes, "rig.tmLanguage.json"),
			"markdown.rig.codeblock": filepath.Join(syntaxes, "notes.tmLanguage.json"),
			"text.html.markdown":     "tm-grammars/grammars/markdown.json",
		},
		"injections": map[string][]string{"text.html.markdown": {"markdown.rig.codeblock"}},
	}
	var list []text
	for _, one := range texts {
		list = append(list, text{scope, one})
	}
	order["texts"] = list
	in, err := json.Marshal(order)
	require.NoError(t, err)
	out := command(t, in, []string{"NODE_PATH=" + packages}, program, "testdata/scopes.js")
	var read [][][]scoped
	require.NoError(t, json.Unmarshal(out, &read))
	require.Len(t, read, len(texts))
	return read
}

// Every token of every sample has the scope of its sort and no other name.
func TestTextMateGrammar(t *testing.T) {
	list := samples(t)
	var texts []string
	for _, s := range list {
		texts = append(texts, s.text)
	}
	for i, lines := range textmate(t, "source.rig", texts) {
		compareScopes(t, list[i], lines, 0, 0)
	}
}

// The grammar reads rigs in Markdown: plain, in a list and in a quote.
func TestTextMateGrammarInNotes(t *testing.T) {
	for _, n := range allNotes {
		list := manualOnly(samples(t))
		var texts []string
		for _, s := range list {
			texts = append(texts, n.wrap(s.text))
		}
		for i, lines := range textmate(t, "text.html.markdown", texts) {
			list[i].name += ", " + n.what
			compareScopes(t, list[i], lines, n.skip(), len(n.prefix))
			after := lines[len(lines)-2]
			assert.NotContains(t, innermost(after, 0), ".rig", "%s: the text after the block", list[i].name)
		}
	}
}

// compareScopes compares what the grammar says of the tokens of a sample with their
// sorts. The sample begins skip lines and shift columns into what was read.
func compareScopes(t *testing.T, s sample, read [][]scoped, skip, shift int) {
	t.Helper()
	texts := strings.Split(s.text, "\n")
	for n, tokens := range s.lines() {
		line := strings.TrimSuffix(texts[n], "\r")
		for _, tok := range tokens {
			start, end := shift+units(line[:tok.Start]), shift+units(line[:tok.End])
			for at := start; at < end; at++ {
				if got := innermost(read[n+skip], at); !fits(tok.sort, got) {
					t.Errorf("%s, line %d: %s of %q has the scope %q, not %q", s.name, n+1, tok.text, line, got, scopes[tok.sort])
					break
				}
			}
		}
	}
}

func fits(s sort, scope string) bool {
	switch s {
	case punctuation:
		return strings.HasPrefix(scope, "punctuation.")
	case quoted:
		return scope == scopes[s] || scope == "constant.character.escape.rig"
	case strange:
		return strings.HasPrefix(scope, "invalid.illegal.")
	case comment:
		return scope == scopes[s] || scope == "punctuation.definition.comment.rig"
	}
	return scope == scopes[s]
}

// innermost gives the innermost scope at a column.
func innermost(line []scoped, column int) string {
	for _, s := range line {
		if s.start <= column && column < s.end && len(s.scopes) > 0 {
			return s.scopes[len(s.scopes)-1]
		}
	}
	return ""
}

// units counts the UTF-16 code units of a text.
func units(text string) int { return len(utf16.Encode([]rune(text))) }
