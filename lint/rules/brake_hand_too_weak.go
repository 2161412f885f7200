package rules

import (
	"strconv"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var brakeHandTooWeak = &lint.Rule{
	Name:     "brake-hand-too-weak",
	Severity: diag.Advice,
	Summary:  "lowering takes more force of the hand than the house allows, or than the people there have; a warning where people hang on the load or stand below it",
	Check:    checkBrakeHandTooWeak,
	Latent:   true,
}

// checkBrakeHandTooWeak looks at every way in which a load is lowered. Friction helps the
// hands: only what a house rule says is asked of a rig that says nothing of it, as claims
// are, and nothing where some of it is unknown.
func checkBrakeHandTooWeak(p *lint.Pass) {
	if !p.Keeps(p.Result.Released) {
		return
	}
	limit := p.House.Limit(house.Figure{Name: "lower hand"})
	for _, ph := range p.Result.Lowers {
		hand := p.Result.PullNewtons(ph)
		if ph.Status != solve.Lowers || hand == nil || !p.Settled(ph) || limit == nil && !ph.Actual.Known() {
			continue
		}
		d := diag.Diagnostic{Place: p.OnRope(ph.Hauler), Subject: ph.Hauler.Name}
		down := lowered(ph)
		d.Also = lint.NamesIn(down)
		d.Message = lint.NameOf(ph.Hauler) + " must hold " + p.Newtons(*hand.High) + " to lower " + lint.Bodies(down)
		if !ph.Actual.Known() {
			d.Message += " without any friction"
		}
		if limit != nil {
			if limit.Allows(*hand.High) {
				continue
			}
			d.Message += "; the house allows " + limit.Wanted()
			d.Related = limit.Related()
		} else {
			can, of, known := strengthOf(p, ph.Hauler)
			if !known || hand.High.Cmp(can) <= 0 {
				continue
			}
			d.Message += ", and can hold " + p.Newtons(can) + ": " + of
		}
		p.ReportAs(hazard(p, down), d)
	}
}

// lowered lists the bodies with a load that come down.
func lowered(ph *solve.Phase) []*solve.Body {
	var list []*solve.Body
	for _, m := range ph.Motion {
		if len(m.Body.Loads) > 0 && m.Rise.Sign() < 0 {
			list = append(list, m.Body)
		}
	}
	return list
}

// strengthOf gives in newtons what haulers can hold together, by what each of them pulls
// or else by what the house lets a person pull, and how that comes; known is false if
// nothing says how many they are or what a person pulls.
func strengthOf(p *lint.Pass, hauler *model.Part) (can lp.Num, of string, known bool) {
	people := hauler.Values.People
	if people == nil || people.Low.Sign() <= 0 {
		return can, "", false
	}
	count := lp.FromRat(people.Low)
	each, says := lp.Num{}, ""
	switch limit := p.House.PerPerson(); {
	case hauler.Values.Pull != nil:
		each, says = lp.FromRat(hauler.Values.Pull.Low), p.Newtons(lp.FromRat(hauler.Values.Pull.Low))
	case limit != nil:
		each, says = lp.FromRat(limit.High), limit.String()
	default:
		return can, "", false
	}
	n, _ := strconv.Atoi(people.Low.RatString())
	words := strconv.Itoa(n) + " people with " + says + " each"
	if n == 1 {
		words = "one person with " + says
	}
	return each.Mul(count), words, true
}
