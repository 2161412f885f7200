package syntax

import "testing"

// claimFaults are faults of "expect".
var claimFaults = []faultCase{
	{"expect⟦⟧", []string{
		"syntax: expect needs a claim, such as expect advantage 3:1",
	}, ""},
	{"expect ⟦advantag⟧ 3:1", []string{
		"syntax: advantag is no claim, did you mean advantage?",
	}, ""},
	{"expect ⟦foo⟧", []string{
		"syntax: foo is no claim; the claims are advantage, actual advantage, pull, load, factor, travel, class, held, not held, stroke, lower hand and finding",
	}, ""},
	{"expect ⟦3⟧:1", []string{
		"syntax: 3 is no claim; the claims are advantage, actual advantage, pull, load, factor, travel, class, held, not held, stroke, lower hand and finding",
	}, ""},
	{"expect actual⟦⟧", []string{
		"syntax: expect ends too soon; it goes on with advantage, as in expect advantage 3:1",
	}, ""},
	{"expect actual ⟦pull⟧ 3", []string{
		"syntax: expect goes on with advantage, not pull, as in expect advantage 3:1",
	}, ""},
	{"expect advantage⟦⟧", []string{
		"syntax: expect ends too soon; it goes on with over, under or a number, as in expect advantage 3:1",
	}, ""},
	{"expect advantage 3:⟦⟧", []string{
		"syntax: expect ends too soon; it goes on with a number, as in expect advantage 3:1",
	}, ""},
	{"expect advantage 3:⟦0⟧", []string{
		"syntax: a ratio to 0 means nothing",
	}, ""},
	{"expect advantage 3 ⟦to⟧ 4", []string{
		"syntax: expect goes on with : or by, not to, as in expect advantage 3:1",
	}, ""},
	{"expect advantage 3 ⟦kN⟧", []string{
		"syntax: expect goes on with : or by, not kN, as in expect advantage 3:1",
	}, ""},
	{"expect advantage ⟦3/1⟧", []string{
		"syntax: 3 / 1 is written 3:1, since / is a stroke",
	}, ""},
	{"expect advantage over ⟦under⟧ 3", []string{
		"syntax: expect goes on with a number, not under, as in expect advantage 3:1",
	}, ""},
	{"expect advantage 3:1 by⟦⟧", []string{
		"syntax: expect ends too soon; it goes on with a name, as in expect advantage 3:1",
	}, ""},
	{"expect advantage 3:1 by ⟦anchor⟧", []string{
		"reserved-name: anchor is a word of the notation and cannot be a name",
	}, ""},
	{"expect advantage 3:1 ⟦bye⟧ team", []string{
		"syntax: expect goes on with by, not bye, did you mean by?",
	}, ""},
	{"expect pull ⟦abov⟧ 300 N", []string{
		"syntax: expect goes on with over, under or a number, not abov, as in expect pull under 300 N per person",
	}, ""},
	{"expect pull ⟦ovr⟧ 300 N", []string{
		"syntax: expect goes on with over, under or a number, not ovr, did you mean over?",
	}, ""},
	{"expect pull ⟦300⟧", []string{
		"bad-unit: pull needs a unit: lbf, N, kN or daN",
	}, ""},
	{"expect pull 300 ⟦kg⟧", []string{
		"bad-unit: pull takes lbf, N, kN or daN, and kg is a unit of mass",
	}, ""},
	{"expect pull under 300 N per ⟦peson⟧", []string{
		"syntax: expect goes on with person, not peson, did you mean person?",
	}, ""},
	{"expect pull under 200 ⟦to⟧ 300 N", []string{
		"syntax: expect goes on with per, by or a unit, not to, as in expect pull under 300 N per person",
	}, ""},
	{"expect load on head⟦⟧", []string{
		"syntax: expect ends too soon; it goes on with over, under or a number, as in expect load on head under 6 kN",
	}, ""},
	{"expect load ⟦of⟧ head 3 kN", []string{
		"syntax: expect goes on with on, not of, did you mean on?",
	}, ""},
	{"expect advantage over ⟦5/2⟧", []string{
		"syntax: 5 / 2 is written 5:2, since / is a stroke",
	}, ""},
	{"expect load on head ⟦2/3⟧", []string{
		"syntax: 2 / 3 is written 2:3, since / is a stroke",
	}, ""},
	{"expect load on head under ⟦2 / 3⟧ by team", []string{
		"syntax: 2 / 3 is written 2:3, since / is a stroke",
	}, ""},
	{"expect load on head 2:⟦0⟧", []string{
		"syntax: a ratio to 0 means nothing",
	}, ""},
	{"expect load on head 2:3 ⟦kN⟧", []string{
		"syntax: expect goes on with by, not kN, as in expect load on head under 6 kN",
	}, ""},
	{"expect load on ⟦anchor⟧ 3 kN", []string{
		"reserved-name: anchor is a word of the notation and cannot be a name",
	}, ""},
	{"expect load on head under 6 ⟦kgs⟧", []string{
		"bad-unit: load on head has the unknown unit kgs; it takes lbf, N, kN or daN",
	}, ""},
	{"expect factor of grab 4 ⟦kN⟧", []string{
		"bad-unit: factor of grab is a plain number, without kN",
	}, ""},
	{"expect factor ⟦grab⟧ over 4", []string{
		"syntax: expect goes on with over, under, of or a number, not grab, as in expect factor of grab over 4",
	}, ""},
	{"expect travel 3 m ⟦for⟧ 1 m", []string{
		"syntax: expect goes on with per, not for, as in expect travel 3 m per 1 m",
	}, ""},
	{"expect travel ⟦3⟧ per 1", []string{
		"bad-unit: travel needs a unit: m, cm, mm, ft or in",
	}, ""},
	{"expect travel 3 m per ⟦1⟧", []string{
		"bad-unit: travel needs a unit: m, cm, mm, ft or in",
	}, ""},
	{"expect travel 3 m per 1 ⟦kg⟧", []string{
		"bad-unit: travel takes m, cm, mm, ft or in, and kg is a unit of mass",
	}, ""},
	{"expect travel 3 m per ⟦0 m⟧", []string{
		"syntax: travel per nothing raised means nothing",
	}, ""},
	{"expect class ⟦komplex⟧", []string{
		"syntax: expect goes on with simple, compound or complex, not komplex, did you mean complex?",
	}, ""},
	{"expect class⟦⟧", []string{
		"syntax: expect ends too soon; it goes on with simple, compound or complex, as in expect class compound",
	}, ""},
	{"expect ⟦hold⟧ when released", []string{
		"syntax: hold is no claim, did you mean held?",
	}, ""},
	{"expect held when released while ⟦hauling⟧", []string{
		"syntax: hands are off when released and on while hauling; one claim cannot have both",
	}, ""},
	{"expect held without a without ⟦b⟧", []string{
		"repeated-clause: held names two lost parts; each has a claim of its own",
	}, ""},
	{"expect held when released when ⟦released⟧", []string{
		"repeated-clause: held has released twice",
	}, ""},
	{"expect held ⟦forever⟧", []string{
		"syntax: expect goes on with without, when or while, not forever, as in expect held when released",
	}, ""},
	{"expect not⟦⟧", []string{
		"syntax: expect ends too soon; it goes on with held, as in expect held when released",
	}, ""},
	{"expect stroke over 2 ⟦kg⟧", []string{
		"bad-unit: stroke takes m, cm, mm, ft or in, and kg is a unit of mass",
	}, ""},
	{"expect lower ⟦hands⟧ under 200 N", []string{
		"syntax: expect goes on with hand, not hands, did you mean hand?",
	}, ""},
	{"expect finding⟦⟧", []string{
		"syntax: expect ends too soon; it goes on with a name, as in expect finding redirect-loads-anchor at corner",
	}, ""},
	{"expect finding no-capture ⟦on⟧ top", []string{
		"syntax: expect goes on with at, not on, as in expect finding redirect-loads-anchor at corner",
	}, ""},
}

func TestFaultsOfClaims(t *testing.T) { runFaults(t, claimFaults) }
