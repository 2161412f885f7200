package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var carabinerForPulley = &lint.Rule{
	Name:     "carabiner-for-pulley",
	Severity: diag.Advice,
	Summary:  "a carabiner over which rope runs, where a pulley would give more advantage",
	Check:    checkCarabinerForPulley,
}

// usualPulley is the model of the stock that stands for any pulley.
const usualPulley = "rescue-pulley"

func checkCarabinerForPulley(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "gain"})
	if limit == nil || p.Explained() {
		return
	}
	for _, part := range p.Rig.Parts {
		if part.Kind != model.Carabiner || part.Values.Efficiency == nil {
			continue
		}
		var most *better
		for _, ph := range p.Result.Hauls() {
			b := withPulley(p, ph, part)
			if b != nil && limit.Allows(b.gain) && (most == nil || b.gain.Cmp(most.gain) > 0) {
				most = b
			}
		}
		if most != nil {
			most.reportPulley(p, part, limit)
		}
	}
}

// better is a haul with what its actual advantage would be after a change, and by how
// much, as a fraction, that is more.
type better struct {
	haul *solve.Phase
	then solve.Force
	gain lp.Num
}

// more says how much the change wins.
func (b *better) more() string { return lint.More(b.haul.Actual.Advantage, b.then) }

// withPulley tries a pulley in place of a carabiner over which rope runs; nil if the
// figures are not known.
func withPulley(p *lint.Pass, ph *solve.Phase, part *model.Part) *better {
	if !ph.Actual.Known() || !ph.Actual.Advantage.Known() || !runsOver(p, ph, part) {
		return nil
	}
	pulley := lint.Stocked(model.Pulley, usualPulley)
	b := with(p, ph, map[*model.Part]solve.Hardware{part: {Kind: model.Pulley, Efficiency: pulley.Values.Efficiency}})
	if b != nil { // which pulley it would be is open, so that the usual one counts
		b.gain = lint.UsualGain(ph.Actual.Advantage, b.then)
	}
	return b
}

// with compares a haul with one that has other hardware; nil if its figures are not
// known.
func with(p *lint.Pass, ph *solve.Phase, instead map[*model.Part]solve.Hardware) *better {
	actual, ok := p.HaulWith(ph, instead)
	if !ok {
		return nil
	}
	return &better{ph, actual.Advantage, lint.Gain(ph.Actual.Advantage, actual.Advantage)}
}

// runsOver says whether rope runs over a bend of a part in a phase.
func runsOver(p *lint.Pass, ph *solve.Phase, part *model.Part) bool {
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Part == part && (n.Role == model.Bend || n.Role == model.Capture) && !ph.Runs(r, i).IsZero() {
				return true
			}
		}
	}
	return false
}

func (b *better) reportPulley(p *lint.Pass, part *model.Part, limit *house.Limit) {
	pulley := lint.Stocked(model.Pulley, usualPulley).Values.Efficiency
	p.Report(diag.Diagnostic{
		Place: p.OnRope(part), Subject: part.Name,
		Message: fmt.Sprintf("%s is a carabiner, over which rope slides: the actual advantage%s is %s, and with a pulley of %s "+
			"in its place %s, about %s more", lint.NameOf(part), p.Of(b.haul), lint.Advantage(b.haul.Actual.Advantage), pulley,
			lint.Advantage(b.then), lint.PerCent(b.gain)),
		Related: limit.Related(),
	})
}
