package house_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lint/house"
	"fairlead/solve/lp"
)

// rules puts policies, each a text of its own, over the usual ones.
func rules(t *testing.T, texts ...string) *house.Rules {
	t.Helper()
	layers := [][]*model.Policy{house.Usual()}
	for _, text := range texts {
		f := load.Text("policy.rig", text)
		require.Empty(t, f.Problems)
		layers = append(layers, f.Model.Policies)
	}
	return house.Of(layers...)
}

func TestUsualRulesAreSoundAndSourced(t *testing.T) {
	require.Len(t, house.Usual(), 1)
	for _, q := range house.Usual()[0].Requires {
		assert.NotEmpty(t, q.Source, q.Place.Text())
	}
	assert.Empty(t, house.Usual()[0].Rules)
	r := rules(t)
	assert.Len(t, r.Lines(), len(house.Usual()[0].Requires), "a line could not be read")
	assert.Nil(t, r.Factor(model.Hitch), "what no source settles is not required")
	assert.Equal(t, "0.27 kN", r.PerPerson().String())
	assert.Nil(t, r.PerPerson().Related(), "no user has that file")
}

func TestTheNearerLineCounts(t *testing.T) {
	r := rules(t, "policy a\nrequire factor 10\nrequire pull 300 N per person\nrule no-capture error\n",
		"require factor 4 for hitch\nrequire factor 8\nrule no-capture off\n")
	assert.Equal(t, "8", r.Factor(model.Pulley).String())
	assert.Equal(t, "4", r.Factor(model.Hitch).String())
	assert.Equal(t, "300 N", r.PerPerson().String())
	assert.Equal(t, "the house rule of a", r.PerPerson().Related()[0].Message)
	_, on := r.Severity("no-capture", diag.Advice)
	assert.False(t, on)
	s, on := r.Severity("jammed", diag.Error)
	assert.True(t, on)
	assert.Equal(t, diag.Error, s)
	over := map[string]string{}
	for _, l := range r.Lines() {
		if l.Over != nil {
			over[l.Written()] = l.Over.Written()
		}
	}
	assert.Equal(t, map[string]string{
		"require factor 10":               "require factor 8",
		"require pull 0.27 kN per person": "require pull 300 N per person",
		"rule no-capture error":           "rule no-capture off",
	}, over)
}

func TestBounds(t *testing.T) {
	cases := []struct {
		line    string
		figure  house.Figure
		allowed []string
		refused []string
	}{
		{"require factor 10", house.Figure{Name: "factor"}, []string{"10", "11"}, []string{"9.99"}},
		{"require factor over 10", house.Figure{Name: "factor"}, []string{"10.01"}, []string{"10"}},
		{"require drop 1 m", house.Figure{Name: "drop"}, []string{"0", "1"}, []string{"1.01"}},
		{"require drop under 1 m", house.Figure{Name: "drop"}, []string{"0.99"}, []string{"1"}},
		{"require cord 60 to 80 %", house.Figure{Name: "cord"}, []string{"0.6", "0.8"}, []string{"0.59", "0.81"}},
		{"require pull 30 daN", house.Figure{Name: "pull"}, []string{"300"}, []string{"301"}},
	}
	for _, c := range cases {
		l := rules(t, c.line).Limit(c.figure)
		require.NotNil(t, l, c.line)
		for _, s := range c.allowed {
			assert.True(t, l.Allows(number(t, s)), "%s: %s", c.line, s)
		}
		for _, s := range c.refused {
			assert.False(t, l.Allows(number(t, s)), "%s: %s", c.line, s)
		}
	}
	var none *house.Limit
	assert.True(t, none.Allows(lp.Int(7)), "where nothing is required all is allowed")
	assert.Nil(t, none.Related())
}

func number(t *testing.T, s string) lp.Num {
	t.Helper()
	f := load.Text("n.rig", "require factor "+s)
	require.Len(t, f.Model.Policies, 1)
	return lp.FromRat(f.Model.Policies[0].Requires[0].Amount.Low)
}
