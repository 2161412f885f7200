package syntax

import "testing"

// reeveFaults are faults in the path of a rope.
var reeveFaults = []faultCase{
	{"reeve long⟦⟧ litter / grab", []string{
		"syntax: long needs a colon before its first node, as in reeve long: litter / head",
	}, "long: litter / grab"},
	{"reeve long⟦⟧", []string{
		"syntax: long needs a colon before its first node, as in reeve long: litter / head",
	}, ""},
	{"reeve⟦⟧", []string{
		"syntax: reeve needs the name of a rope and a colon, as in reeve long: litter / head",
	}, ""},
	{"reeve ⟦:⟧ a / b", []string{
		"syntax: reeve needs the name of a rope and a colon, as in reeve long: litter / head, not :",
	}, ""},
	{"reeve ⟦anchor⟧: a / b", []string{
		"reserved-name: anchor is a word of the notation and cannot be a name",
	}, ""},
	{"reeve ⟦5⟧: a / b", []string{
		"syntax: reeve needs the name of a rope and a colon, as in reeve long: litter / head, not 5",
	}, ""},
	{"reeve long:⟦⟧", []string{
		"syntax: long needs a node first, the part that it is tied to",
	}, ""},
	{"reeve long: ⟦litter⟧", []string{
		"syntax: long needs two nodes or more, as in reeve long: litter / head",
	}, ""},
	{"reeve long:⟦⟧ / litter / grab", []string{
		"syntax: long needs a node first, the part that it is tied to",
	}, ""},
	{"reeve long: litter /⟦⟧ / grab", []string{
		"syntax: long needs a node after the stroke /",
	}, ""},
	{"reeve long: litter /⟦⟧/grab", []string{
		"syntax: long needs a node after the stroke /",
	}, ""},
	{`reeve long: litter / grab \⟦⟧`, []string{
		`syntax: long needs a node after the stroke \`,
	}, ""},
	{"reeve long: litter⟦⟧ grab / top", []string{
		`syntax: long needs a stroke before grab: / up, \ down or ~ slack`,
	}, ""},
	{`reeve long: litter / grab (holds)⟦⟧ top \ x⟦⟧ y`, []string{
		`syntax: long needs a stroke before top: / up, \ down or ~ slack`,
		`syntax: long needs a stroke before y: / up, \ down or ~ slack`,
	}, ""},
	{"reeve long: litter / ⟦anchor⟧ / team", []string{
		"reserved-name: anchor is a word of the notation and cannot be a name",
	}, ""},
	{"reeve long: litter / ⟦pulley⟧ (holds) / team", []string{
		"reserved-name: pulley is a word of the notation and cannot be a name",
	}, ""},
	{"reeve long: litter / ⟦efficiency⟧", []string{
		"reserved-name: efficiency is a word of the notation and cannot be a name",
	}, ""},
	{"reeve long: litter ~ ⟦(⟧figure-eight) / top", []string{
		"syntax: slack takes no clauses; they stand after the name of a node",
	}, ""},
	{"reeve long: litter / ⟦(⟧holds) / top", []string{
		"syntax: parentheses stand after the name of a node, as in top (holds)",
	}, ""},
	{"reeve long: ⟦(⟧holds) / top", []string{
		"syntax: parentheses stand after the name of a node, as in top (holds)",
	}, ""},
	{"reeve long: litter / ⟦loop⟧ / team", []string{
		"syntax: loop stands at the end of a line only",
	}, ""},
	{"reeve long: litter / ⟦loop⟧", []string{
		"syntax: long needs two nodes or more to be a loop",
	}, ""},
	{"reeve long: ⟦loop⟧ / litter", []string{
		"syntax: loop stands at the end of a line only",
	}, ""},
	{"reeve long: a / b / ⟦loop (holds)⟧", []string{
		"syntax: loop is a word of the line, not a part, and takes no clauses",
	}, "long: a / b / loop"},
	{"reeve long: litter / ⟦5⟧ / team", []string{
		"syntax: 5 stands where the name of a node should",
	}, ""},
	{`reeve long: litter / ⟦"x"⟧ / team`, []string{
		`syntax: "x" stands where the name of a node should`,
	}, ""},
	{"reeve long: litter ⟦:⟧ top / team", []string{
		"syntax: : stands where a stroke should",
	}, ""},
	{"reeve long: litter⟦,⟧ top / team", []string{
		"syntax: , stands where a stroke should",
	}, ""},
	{"reeve long: litter / top ⟦holds⟧ / team", []string{
		"syntax: the clauses of top stand in parentheses, as in top (holds)",
	}, ""},
	{"reeve long: litter / top ⟦angle 90 deg⟧ / team", []string{
		"syntax: the clauses of top stand in parentheses, as in top (holds)",
	}, ""},
	{"reeve long: litter ⟦5⟧ m / team", []string{
		"syntax: 5 stands where a stroke should",
	}, ""},
	{"reeve long: litter / ⟦№⟧ / team", []string{
		"bad-character: № has no meaning in a rig file",
	}, ""},
	{"reeve long: litter / grab /⟦⟧\n\nanchor x", []string{
		"syntax: long needs a node after the stroke /",
	}, "anchor x"},
}

func TestFaultsOfReevingLines(t *testing.T) { runFaults(t, reeveFaults) }
