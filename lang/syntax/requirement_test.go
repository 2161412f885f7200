package syntax

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// one parses a text of one statement.
func one(t *testing.T, text string) (*Require, int) {
	t.Helper()
	tree := Parse(source.New("policy.rig", text))
	require.Len(t, tree.Statements, 1, text)
	body, _ := tree.Statements[0].Body.(*Require)
	return body, len(tree.Problems)
}

// The example of every figure is read as that figure, without a fault.
func TestExamplesOfFiguresParse(t *testing.T) {
	for _, f := range Figures() {
		body, problems := one(t, f.Example)
		require.NotNil(t, body, f.Example)
		assert.Zero(t, problems, f.Example)
		assert.Equal(t, f.Name, body.Subject.Text)
		assert.Equal(t, body.Compare == Over, strings.Contains(f.Example, " over "))
		assert.Equal(t, body.Compare == Under, strings.Contains(f.Example, " under "))
		assert.Equal(t, f.Bound == Band, body.Amount.Low.Cmp(body.Amount.High) != 0, "a band is a range, nothing else is")
		found, ok := FigureNamed(f.Name)
		assert.True(t, ok)
		assert.Equal(t, f.Name, found.Name)
	}
}

// What a figure cannot take is a fault of every figure that cannot take it.
func TestFiguresTakeWhatTheirRowSays(t *testing.T) {
	for _, f := range Figures() {
		plain := strings.TrimSuffix(strings.TrimSuffix(f.Example, " for hitch"), " per person")
		for addition, takes := range map[string]bool{" for hitch": f.ForKind, " per person": f.PerPerson, " for hich": false} {
			body, problems := one(t, plain+addition)
			assert.Equal(t, takes, body != nil && problems == 0, plain+addition)
		}
		turned := map[Bound]string{Floor: " under ", Ceiling: " over ", Band: " over "}[f.Bound]
		figure := strings.TrimPrefix(strings.TrimPrefix(plain, "require "+f.Name+" "), "under ")
		_, problems := one(t, "require "+f.Name+turned+figure)
		assert.Positive(t, problems, f.Name+turned+figure)
	}
}
