package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var haulRaisesNothing = &lint.Rule{
	Name:     "haul-raises-nothing",
	Severity: diag.Error,
	Summary:  "a load that no hauler raises, though the rope moves",
	Check:    checkHaulRaisesNothing,
}

// checkHaulRaisesNothing looks at each load, or at the one that "raise" names.
func checkHaulRaisesNothing(p *lint.Pass) {
	status := p.Result.Status
	if p.Explained() || status != solve.OK && status != solve.RaisesNothing {
		return
	}
	var found []diag.Diagnostic
	for _, b := range p.Result.Bodies {
		for _, load := range b.Loads {
			if load.Kind == model.Load && wantsRaise(p, load) && !raised(p.Result, b) {
				found = append(found, stays(p, load))
			}
		}
	}
	for _, d := range found {
		p.Explain(d)
	}
}

// wantsRaise says whether raising a load is what the rig is for.
func wantsRaise(p *lint.Pass, load *model.Part) bool {
	if reference := p.Result.Reference; reference != nil && reference.Values.Raise != nil {
		return load == reference
	}
	return true
}

// raised says whether some haul raises a body, or may: its motion is not fixed.
func raised(res *solve.Result, b *solve.Body) bool {
	for _, ph := range res.Hauls() {
		if b.Index < len(ph.Motion) {
			if m := ph.Motion[b.Index]; m.Free || m.Rise.Sign() > 0 {
				return true
			}
		}
	}
	return false
}

// stays makes the finding about a load that no haul raises.
func stays(p *lint.Pass, load *model.Part) diag.Diagnostic {
	var who, ends []string
	for _, ph := range p.Result.Hauls() {
		who = append(who, lint.NameOf(ph.Hauler))
		ends = append(ends, ph.Hauler.Name)
	}
	main := p.Result.Main()
	verb := " hauls"
	if len(who) > 1 {
		verb = " haul"
	}
	d := diag.Diagnostic{
		Place: p.OnRope(main.Hauler), Subject: load.Name, Also: ends,
		Message: fmt.Sprintf("%s does not rise when %s%s: %s", lint.NameOf(load), lint.List(who), verb, instead(p, main)),
	}
	d.Related = []diag.Related{{Place: p.OnRope(load), Message: lint.NameOf(load) + " stays where it is"}}
	return d
}

// instead says what a haul does other than raise the load.
func instead(p *lint.Pass, ph *solve.Phase) string {
	if ph.Pull != nil && ph.Pull.IsZero() {
		return "the pull is 0, the rope comes in slack"
	}
	for _, m := range ph.Motion {
		if s := m.Rise.Sign(); s != 0 && !m.Free {
			way := "up"
			if s < 0 {
				way = "down"
			}
			return fmt.Sprintf("1 m of rope moves %s %s m %s", lint.BodyName(m.Body), lint.Number(m.Rise.Abs()), way)
		}
	}
	if ph.Pull == nil {
		return "the rope moves nothing"
	}
	return "the pull is " + p.Force(*ph.Pull) + p.WithoutFriction() + " and moves nothing"
}
