package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var straightThrough = &lint.Rule{
	Name:     "straight-through",
	Severity: diag.Advice,
	Summary:  "a bend that does not turn the rope and so does nothing",
	Check:    checkStraightThrough,
}

func checkStraightThrough(p *lint.Pass) {
	if p.Result.Status == solve.Unsolved {
		return
	}
	for _, r := range p.Rig.Ropes {
		if r.Broken {
			continue
		}
		for i, n := range r.Nodes {
			if n.Role == model.Bend && r.RunsOn(i) && !meant(r, i) {
				p.Report(diag.Diagnostic{
					Place: n.Place, Subject: n.Part.Name,
					Message: fmt.Sprintf("%s does not turn %s, which runs straight through and loads it with nothing; "+
						"an angle that it does turn by can be written", lint.NameOf(n.Part), lint.NameOf(r.Line)),
				})
			}
		}
	}
}

// meant says whether a rope may well run straight through a bend: at an edge, in a
// braking device, round a tree, where an angle or a way sideways is written, and
// on a line tied at both ends, along which the part travels.
func meant(r *model.Rope, node int) bool {
	n := r.Nodes[node]
	kind := n.Part.Kind
	return kind == model.Edge || kind == model.Device || n.Turns != nil || n.Angle != nil || n.Sideways || tiedAtBothEnds(r, node)
}

// tiedAtBothEnds says whether the run that a node is in is tied at both its ends. A
// closed line has none.
func tiedAtBothEnds(r *model.Rope, node int) bool {
	first, last, open := r.Run(node)
	return open && r.Nodes[first].Role == model.Tied && r.Nodes[last].Role == model.Tied
}
