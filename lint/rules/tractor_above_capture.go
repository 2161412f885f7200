package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
)

var tractorAboveCapture = &lint.Rule{
	Name:     "tractor-above-capture",
	Severity: diag.Warning,
	Summary:  "a grip that pulls between a capture and its bend, where no reset gets it lower than the capture",
	Check:    checkTractorAboveCapture,
}

func checkTractorAboveCapture(p *lint.Pass) {
	main := p.Result.Main()
	if p.Explained() || main == nil || main.Stroke == nil {
		return
	}
	s := main.Stroke
	for _, k := range s.Confined {
		limit := p.House.Limit(house.Figure{Name: "stroke"})
		enough := k.Rise != nil && (s.Raise != nil && k.Rise.Cmp(s.Raise.Height) >= 0 || limit != nil && limit.Allows(*k.Rise))
		if !enough {
			p.Report(confinedGrip(p, s, k))
		}
	}
}

// confinedGrip makes the finding about a tractor and offers to set it below its capture.
func confinedGrip(p *lint.Pass, s *solve.Stroke, k solve.Confined) diag.Diagnostic {
	nodes := k.Rope.Nodes
	grip, capture, bend := nodes[k.Grip].Part, nodes[k.Capture].Part, nodes[k.Bend].Part
	d := diag.Diagnostic{
		Place: nodes[k.Grip].Place, Subject: grip.Name, Also: []string{capture.Name, bend.Name},
		Related: []diag.Related{{Place: nodes[k.Capture].Place, Message: "the capture"}},
		Message: fmt.Sprintf("%s pulls between %s and %s: at a reset it can be sent no lower than %s",
			lint.NameOf(grip), lint.NameOf(capture), lint.NameOf(bend), lint.NameOf(capture)),
	}
	if k.Rise != nil {
		d.Message += fmt.Sprintf(", and a stroke raises %s %s at most", lint.BodyName(s.Load), p.Length(*k.Rise))
	}
	below, step := k.Capture, 1 // the strand below the capture begins or ends there
	if k.Grip > k.Capture {
		below = k.Rope.Before(k.Capture)
	} else {
		step = 0
	}
	edits := append(lint.TakeOut(k.Rope, k.Grip, k.Grip-step), lint.SetIn(k.Rope, below, nodes[k.Grip].Place.Text()))
	t, ok := p.Try(edits...)
	if ok && t.Status == p.Result.Status && t.Compare(p) == 0 && !lint.Weaker(t.Released(), p.Result.Released.Answer) && p.Proves(t, d) {
		strand := lint.StrandName(k.Rope, below)
		d.Fixes = []diag.Fix{{Title: "set " + lint.NameOf(grip) + " on " + strand, Gives: t.Rises() + " as before", Edits: edits}}
	}
	return d
}
