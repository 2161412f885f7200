package syntax

import "testing"

// otherFaults are faults of the statements for several rigs, libraries and house rules.
var otherFaults = []faultCase{
	{"rig⟦⟧", []string{
		`syntax: rig ends too soon; it goes on with a name, as in rig shaft-raise "Three to one at the shaft head"`,
	}, ""},
	{"rig ⟦pulley⟧", []string{
		"reserved-name: pulley is a word of the notation and cannot be a name",
	}, "rig pulley"},
	{`rig foo "bar" ⟦baz⟧`, []string{
		`syntax: rig ends before baz, as in rig shaft-raise "Three to one at the shaft head"`,
	}, `rig foo "bar"`},
	{"rig foo ⟦bar⟧", []string{
		`syntax: rig goes on with a text in quotes, not bar, as in rig shaft-raise "Three to one at the shaft head"`,
	}, "rig foo"},
	{`rig ⟦"title"⟧`, []string{
		`syntax: rig goes on with a name, not "title", as in rig shaft-raise "Three to one at the shaft head"`,
	}, ""},
	{"use ⟦stock.rig⟧", []string{
		`syntax: use goes on with a text in quotes, not stock.rig, as in use "stock.rig"`,
	}, ""},
	{"use⟦⟧", []string{
		`syntax: use ends too soon; it goes on with a text in quotes, as in use "stock.rig"`,
	}, ""},
	{"join a ⟦b⟧", []string{
		"syntax: join goes on with to, not b, as in join low.team to high.litter",
	}, ""},
	{"join a to⟦⟧", []string{
		"syntax: join ends too soon; it goes on with a name, as in join low.team to high.litter",
	}, ""},
	{"include⟦⟧", []string{
		"syntax: include ends too soon; it goes on with a name, as in include shaft-raise as low",
	}, ""},
	{"include a⟦⟧", []string{
		"syntax: include ends too soon; it goes on with as, as in include shaft-raise as low",
	}, ""},
	{"include a as b with⟦⟧", []string{
		"syntax: with ends too soon; it goes on with a name, as in with litter mass 90 kg",
	}, "include a as b"},
	{"include a as b with c⟦⟧", []string{
		"syntax: c needs a clause that changes it, as in with litter mass 90 kg",
	}, "include a as b"},
	{"include a as b with c mass 5 ⟦m⟧ raise 3 m", []string{
		"bad-unit: c: mass takes kg, g, t or lb, and m is a unit of length",
	}, "include a as b with c [raise 3 m]"},
	{"include a as b with c ⟦masss⟧ 5 kg", []string{
		"unknown-clause: c: a part has no clause masss, did you mean mass?",
	}, "include a as b with c"},
	{"include a as b with c ⟦on⟧ d", []string{
		"syntax: c: a copied part keeps what it is on",
	}, "include a as b with c"},
	{"include a as b without c ⟦d⟧", []string{
		"syntax: without ends before d, as in without knot-a",
	}, "include a as b"},
	{"include a as ⟦load⟧", []string{
		"reserved-name: load is a word of the notation and cannot be a name",
	}, ""},
	{"accept foo at x⟦⟧", []string{
		`syntax: accept ends too soon; it goes on with because, as in accept redirect-loads-anchor at corner because "No room above."`,
	}, ""},
	{"accept foo because ⟦reason⟧", []string{
		`syntax: accept goes on with a text in quotes, not reason, as in accept redirect-loads-anchor at corner because "No room above."`,
	}, ""},
	{`accept foo because ⟦""⟧`, []string{
		"syntax: accept needs its reason between the quotes: why the finding is none here",
	}, `accept foo ""`},
	{`accept foo because ⟦"  "⟧`, []string{
		"syntax: accept needs its reason between the quotes: why the finding is none here",
	}, `accept foo "  "`},
	{`accept foo ⟦"reason"⟧`, []string{
		`syntax: accept goes on with at or because, not "reason", as in accept redirect-loads-anchor at corner because "No room above."`,
	}, ""},
	{"policy⟦⟧", []string{
		`syntax: policy ends too soon; it goes on with a name, as in policy quarry-team "House rules of the training ground"`,
	}, ""},
	{`policy p "House" ⟦rules⟧`, []string{
		`syntax: policy ends before rules, as in policy quarry-team "House rules of the training ground"`,
	}, `policy p "House"`},
	{"require ⟦fator⟧ 10", []string{
		"syntax: require goes on with a figure, not fator, did you mean factor?",
	}, ""},
	{"require factor 4 for ⟦hich⟧", []string{
		"syntax: require goes on with a kind, not hich, did you mean hitch?",
	}, ""},
	{"require factor 4 ⟦kN⟧", []string{
		"bad-unit: factor is a plain number, without kN",
	}, ""},
	{"require pull under 300 N for ⟦hitch⟧", []string{
		"syntax: pull is asked of the whole rig; only factor is asked for a kind",
	}, ""},
	{"require drop under 1 m per ⟦person⟧", []string{
		"syntax: drop is not counted per person; only pull is",
	}, ""},
	{"require ⟦people⟧ under 18", []string{
		"syntax: require goes on with a figure, not people, did you mean people times advantage?",
	}, ""},
	{"rule foo ⟦fatal⟧", []string{
		"syntax: rule goes on with error, warning, advice or off, not fatal, as in rule redirect-loads-anchor error",
	}, ""},
	{"rule foo ⟦eror⟧", []string{
		"syntax: rule goes on with error, warning, advice or off, not eror, did you mean error?",
	}, ""},
	{"rule foo⟦⟧", []string{
		"syntax: rule ends too soon; it goes on with error, warning, advice or off, as in rule redirect-loads-anchor error",
	}, ""},
	{"stock⟦⟧", []string{
		"syntax: stock needs a kind and the name of a model, as in stock pulley twin strength 36 kN",
	}, ""},
	{"stock ⟦puley⟧ foo", []string{
		"syntax: puley is no kind of part, did you mean pulley?",
	}, ""},
	{"stock pulley⟦⟧", []string{
		"syntax: stock needs a kind and the name of a model, as in stock pulley twin strength 36 kN",
	}, ""},
	{"stock pulley ⟦load⟧", []string{
		"reserved-name: load is a word of the notation and cannot be a name",
	}, ""},
	{"stock pulley foo ⟦strenght⟧ 5 kN holds", []string{
		"unknown-clause: foo: a pulley has no clause strenght, did you mean strength?",
	}, "stock pulley foo [holds]"},
	{"stock pulley foo ⟦on⟧ head", []string{
		"syntax: foo: a model is on no part",
	}, "stock pulley foo"},
	{"stock pulley foo ⟦padded⟧", []string{
		"unknown-clause: foo: a pulley does not take padded; it takes efficiency, strength, sheaves, holds, sideways, set-back, releasable, at, length and mass",
	}, "stock pulley foo"},
}

func TestFaultsOfOtherStatements(t *testing.T) { runFaults(t, otherFaults) }
