package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
)

var knotMeetsBend = &lint.Rule{
	Name:     "knot-meets-bend",
	Severity: diag.Error,
	Summary:  "a knot in the rope that is drawn up to a bend before the load is as high as asked",
	Check:    checkKnotMeetsBend,
}

func checkKnotMeetsBend(p *lint.Pass) {
	s, pair, how := raiseEnd(p)
	if how != atKnot {
		return
	}
	knot, bend := pair.Lower, pair.Upper
	if knot.Kind != model.Knot {
		knot, bend = bend, knot
	}
	d := endsBy(p, s, pair, lint.NameOf(knot)+" is drawn up to "+lint.NameOf(bend), "and cannot pass it")
	d.Subject, d.Also[0] = knot.Name, bend.Name
	p.Report(d)
}
