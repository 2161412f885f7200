package syntax

import "testing"

// characterFaults are faults of single characters, numbers and words.
var characterFaults = []faultCase{
	{"anchor a⟦\r⟧anchor b", []string{
		"bad-character: a lone carriage return ends no line; write a line feed",
	}, "anchor a"},
	{"anchor a⟦\r⟧\r\nanchor b", []string{
		"bad-character: a lone carriage return ends no line; write a line feed",
	}, "anchor a\nanchor b"},
	{"# a⟦\r⟧b", []string{
		"bad-character: a lone carriage return ends no line; write a line feed",
	}, ""},
	{"anchor ⟦\x01⟧a", []string{
		"bad-character: the control character U+0001 is not allowed",
	}, ""},
	{"anchor a # x⟦\a\a⟧y", []string{
		"bad-character: the control character U+0007 is not allowed",
	}, "anchor a"},
	{"rig a \"b⟦\x00⟧c\"", []string{
		"bad-character: the control character U+0000 is not allowed",
	}, `rig a "b\x00c"`},
	{"anchor ⟦\xff\xfe⟧ on", []string{
		"bad-character: this is not UTF-8 text",
	}, ""},
	{"# ⟦\xc3⟧(", []string{
		"bad-character: this is not UTF-8 text",
	}, ""},
	{"rig a \"⟦\xe2\x82⟧\"", []string{
		"bad-character: this is not UTF-8 text",
	}, `rig a "�"`},
	{"anchor ⟦\ufeff⟧a", []string{
		"bad-character: a byte order mark stands at the start of a file only",
	}, ""},
	{"anchor⟦\u00a0⟧a", []string{
		"bad-character: U+00A0 is no blank of the notation; write a space",
	}, ""},
	{"anchor a⟦\u200b⟧b", []string{
		"bad-character: U+200B is no blank of the notation; write a space",
	}, "anchor a"},
	{"anchor a⟦\u2028⟧anchor b", []string{
		"bad-character: U+2028 is no blank of the notation; write a space",
	}, "anchor a"},
	{"anchor a⟦;⟧ load b", []string{
		"bad-character: ; has no meaning here; each statement has a line of its own",
	}, "anchor a"},
	{"anchor ⟦“⟧a⟦”⟧", []string{
		`bad-character: “ has no meaning here; quotes are written "`,
		`bad-character: ” has no meaning here; quotes are written "`,
	}, ""},
	{"anchor a strength ⟦=⟧ 3 kN", []string{
		"bad-character: = has no meaning here; a clause is its word and its value side by side",
	}, "anchor a"},
	{"anchor a strength ⟦−⟧3 kN", []string{
		"bad-character: − has no meaning here; the sign and the hyphen are written -",
	}, "anchor a"},
	{"reeve long: a ⟦→⟧ b", []string{
		"bad-character: → has no meaning in a rig file",
	}, ""},
	{"reeve long: a ⟦／⟧ b", []string{
		"bad-character: ／ has no meaning here; up the line is written /",
	}, ""},
	{"reeve long: a ⟦|⟧ b", []string{
		"bad-character: | has no meaning in a rig file",
	}, ""},
	{"edge lip angle 90⟦°⟧", []string{
		"bad-character: ° has no meaning here; an angle is written 90 deg",
	}, "edge lip"},
	{"pulley top on head ⟦@⟧ 3 m", []string{
		"bad-character: @ has no meaning in a rig file",
	}, "pulley top on head"},
	{"anchor a strength 3 ⟦kN.⟧ load b", []string{
		"syntax: kN. has a point that no word follows or precedes",
	}, "anchor a"},
	{"anchor a ⟦-⟧ b", []string{
		"syntax: - stands before digits or inside a word only",
	}, "anchor a"},
	{"anchor a strength ⟦[⟧3 kN⟦]⟧", []string{
		"bad-character: [ has no meaning here; clauses of a node stand in ( )",
		"bad-character: ] has no meaning here; clauses of a node stand in ( )",
	}, "anchor a"},
	{"anchor a strength ⟦1e3⟧ N", []string{
		"syntax: 1e3 is written with an exponent, which numbers here have not",
	}, "anchor a"},
	{"anchor a strength ⟦1.5E-3⟧kN", []string{
		"syntax: 1.5E-3 is written with an exponent, which numbers here have not",
	}, "anchor a"},
	{"anchor a strength ⟦1,5⟧ kN ⟦holds⟧", []string{
		"syntax: 1,5 has a comma; the decimal sign is a point, and thousands are not parted",
		"unknown-clause: a: an anchor does not take holds; it takes strength, efficiency, friction, turns, at, length and mass",
	}, "anchor a"},
	{"anchor a strength ⟦1,000.5⟧ N", []string{
		"syntax: 1,000.5 has a comma; the decimal sign is a point, and thousands are not parted",
	}, "anchor a"},
	{"anchor a strength ⟦.5⟧ kN", []string{
		"syntax: .5 begins with a point; write 0.5",
	}, "anchor a"},
	{"anchor a strength ⟦-.5⟧ kN", []string{
		"syntax: -.5 begins with a point; write 0.5",
	}, "anchor a"},
	{"anchor a strength ⟦5.⟧ kN", []string{
		"syntax: 5. ends in a point; leave it out or write a digit after it",
	}, "anchor a"},
	{"anchor a strength ⟦+5⟧ kN", []string{
		"syntax: +5 has a plus sign; a number without a sign is positive",
	}, "anchor a"},
	{"anchor a strength ⟦1.2.3⟧ kN", []string{
		"syntax: 1.2.3 has more than one point",
	}, "anchor a"},
	{"anchor a strength ⟦1234567890123456789012345678901⟧ N", []string{
		"syntax: 1234567890123456789012345678901 has more than 30 digits",
	}, "anchor a"},
	{"anchor a strength ⟦0.123456789012345678901234567890⟧ N", []string{
		"syntax: 0.123456789012345678901234567890 has more than 30 digits",
	}, "anchor a"},
	{"anchor ⟦a-⟧", []string{
		"syntax: a- ends in -, which no name does",
	}, "anchor a-"},
	{"anchor ⟦b-⟧ on c", []string{
		"syntax: b- ends in -, which no name does",
	}, "anchor b- on c"},
	{"anchor ⟦low.⟧", []string{
		"syntax: low. has a point that no word follows or precedes",
	}, ""},
	{"anchor ⟦low..x⟧", []string{
		"syntax: low..x has a point that no word follows or precedes",
	}, ""},
	{"anchor ⟦low.3⟧", []string{
		"syntax: low.3 begins with no letter",
	}, ""},
	{"anchor ⟦_x⟧", []string{
		"syntax: _x begins with no letter",
	}, ""},
	{"anchor ⟦a_.b-.c⟧", []string{
		"syntax: a_.b-.c ends in -, which no name does",
	}, "anchor a_.b-.c"},
	{`rig foo ⟦"bar⟧`, []string{
		"syntax: the text has no closing quote on its line",
	}, "rig foo"},
	{`rig foo ⟦"bar\"⟧`, []string{
		"syntax: the text has no closing quote on its line",
	}, "rig foo"},
	{`rig foo "b⟦\a⟧r" `, []string{
		`syntax: a backslash in quotes stands before " or \ only`,
	}, `rig foo "b\\ar"`},
	{`rig foo "b⟦\ä⟧" ⟦"⟧`, []string{
		`syntax: a backslash in quotes stands before " or \ only`,
		"syntax: the text has no closing quote on its line",
	}, `rig foo "b\\ä"`},
	{`accept x because ⟦"no # end⟧`, []string{
		"syntax: the text has no closing quote on its line",
	}, ""},
}

func TestFaultsOfCharacters(t *testing.T) { runFaults(t, characterFaults) }
