package syntax

import "testing"

// nodeFaults are faults in the parentheses of a node; the line can mostly be used.
var nodeFaults = []faultCase{
	{"reeve long: litter / top ⟦(⟧holds / team", []string{
		"syntax: the parenthesis after top is not closed",
	}, "long: litter / top [holds] / team"},
	{"reeve long: litter / top ⟦(⟧ / team", []string{
		"syntax: the parenthesis after top is not closed",
	}, "long: litter / top / team"},
	{"reeve long: litter / top (holds)⟦)⟧ / team", []string{
		"syntax: ) stands where a stroke should",
	}, ""},
	{"reeve long: litter / top (⟦(⟧holds)) / team", []string{
		"syntax: top has parentheses in its parentheses",
	}, "long: litter / top / team"},
	{"reeve long: litter / ⟦top ()⟧ / team", []string{
		"syntax: top has empty parentheses; a clause such as holds, or a knot, stands in them",
	}, "long: litter / top / team"},
	{"reeve long: litter / top (⟦strength⟧ 5 kN) / team", []string{
		"unknown-clause: top: a node does not take strength; it takes angle, efficiency, friction, turns, share, holds, sideways and retains",
	}, "long: litter / top / team"},
	{"reeve long: litter / top (⟦angel⟧ 90 deg) / team", []string{
		"unknown-clause: top: a node has no clause angel, did you mean angle?",
	}, "long: litter / top / team"},
	{"reeve long: litter / top (⟦hodls⟧) / team", []string{
		"unknown-clause: top: a node has no clause hodls, did you mean holds?",
	}, "long: litter / top / team"},
	{"reeve long: litter / top (angle ⟦90⟧) / team", []string{
		"bad-unit: top: angle needs a unit: deg",
	}, "long: litter / top / team"},
	{"reeve long: litter / top (angle 90 ⟦kg⟧ holds) / team", []string{
		"bad-unit: top: angle takes deg, and kg is a unit of mass",
	}, "long: litter / top [holds] / team"},
	{"reeve long: litter / top (angle 90 deg⟦,⟧ holds) / team", []string{
		"syntax: top: clauses stand side by side, without commas",
	}, "long: litter / top [angle 90 deg, holds] / team"},
	{"reeve long: litter / top (angle 90 deg ⟦angle⟧ 60 deg) / team", []string{
		"repeated-clause: top: angle stands twice",
	}, "long: litter / top [angle 90 deg] / team"},
	{"reeve long: litter / top (⟦on⟧ head) / team", []string{
		"syntax: top: on stands in the statement of the part",
	}, "long: litter / top / team"},
	{"reeve long: litter / top (holds ⟦5⟧) / team", []string{
		"syntax: top: 5 belongs to no clause",
	}, "long: litter / top [holds] / team"},
	{"reeve long: litter (figure-eight ⟦bowline⟧) / team", []string{
		"syntax: litter: a second knot, bowline, ties the same node",
	}, "long: litter tied figure-eight / team"},
	{`reeve long: litter (⟦"bowline"⟧) / team`, []string{
		`syntax: litter: "bowline" cannot stand here`,
	}, "long: litter / team"},
	{"reeve long: litter / team / ⟦tail (holds)⟧", []string{
		"syntax: tail is a word of the line, not a part, and takes no clauses",
	}, "long: litter / team / tail"},
	{"reeve long: litter (⟦anchor⟧) / team", []string{
		"syntax: litter: anchor is a word of the notation and names no knot",
	}, "long: litter / team"},
	{"reeve long: litter (share 40 to ⟦%⟧) / team", []string{
		"syntax: litter: the range needs a second number, as in 0.85 to 0.95, not %",
	}, "long: litter / team"},
	{"reeve long: litter (⟦@⟧) / team", []string{
		"bad-character: @ has no meaning in a rig file",
	}, ""},
}

func TestFaultsOfNodes(t *testing.T) { runFaults(t, nodeFaults) }
