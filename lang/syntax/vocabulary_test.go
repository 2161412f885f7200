package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestVocabularyIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range Clauses() {
		assert.False(t, seen[c.Word], "%s stands once in the table", c.Word)
		seen[c.Word] = true
		assert.Regexp(t, "^"+c.Word+"( |$)", c.Example)
	}
	for _, k := range Kinds() {
		taken := map[string]bool{}
		for _, word := range ClausesOf(k.Word) {
			assert.True(t, seen[word], "%s of %s is in the table", word, k.Word)
			assert.False(t, taken[word], "%s takes %s once", k.Word, word)
			taken[word] = true
		}
		assert.True(t, taken["at"] && taken["length"] && taken["mass"], "every part takes these")
		assert.True(t, StartsStatement(k.Word))
	}
	for _, word := range NodeClauses() {
		assert.True(t, seen[word])
	}
	for _, word := range nodeFlags {
		assert.Contains(t, NodeClauses(), word)
	}
	for _, word := range Statements() {
		assert.True(t, StartsStatement(word) && Reserved(word))
	}
	for _, word := range claimWords {
		assert.False(t, Reserved(word), "words of claims may be names")
	}
	assert.False(t, StartsStatement("strength"))
	assert.Nil(t, ClausesOf("winch"))
}

func TestVocabularyCannotBeChanged(t *testing.T) {
	ClausesOf("pulley")[0] = "x"
	Kinds()[0].Word = "x"
	Clauses()[0].Word = "x"
	NodeClauses()[0] = "x"
	Statements()[0] = "x"
	TestVocabularyIsWhole(t)
	assert.Equal(t, "efficiency", ClausesOf("pulley")[0])
}
