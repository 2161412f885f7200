package stock_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	rigfmt "fairlead/fmt"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/stock"
	"fairlead/lang/syntax"
)

func TestTextIsInStandardStyle(t *testing.T) {
	file := source.New(stock.Name, stock.Text())
	assert.Empty(t, syntax.Parse(file).Problems)
	text, problems := rigfmt.Format(file)
	require.Empty(t, problems)
	assert.Equal(t, stock.Text(), text, "fairlead fmt --write mends it")
}

// The catalogue holds models and nothing else.
func TestOnlyModels(t *testing.T) {
	statements := syntax.Parse(source.New(stock.Name, stock.Text())).Statements
	for _, s := range statements {
		assert.IsType(t, &syntax.Stock{}, s.Body, s.Keyword.Text)
	}
	assert.Len(t, resolve.Catalogue(), len(statements))
}

// sources are what may be named as one: publications, the two kinds of hearsay, and
// the admission that there is none.
var sources = regexp.MustCompile(`^(handbooks|Prattley 2016|Workshop Receipts|Schwartz|Bassett|US Army engineer field manual` +
	`|capstan law, friction 0\.2 to 0\.3: handbooks|HSE 364/2001|NFPA 1983|EN [0-9]+(:20[0-9]{2})?|common practice|no published figure: values unset)`)

func TestEveryModelSaysWhatItIsAndItsSource(t *testing.T) {
	for _, m := range resolve.Catalogue() {
		assert.NotEmpty(t, m.Doc, m.Model.Text)
		assert.NotEmpty(t, m.Source, m.Model.Text)
		assert.Regexp(t, sources, m.Source, m.Model.Text)
		assert.Equal(t, len(m.Clauses) == 0, strings.HasSuffix(m.Source, "values unset"), m.Model.Text)
	}
}

// capitalised are the words that may begin with a capital: the sources' own, and
// those that begin a sentence. A maker's or a product's name would be none of them.
var capitalised = words(`EN NFPA HSE US Army NSS OHS Alberta Prattley Schwartz Bassett Workshop Receipts
	Calculating Forces Choosing Haul Systems
	The A An From Ranges What Where Efficiency Class B H K Q X Pulleys Carabiners Rings Friction Rope Ropes Cord Knots
	Accessory Slings Anchors Edges People Rescue Measured Three Write Wrapped At Tied Low-stretch Single No
	Bare Nylon Whoever Pulling Over Its`)

func TestNoMakersAndNoProducts(t *testing.T) {
	for _, line := range strings.Split(stock.Text(), "\n") {
		code, comment, _ := strings.Cut(line, "#")
		assert.Equal(t, strings.ToLower(code), capitalUnitsAside(code), line)
		for _, word := range regexp.MustCompile(`[\pL][\pL-]*`).FindAllString(comment, -1) {
			if word != strings.ToLower(word) && word != "kN" {
				assert.Contains(t, capitalised, word, line)
			}
		}
	}
	assert.NotRegexp(t, "[™®©]", stock.Text())
}

// capitalUnitsAside gives a text with the one unit in it that has a capital made small.
func capitalUnitsAside(code string) string { return strings.ReplaceAll(code, "kN", "kn") }

func words(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}
