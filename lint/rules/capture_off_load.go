package rules

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
)

var captureOffLoad = &lint.Rule{
	Name:     "capture-off-load",
	Severity: diag.Advice,
	Summary:  "a capture that holds only while hands keep the rope; a warning where people hang on the load or stand below it",
	Check:    checkCaptureOffLoad,
}

// checkCaptureOffLoad looks, in a rig that nothing holds hands off, for a capture that
// would hold the load if a hauler made the rope fast.
func checkCaptureOffLoad(p *lint.Pass) {
	d, severity, ok := unheld(p)
	if !ok {
		return
	}
	for _, ph := range p.Result.Hauls() {
		tied := p.Result.TiedOff(ph.Hauler)
		if !tied.LoadsStay() {
			continue
		}
		var captures []*model.Part
		for _, b := range p.Result.Released.Sinking {
			for _, load := range b.Loads {
				captures = append(captures, slices.DeleteFunc(tied.HoldingUp(load), pulls)...)
			}
		}
		if len(captures) == 0 {
			continue
		}
		for _, c := range captures {
			d.Also = append(d.Also, c.Name)
			d.Related = append(d.Related, diag.Related{Place: p.OnRope(c), Message: lint.NameOf(c) + " holds here"})
		}
		verb := " holds"
		if len(captures) > 1 {
			verb = " hold"
		}
		d.Message = released(p) + ": " + lint.List(partNames(captures)) + verb + " only while " + lint.NameOf(ph.Hauler) + " keeps the rope"
		d.Severity = severity
		offerCapture(p, &d)
		p.ReportAs(severity, d)
		return
	}
}

// pulls says whether a grip is on nothing but its rope: such a one pulls, and is no
// capture.
func pulls(part *model.Part) bool { return part.Kind.IsGrip() && part.On == nil }

func partNames(parts []*model.Part) []string {
	var names []string
	for _, q := range parts {
		names = append(names, lint.NameOf(q))
	}
	return names
}
