package syntax

import "testing"

// clauseFaults are faults of clauses and of "on"; the part is there all the same.
var clauseFaults = []faultCase{
	{"pulley top ⟦efficency⟧ 92 % strength 36 kN", []string{
		"unknown-clause: top: a pulley has no clause efficency, did you mean efficiency?",
	}, "pulley top [strength 36 kN]"},
	{"pulley top bearing ⟦efficency⟧ 92 % strength 36 kN", []string{
		"unknown-clause: top: a pulley has no clause efficency, did you mean efficiency?",
	}, "pulley top model bearing [strength 36 kN]"},
	{"pulley top on head ⟦efficency⟧ 92 % strength 36 kN", []string{
		"unknown-clause: top: a pulley has no clause efficency, did you mean efficiency?",
	}, "pulley top on head [strength 36 kN]"},
	{"pulley top holds ⟦efficency⟧ 92 %", []string{
		"unknown-clause: top: a pulley has no clause efficency, did you mean efficiency?",
	}, "pulley top [holds]"},
	{"pulley top bearing ⟦sleeve⟧ on head", []string{
		"unknown-clause: top: a pulley has no clause sleeve; it takes efficiency, strength, sheaves, holds, sideways, set-back, releasable, at, length and mass",
	}, "pulley top model bearing on head"},
	{"rope long ⟦materail⟧ polyamide length 3 m", []string{
		"unknown-clause: long: a rope has no clause materail, did you mean material?",
	}, "rope long [length 3 m]"},
	{"edge lip friction 0.4 ⟦paded⟧", []string{
		"unknown-clause: lip: an edge has no clause paded, did you mean padded?",
	}, "edge lip [friction 0.4]"},
	{"edge lip friction 0.4 to 0.5 ⟦paded⟧ ⟦strut⟧", []string{
		"unknown-clause: lip: an edge has no clause paded, did you mean padded?",
		"unknown-clause: lip: an edge does not take strut; it takes angle, friction, efficiency, padded, at, length and mass",
	}, "edge lip [friction 0.4 to 0.5]"},
	{"hauler team people 3 ⟦persons⟧", []string{
		"unknown-clause: team: a hauler has no clause persons; it takes people, pull, at, length and mass",
	}, "hauler team [people 3]"},
	{"pulley top ⟦onn⟧ head", []string{
		"unknown-clause: top: a pulley has no clause onn, did you mean on?",
	}, "pulley top"},
	{"pulley top ⟦padded⟧ on head", []string{
		"unknown-clause: top: a pulley does not take padded; it takes efficiency, strength, sheaves, holds, sideways, set-back, releasable, at, length and mass",
	}, "pulley top on head"},
	{"tender minder ⟦people⟧ 3", []string{
		"unknown-clause: minder: a tender does not take people; it takes at, length and mass",
	}, "tender minder"},
	{"hitch grab ⟦sheaves⟧ 2 kN cord 8 mm", []string{
		"unknown-clause: grab: a hitch does not take sheaves; it takes cord, wraps, slips, strength, holds, set-back, releasable, at, length and mass",
	}, "hitch grab [cord 8 mm]"},
	{"pulley top on head ⟦on⟧ litter holds", []string{
		"repeated-clause: top: on stands twice",
	}, "pulley top on head [holds]"},
	{"pulley top strength 36 kN ⟦strength⟧ 30 kN", []string{
		"repeated-clause: top: strength stands twice",
	}, "pulley top [strength 36 kN]"},
	{"pulley top holds ⟦holds⟧ litter", []string{
		"repeated-clause: top: holds stands twice",
	}, "pulley top [holds]"},
	{"pulley top at 1.2 m⟦, 4.5 m⟧ holds", []string{
		"syntax: top: two positions, as in at 1.2 m, 4.5 m, are reserved for later; write one, along the line",
	}, "pulley top [at 1.2 m, holds]"},
	{"pulley top⟦,⟧ efficiency 0.85", []string{
		"syntax: top: clauses stand side by side, without commas",
	}, "pulley top [efficiency 0.85]"},
	{"pulley top strength 36 kN⟦,⟧ holds", []string{
		"syntax: top: clauses stand side by side, without commas",
	}, "pulley top [strength 36 kN, holds]"},
	{"pulley top strength ⟦kN⟧ holds", []string{
		"syntax: top: strength needs a number, as in strength 30 kN, not kN",
	}, "pulley top [holds]"},
	{"pulley top strength⟦⟧ holds", []string{
		"syntax: top: strength needs a number, as in strength 30 kN",
	}, "pulley top [holds]"},
	{"pulley top strength⟦⟧", []string{
		"syntax: top: strength needs a number, as in strength 30 kN",
	}, "pulley top"},
	{"pulley top sheaves ⟦two⟧", []string{
		"syntax: top: sheaves needs a number, as in sheaves 2, not two",
	}, "pulley top"},
	{"pulley top efficiency 0.85 to⟦⟧", []string{
		"syntax: top: the range needs a second number, as in 0.85 to 0.95",
	}, "pulley top"},
	{"pulley top efficiency 0.85 to ⟦%⟧ holds", []string{
		"syntax: top: the range needs a second number, as in 0.85 to 0.95, not %",
	}, "pulley top [holds]"},
	{"pulley top efficiency 0.85 to⟦⟧ holds", []string{
		"syntax: top: the range needs a second number, as in 0.85 to 0.95",
	}, "pulley top [holds]"},
	{"pulley top efficiency 85 ⟦%⟧ to 95 %", []string{
		"syntax: top: the unit of a range stands once, after it, as in 0.85 to 0.95 %",
	}, "pulley top [efficiency 85 %]"},
	{"pulley top efficiency ⟦0.85-0.95⟧", []string{
		"syntax: top: a range is written with to, as in 0.85 to 0.95",
	}, "pulley top [efficiency 0.85]"},
	{"pulley top efficiency ⟦0.85 -0.95⟧ %", []string{
		"syntax: top: a range is written with to, as in 0.85 to 0.95",
	}, "pulley top [efficiency 0.85]"},
	{"pulley top ⟦92⟧ %", []string{
		"syntax: top: 92 belongs to no clause",
	}, "pulley top"},
	{"pulley top holds ⟦92⟧ %", []string{
		"syntax: top: 92 belongs to no clause",
	}, "pulley top [holds]"},
	{"device x strength 3 kN ⟦lowering⟧ 40 %", []string{
		"syntax: x: lowering stands after an efficiency only, as in efficiency 60 % lowering 40 %",
	}, "device x [strength 3 kN]"},
	{"device x efficiency 60 % lowering⟦⟧", []string{
		"syntax: x: lowering needs a number, as in efficiency 60 % lowering 40 %",
	}, "device x"},
	{"device x efficiency ⟦lowering⟧ 40 %", []string{
		"syntax: x: efficiency needs a number, as in efficiency 92 %, not lowering",
	}, "device x"},
	{"pulley top on⟦⟧", []string{
		"syntax: top: on needs a name, as in on head",
	}, "pulley top"},
	{"pulley top on⟦⟧ holds", []string{
		"syntax: top: on needs a name, as in on head",
	}, "pulley top [holds]"},
	{"pulley top on ⟦anchor⟧ holds", []string{
		"reserved-name: top: anchor is a word of the notation and cannot be a name",
	}, "pulley top [holds]"},
	{"leg left from⟦⟧ to master", []string{
		"syntax: left: from needs a name, as in from tree",
	}, "leg left [to master]"},
	{"leg left from tree to ⟦load⟧", []string{
		"reserved-name: left: load is a word of the notation and cannot be a name",
	}, "leg left [from tree]"},
	{"rope long material⟦⟧", []string{
		"syntax: long: material needs a name, as in material polyamide",
	}, "rope long"},
	{"rope long material ⟦rope⟧", []string{
		"reserved-name: long: rope is a word of the notation and cannot be a name",
	}, "rope long"},
	{"hauler team people ⟦2.5⟧", []string{
		"syntax: team: people is a whole number",
	}, "hauler team"},
	{"hauler team people 3 to ⟦4.5⟧", []string{
		"syntax: team: people is a whole number",
	}, "hauler team"},
	{"pulley top holds ⟦anchor⟧ strength 3 kN", []string{
		"reserved-name: top: anchor is a word of the notation and cannot be a name",
	}, "pulley top [holds, strength 3 kN]"},
	{"pulley top ⟦(⟧holds)", []string{
		"syntax: top: parentheses stand at the nodes of a reeving line only",
	}, "pulley top [holds]"},
	{"pulley top ⟦/⟧ head", []string{
		"syntax: top: strokes stand in a reeving line only",
	}, "pulley top"},
	{`pulley top ⟦"title"⟧`, []string{
		`syntax: top: "title" cannot stand here`,
	}, "pulley top"},
	{"pulley top on head ⟦:⟧ x", []string{
		"syntax: top: : cannot stand here",
	}, "pulley top on head"},
	{"pulley top on head ⟦with⟧ litter", []string{
		"syntax: top: with cannot stand here",
	}, "pulley top on head"},
}

func TestFaultsOfClauses(t *testing.T) { runFaults(t, clauseFaults) }
