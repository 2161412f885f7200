package tidy

import (
	"go/ast"
	"go/token"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/syntax"
)

// The vocabulary and the model name the same kinds of part, in the same order.
func TestModelKnowsTheKindsOfTheVocabulary(t *testing.T) {
	var words []string
	for _, k := range syntax.Kinds() {
		words = append(words, k.Word)
	}
	assert.Equal(t, words, modelKinds(t))
}

// modelKinds reads the values of the constants of type model.Kind.
func modelKinds(t *testing.T) []string {
	t.Helper()
	var kinds []string
	list, _ := goFiles(t)
	for _, f := range list {
		if f.name != "lang/model/kind.go" {
			continue
		}
		for _, d := range f.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
				kinds = append(kinds, constants(t, g, "Kind")...)
			}
		}
	}
	return kinds
}

func constants(t *testing.T, g *ast.GenDecl, typeName string) []string {
	t.Helper()
	var values []string
	for _, s := range g.Specs {
		v := s.(*ast.ValueSpec)
		if id, ok := v.Type.(*ast.Ident); ok && id.Name == typeName {
			word, err := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
			require.NoError(t, err)
			values = append(values, word)
		}
	}
	return values
}
