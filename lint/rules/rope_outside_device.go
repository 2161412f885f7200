package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
)

var ropeOutsideDevice = &lint.Rule{
	Name:     "rope-outside-device",
	Severity: diag.Warning,
	Summary:  "a rope thinner or thicker than its device takes",
	Check:    checkRopeOutsideDevice,
}

func checkRopeOutsideDevice(p *lint.Pass) {
	type pair struct{ device, line *model.Part }
	seen := map[pair]bool{}
	for _, r := range p.Rig.Ropes {
		for _, n := range r.Nodes {
			on := pair{n.Part, r.Line}
			if r.Broken || !runsThrough(n) || n.Part.Kind != model.Device || seen[on] {
				continue
			}
			seen[on] = true
			reportDiameter(p, n, r.Line)
		}
	}
}

// runsThrough says whether rope lies in a part, and is not only tied to it.
func runsThrough(n model.Node) bool {
	return n.Part != nil && (n.Role == model.Bend || n.Role == model.Capture || n.Holds != model.NoSide)
}

// reportDiameter compares a rope with what a device takes.
func reportDiameter(p *lint.Pass, n model.Node, line *model.Part) {
	takes, rope := n.Part.Values.Takes, line.Values.Diameter
	if takes == nil || rope == nil {
		return
	}
	how := "thinner: it may run through unbraked"
	switch {
	case rope.Low.Cmp(takes.High) > 0:
		how = "thicker: it may jam"
	case rope.High.Cmp(takes.Low) >= 0:
		return
	}
	p.Report(diag.Diagnostic{
		Place: n.Place, Subject: n.Part.Name, Also: []string{line.Name},
		Message: fmt.Sprintf("%s takes rope of %s, and %s of %s is %s", lint.NameOf(n.Part), takes, lint.NameOf(line), rope, how),
		Related: []diag.Related{{Place: line.NamePlace, Message: lint.NameOf(line) + " has " + rope.String()}},
	})
}
