package syntax

import "testing"

// unitFaults are units that are unknown, missing or of another dimension.
var unitFaults = []faultCase{
	{"load litter mass 18⟦O⟧ kg people 2", []string{
		"bad-unit: litter: mass has the unknown unit O; it takes kg, g, t or lb",
	}, "load litter [people 2]"},
	{"load litter mass 18⟦O⟧ ⟦foo⟧", []string{
		"bad-unit: litter: mass has the unknown unit O; it takes kg, g, t or lb",
		"unknown-clause: litter: a load has no clause foo; it takes mass, weight, slope, friction, people, raise, at and length",
	}, "load litter"},
	{"pulley top strength 36 ⟦kg⟧ holds", []string{
		"bad-unit: top: strength takes lbf, N, kN or daN, and kg is a unit of mass",
	}, "pulley top [holds]"},
	{"pulley top strength 36 ⟦newtons⟧ holds", []string{
		"bad-unit: top: strength has the unknown unit newtons, did you mean N?",
	}, "pulley top [holds]"},
	{"pulley top strength ⟦36⟧ holds", []string{
		"bad-unit: top: strength needs a unit: lbf, N, kN or daN",
	}, "pulley top [holds]"},
	{"pulley top strength ⟦36 to 40⟧ holds", []string{
		"bad-unit: top: strength needs a unit: lbf, N, kN or daN",
	}, "pulley top [holds]"},
	{"pulley top strength 36⟦kNN⟧ holds", []string{
		"bad-unit: top: strength has the unknown unit kNN, did you mean kN?",
	}, "pulley top [holds]"},
	{"pulley top strength 36 ⟦KN⟧ holds", []string{
		"bad-unit: top: strength has the unknown unit KN, did you mean kN?",
	}, "pulley top [holds]"},
	{"pulley top strength 36 ⟦parsec⟧ holds", []string{
		"bad-unit: top: strength has the unknown unit parsec; it takes lbf, N, kN or daN",
	}, "pulley top [holds]"},
	{"pulley top strength 36⟦holds⟧", []string{
		"bad-unit: top: strength has the unknown unit holds; it takes lbf, N, kN or daN",
	}, "pulley top"},
	{"pulley top strength 36 ⟦%⟧", []string{
		"bad-unit: top: strength takes lbf, N, kN or daN, and % is a unit of proportion",
	}, "pulley top"},
	{"pulley top efficiency 92 ⟦percent⟧", []string{
		"bad-unit: top: efficiency has the unknown unit percent, did you mean %?",
	}, "pulley top"},
	{"pulley top efficiency 92 ⟦m⟧", []string{
		"bad-unit: top: efficiency takes % or a plain number, and m is a unit of length",
	}, "pulley top"},
	{"pulley top sheaves 2 ⟦m⟧", []string{
		"bad-unit: top: sheaves is a plain number, without m",
	}, "pulley top"},
	{"pulley top sheaves 2⟦x⟧", []string{
		"bad-unit: top: sheaves is a plain number, without x",
	}, "pulley top"},
	{"device x efficiency 60 % lowering 40 ⟦m⟧", []string{
		"bad-unit: x: lowering takes % or a plain number, and m is a unit of length",
	}, "device x"},
	{"load litter mass 80 ⟦kgs⟧", []string{
		"bad-unit: litter: mass has the unknown unit kgs, did you mean kg?",
	}, "load litter"},
	{"load litter mass 80 ⟦tons⟧", []string{
		"bad-unit: litter: mass has the unknown unit tons, did you mean t?",
	}, "load litter"},
	{"load litter slope ⟦30⟧", []string{
		"bad-unit: litter: slope needs a unit: deg",
	}, "load litter"},
	{"load litter slope 30⟦°⟧", []string{
		"bad-character: ° has no meaning here; an angle is written 90 deg",
	}, "load litter"},
	{"rope long length 60 ⟦feet⟧ diameter ⟦11⟧", []string{
		"bad-unit: long: length has the unknown unit feet, did you mean ft?",
		"bad-unit: long: diameter needs a unit: m, cm, mm, ft or in",
	}, "rope long"},
	{"units ⟦kg⟧", []string{
		"bad-unit: kg is no unit of force or length; it is one of lbf, N, kN, daN, m, cm, mm, ft or in",
	}, ""},
	{"units kN ⟦lbf⟧", []string{
		"syntax: lbf is a second unit of force",
	}, ""},
	{"units ⟦kn⟧", []string{
		"bad-unit: kn is no unit of force or length, did you mean kN?",
	}, ""},
	{"units⟦⟧", []string{
		"syntax: units needs a unit of force, one of length or both, as in units kN m",
	}, ""},
	{"units kN m ⟦ft⟧", []string{
		"syntax: units ends before ft, as in units kN m",
	}, ""},
	{"units ⟦5⟧", []string{
		"syntax: 5 is no unit of force or length; it is written as in units kN m",
	}, ""},
}

func TestFaultsOfUnits(t *testing.T) { runFaults(t, unitFaults) }
