package reference_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/reference"
	"fairlead/lang/syntax"
)

// TestEveryWordIsExplained asks for each word that a reader may point at.
func TestEveryWordIsExplained(t *testing.T) {
	var words []string
	words = append(words, syntax.Statements()...)
	words = append(words, "on", "tail", "loop")
	for _, c := range syntax.Clauses() {
		words = append(words, c.Word)
	}
	for _, w := range words {
		text, ok := reference.Word(w)
		assert.True(t, ok, w)
		assert.NotContains(t, text, "](", "links lead nowhere outside the manual")
		assert.NotContains(t, text, "\n- ", w)
	}
}

func TestWords(t *testing.T) {
	text, _ := reference.Word("join")
	assert.Equal(t, "`join NAME to NAME`\n\nmakes two ends one body, so that one rig hauls another.", text)
	text, _ = reference.Word("expect")
	assert.Equal(t, "`expect CLAIM`\n\na claim, which the linter checks. See 04 claims.", text)
	text, _ = reference.Word("raise")
	assert.Contains(t, text, "load: the height wanted")
	_, ok := reference.Word("litter")
	assert.False(t, ok)
}

func TestRows(t *testing.T) {
	rows := reference.Rows("expect held")
	assert.Greater(t, len(rows), 2)
	for _, r := range rows {
		assert.Contains(t, r[0], "expect held")
	}
	assert.Empty(t, reference.Rows("expect hel"))
	assert.NotEmpty(t, reference.Rows("/"))
}
