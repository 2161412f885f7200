package rigfmt

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/syntax"
)

// Every figure that a policy may require is shown by an example in the standard style.
func TestExamplesOfFiguresAreInTheStandardStyle(t *testing.T) {
	for _, f := range syntax.Figures() {
		assert.Equal(t, f.Example+"\n", formatted(t, f.Example), f.Name)
		assert.Equal(t, f.Example+"\n", formatted(t, " "+f.Example+" \t"), f.Name)
	}
}

// policyCases are house rules: one space between tokens, comments aligned in each group.
var policyCases = []formatCase{
	{
		"a file of house rules",
		"policy  quarry-team   \"House  rules\"\n\n\nrequire  factor   10\nrequire factor 4  for  hitch # see the tests\n" +
			"require people  times\tadvantage under 18 # taught\n\nrule   straight-through   off\nrule no-capture error # always\n",
		"policy quarry-team \"House  rules\"\n\nrequire factor 10\nrequire factor 4 for hitch               # see the tests\n" +
			"require people times advantage under 18  # taught\n\nrule straight-through off\nrule no-capture error  # always\n",
	},
	{"units and per cent", "require drop under 1m\nrequire cord 60   to 80%\nrequire turn 30deg\n",
		"require drop under 1 m\nrequire cord 60 to 80 %\nrequire turn 30 deg\n"},
	{"per person", "require pull   under 300N  per   person\n", "require pull under 300 N per person\n"},
	{"numbers keep their spelling", "require factor 010.0\nrequire gain 0.030\n", "require factor 010.0\nrequire gain 0.030\n"},
	{"a comment above stays above", "  # Since the spring.\nrequire factor 10\n", "# Since the spring.\nrequire factor 10\n"},
	{"beside a rig", "rule jammed off\nanchor a\nrequire factor 10\n", "rule jammed off\nanchor  a\nrequire factor 10\n"},
	{"an error leaves the file as it is", "require  factor 4 for hich\nanchor a\n", "require  factor 4 for hich\nanchor a\n"},
	{"a figure that none is, likewise", "require  fator 4\n", "require  fator 4\n"},
}

func TestPolicies(t *testing.T) { runCases(t, policyCases) }
