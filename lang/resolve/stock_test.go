package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
)

const stocked = "stock pulley twin efficiency 0.93 to 0.96 strength 36 kN sheaves 2 holds  # a shelf of ours\n"

var stockCases = []marked{
	{"a model of the file", stocked + basic + "pulley top twin on head\nreeve long: litter / top \\ team\n"},
	{"after its use", basic + "pulley top twin on head\nreeve long: litter / top \\ team\n" + stocked},
	{"a model of the built-in stock", basic + "hitch grab prusik cord 8 mm\nreeve long: litter (figure-eight) / grab / head \\ team\n"},
	{"unknown", basic + "hitch grab ⟦twister⟧unknown-model\nreeve long: litter / grab / head \\ team\n"},
	{"misspelt", stocked + basic + "pulley top ⟦twn⟧unknown-model on head\npulley low twin on litter\nreeve long: litter / top \\ low / team\n"},
	{"of the built-in stock, of another kind", basic + "clamp grab ⟦prusik⟧unknown-model\nreeve long: litter / grab / head \\ team\n"},
	{"of the built-in stock, misspelt", basic + "hitch grab ⟦prussik⟧unknown-model\nreeve long: litter / grab / head \\ team\n"},
	{"a knot nearly named", basic + "reeve long: litter (⟦figure-eigth⟧unknown-model) / head \\ team\n"},
	{"a knot of the file nearly named", "stock knot twin-loop retains 70 %\n" + basic + "reeve long: litter (⟦twn-loop⟧unknown-model) / head (twin-loop) \\ team\nknot k twin-loop on litter\nreeve b: k / head\nrope b\n"},
	{"a knot of which nothing is known", basic + "reeve long: litter (halyard-bend) / head \\ team\n"},
	{"knots while a library may define them", "use ⟦\"gone.rig\"⟧unusable-file\n" + basic + "reeve long: litter (figure-eigth) / head \\ team\n"},
	{"of another kind", stocked + basic + "ring top ⟦twin⟧unknown-model on head\npulley low twin on litter\nreeve long: litter / top \\ low / team\n"},
	{"twice", stocked + "stock pulley ⟦twin⟧duplicate-name\nstock ring twin\n" + basic +
		"pulley top twin on head\nring eye twin on head\nreeve long: litter / top \\ eye / team\n"},
	{"not used", "stock ring eye strength 25 kN\n"},
	{"bad values", "stock pulley a strength ⟦0 kN⟧bad-value efficiency ⟦0.9 to 0.8⟧bad-value\n"},
	{"a part's name in a model", "stock pulley a ⟦holds litter⟧misplaced-clause\nstock leg b ⟦from tree⟧misplaced-clause\n"},
	{"house rules", "policy quarry-team \"House rules\"\nrequire factor 10\nrule no-capture error\nrule slack-strand off\n"},
	{"house rules without a policy", "require factor 10\n"},
	{"a figure twice in one policy", "policy a\n⟦require factor 10⟧duplicate-house-rule\nrequire drop 1 m\nrequire factor over 4\n"},
	{"three times", "⟦require pull 300 N per person⟧duplicate-house-rule\n⟦require pull under 250 N per person⟧duplicate-house-rule\nrequire pull 250 N per person\n"},
	{"a rule twice", "policy a\n⟦rule jammed off⟧duplicate-house-rule\nrule no-capture off\nrule jammed warning\n"},
	{"for a kind, and for another", "policy a\n⟦require factor 3 for hitch⟧duplicate-house-rule\nrequire factor 5 for clamp\nrequire factor 4 for hitch\nrequire factor 10\n"},
	{"of the team, and of each", "policy a\nrequire pull 900 N\nrequire pull 250 N per person\n"},
	{"in two policies", "require factor 4\npolicy a\nrequire factor 10\nrule jammed off\npolicy b\nrequire factor 8\nrule jammed error\n"},
	{"a line that cannot be read says nothing", "policy a\nrequire factor 10\nrequire factor over⟦⟧syntax\n"},
	{"a mass from elsewhere", "use ⟦\"gone.rig\"⟧unusable-file\nload litter dummy\nload ⟦crate⟧mass-missing on litter\nload box mass 9 kg on litter\nrope long\nanchor head\nreeve long: litter / head\n"},
	{"a model from elsewhere", "use ⟦\"gone.rig\"⟧unusable-file\n" + basic + "pulley top twin on head\nreeve long: litter / top \\ team\n"},
}

