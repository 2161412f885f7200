package syntax

import "testing"

// statementFaults are lines that begin wrongly.
var statementFaults = []faultCase{
	{"⟦puley⟧ top on head", []string{
		"unknown-statement: puley begins no statement, did you mean pulley?",
	}, ""},
	{"⟦hualer⟧ team", []string{
		"unknown-statement: hualer begins no statement, did you mean hauler?",
	}, ""},
	{"⟦Anchor⟧ head", []string{
		"unknown-statement: Anchor begins no statement, did you mean anchor?",
	}, ""},
	{"⟦foo⟧ bar", []string{
		"unknown-statement: foo begins no statement; a line begins with a kind of part, such as pulley, or with rig, use, include, join, reeve, expect, accept, units, stock, policy, require or rule",
	}, ""},
	{"⟦top⟧ on head", []string{
		"unknown-statement: top begins no statement; a line begins with a kind of part, such as pulley, or with rig, use, include, join, reeve, expect, accept, units, stock, policy, require or rule",
	}, ""},
	{"⟦long⟧: litter / grab", []string{
		"unknown-statement: long begins no statement; a reeving line is written reeve long: …",
	}, ""},
	{"⟦efficiency⟧ 92 %", []string{
		"unknown-statement: efficiency begins no statement; a clause stands on the line of its part",
	}, ""},
	{"⟦on⟧ head", []string{
		"unknown-statement: on begins no statement; a clause stands on the line of its part",
	}, ""},
	{"⟦42⟧", []string{
		"unknown-statement: a statement begins with its keyword, such as pulley or reeve, not with 42",
	}, ""},
	{`⟦"title"⟧`, []string{
		`unknown-statement: a statement begins with its keyword, such as pulley or reeve, not with "title"`,
	}, ""},
	{"⟦:⟧ x", []string{
		"unknown-statement: a statement begins with its keyword, such as pulley or reeve, not with :",
	}, ""},
	{"⟦%⟧ x", []string{
		"unknown-statement: a statement begins with its keyword, such as pulley or reeve, not with %",
	}, ""},
	{"⟦/⟧ a", []string{
		"unknown-statement: the stroke / goes on with no reeving line; only comment lines may stand between",
	}, ""},
	{"reeve long: a / b\n\n⟦/⟧ c", []string{
		"unknown-statement: the stroke / goes on with no reeving line; only comment lines may stand between",
	}, "long: a / b"},
	{"reeve long: a / b \\⟦⟧\nanchor c", []string{
		`syntax: long needs a node after the stroke \`,
	}, "anchor c"},
	{"anchor a\n\n\n⟦ancor⟧ b\nanchor c strength ⟦5⟧\nload d", []string{
		"unknown-statement: ancor begins no statement, did you mean anchor?",
		"bad-unit: c: strength needs a unit: lbf, N, kN or daN",
	}, "anchor a\nanchor c\nload d"},
	{"pulley⟦⟧", []string{
		"syntax: pulley needs a name first, as in pulley top on head",
	}, ""},
	{"pulley ⟦5⟧ on head", []string{
		"syntax: pulley needs a name first, as in pulley top on head; a name begins with a letter",
	}, ""},
	{"pulley ⟦2⟧nd on head", []string{
		"syntax: pulley needs a name first, as in pulley top on head; a name begins with a letter",
	}, ""},
	{"pulley ⟦on⟧ head", []string{
		"syntax: pulley needs a name first, as in pulley top on head, not on",
	}, ""},
	{`pulley ⟦"top"⟧`, []string{
		`syntax: pulley needs a name first, as in pulley top on head, not "top"`,
	}, ""},
	{"pulley ⟦anchor⟧ on head", []string{
		"reserved-name: anchor is a word of the notation and cannot be a name",
	}, "pulley anchor on head"},
	{"pulley top on head ⟦anchor⟧ head", []string{
		"syntax: top: anchor begins a statement of its own, on a new line",
	}, "pulley top on head"},
}

func TestFaultsOfStatements(t *testing.T) { runFaults(t, statementFaults) }