func TestModelGivesItsValues(t *testing.T) {
	file, found := resolved("yard.rig", stocked+basic+"pulley top twin on head strength 22 kN\nreeve long: litter / top \\ team\n")
	require.Empty(t, found)
	top := file.Rigs[0].Part("top")
	assert.Equal(t, "twin", top.Model)
	v := top.Values
	assert.Equal(t, "93/100", v.Efficiency.Low.RatString(), "ranges are kept")
	assert.Equal(t, "24/25", v.Efficiency.High.RatString())
	assert.Equal(t, "22000", v.Strength.Low.RatString(), "the clause beats the model")
	assert.Equal(t, "2", v.Sheaves.Low.RatString())
	assert.True(t, v.Holds)
	assert.Equal(t, "strength 22 kN", v.Places["strength"].Text())
	assert.Equal(t, "sheaves 2", v.Places["sheaves"].Text())
	require.Len(t, file.Stock, 1)
	assert.Equal(t, "36000", file.Stock[0].Values.Strength.Low.RatString(), "the model itself is not changed")
	assert.Equal(t, "strength 36 kN", file.Stock[0].Values.Places["strength"].Text())
}

func TestWeightInPlaceOfTheModelsMass(t *testing.T) {
	rig, found := oneRig(t, "stock load dummy mass 80 kg\nanchor head\nload litter dummy weight 900 N\nrope long\nreeve long: litter / head\n")
	assert.Empty(t, found)
	assert.Nil(t, rig.Part("litter").Values.Mass)
	assert.Equal(t, "900", rig.Part("litter").Values.Weight.Low.RatString())
}

func TestUnknownModelHint(t *testing.T) {
	cases := []struct{ part, want, fix string }{
		{"pulley top twn", "top: its values stay unset, since no pulley model twn is known, did you mean twin?", "write twin"},
		{"hitch grab prusick", "grab: its values stay unset, since no hitch model prusick is known, did you mean prusik?", "write prusik"},
		{"pulley top bering-pulley", "top: its values stay unset, since no pulley model bering-pulley is known, did you mean bearing-pulley?", "write bearing-pulley"},
		{"pulley top gneral-use", "top: its values stay unset, since no pulley model gneral-use is known, did you mean general-use?", "write general-use"},
		{"pulley top wagon", "top: its values stay unset, since no pulley model wagon is known", ""},
	}
	const both = stocked + "stock pulley general-use\npulley low twin\npulley high general-use\n" // one of them is of both
	for _, c := range cases {
		file, found := resolved("yard.rig", both+c.part+"\n")
		assert.Equal(t, c.want, message(t, found, "unknown-model"))
		if c.fix != "" {
			_, after := resolved("yard.rig", langtest.Fixed(t, file.Source, found, c.fix))
			for _, d := range after {
				assert.NotEqual(t, "unknown-model", d.Rule)
			}
		}
	}
}

func TestALineWithoutEffectIsTakenOut(t *testing.T) {
	const title = "take out the line that has no effect"
	for text, want := range map[string]string{
		"policy a\nrequire factor 10  # of old\nrequire factor 8\n":     "policy a\nrequire factor 8\n",
		"policy a\r\nrequire  factor 10\r\nrequire factor 8\r\n":        "policy a\r\nrequire factor 8\r\n",
		"require factor 10\nrequire drop 1 m\n\nrequire factor 8":       "require drop 1 m\n\nrequire factor 8",
		"rule jammed off\nrule jammed error # since the spring of 24\n": "rule jammed error # since the spring of 24\n",
	} {
		file, found := resolved("policy.rig", text)
		assert.Equal(t, want, langtest.Fixed(t, file.Source, found, title))
	}
	_, found := resolved("policy.rig", "policy a\n# The figure of the old rope.\nrequire factor 10\nrequire factor 8\n")
	require.Len(t, found, 1)
	assert.Empty(t, found[0].Fixes, "what is said above it would be said of the next line")
	assert.Equal(t, "require factor 10 has no effect: require factor 8 stands after it in the same house rules", found[0].Message)
	assert.Equal(t, "require factor 8", found[0].Related[0].Place.Text())
}

func TestPoliciesAreKept(t *testing.T) {
	file, _ := resolved("policy.rig", "policy quarry-team \"House rules\"\nrequire factor 10\nrequire drop under 1 m\nrule no-capture error\npolicy other\nrequire factor 4 for hitch\n")
	assert.Empty(t, file.Rigs, "a file of house rules holds no rig")
	require.Len(t, file.Policies, 2)
	p := file.Policies[0]
	assert.Equal(t, "quarry-team", p.Name)
	assert.Equal(t, "House rules", p.Title)
	require.Len(t, p.Requires, 2)
	assert.Equal(t, "10", p.Requires[0].Amount.Low.RatString())
	require.Len(t, p.Rules, 1)
	assert.Equal(t, "no-capture", p.Rules[0].Rule.Text)
	assert.Equal(t, "policy quarry-team \"House rules\"\nrequire factor 10\nrequire drop under 1 m\nrule no-capture error", p.Place.Text())
	assert.Equal(t, "hitch", file.Policies[1].Requires[0].For.Text)
}
