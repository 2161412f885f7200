package rules

import (
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
)

var bestPulleyElsewhere = &lint.Rule{
	Name:     "best-pulley-elsewhere",
	Severity: diag.Advice,
	Summary:  "two pulleys that would give more advantage in each other's place",
	Check:    checkBestPulleyElsewhere,
}

// checkBestPulleyElsewhere exchanges the hardware of every two bends that could be, and
// reports the exchange that wins most. One that the text can make, but that brings
// something as bad, such as a pulley too weak for its place, is passed over.
func checkBestPulleyElsewhere(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "gain"})
	ph := p.Result.Main()
	if limit == nil || ph == nil || !ph.Actual.Known() || !ph.Actual.Advantage.Known() {
		return
	}
	for _, s := range swaps(p, ph, limit) {
		d := s.finding(p, limit)
		edits, own := p.ExchangeHardware(s.easy.part, s.hard.part)
		if !own {
			p.Report(d)
			return
		}
		t, ok := p.Try(edits...)
		if !ok {
			p.Report(d)
			return
		}
		now, known := t.Actual(p, ph.Hauler)
		if known && limit.Allows(lint.Gain(ph.Actual.Advantage, now.Advantage)) && p.ProvesExchange(t, d, s.easy.part, s.hard.part) {
			d.Fixes = []diag.Fix{{Title: "exchange " + lint.NameOf(s.easy.part) + " and " + lint.NameOf(s.hard.part),
				Gives: "the actual advantage is " + lint.Advantage(now.Advantage), Edits: edits}}
			p.Report(d)
			return
		}
	}
}

// sheave is a part over which rope bends and that could change places with another.
type sheave struct {
	part *model.Part
	// count is the number of its sheaves, ties that of ropes tied to it.
	count, ties int64
	runs        bool
}

// sheaves lists the pulleys and carabiners of a rig that turn a rope, do not hold it, and
// have at every place the efficiency that they have themselves.
func sheaves(p *lint.Pass, ph *solve.Phase) []sheave {
	of := map[*model.Part]*sheave{}
	fixed := map[*model.Part]bool{}
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Part == nil || n.Part.Kind != model.Pulley && n.Part.Kind != model.Carabiner {
				continue
			}
			s := of[n.Part]
			if s == nil {
				s = &sheave{part: n.Part}
				of[n.Part] = s
			}
			v := n.Part.Values
			switch {
			case n.Holds != model.NoSide || v.Holds || v.Efficiency == nil || r.Broken:
				fixed[n.Part] = true
			case n.Role == model.Bend:
				s.count++
				s.runs = s.runs || !ph.Runs(r, i).IsZero()
				fixed[n.Part] = fixed[n.Part] || n.Efficiency != v.Efficiency || n.Friction != nil || n.Turns != nil
			default:
				s.ties++
			}
		}
	}
	var list []sheave
	for _, part := range p.Rig.Parts {
		s := of[part]
		if s == nil || fixed[part] || s.count == 0 {
			continue
		}
		if n := part.Values.Sheaves; n != nil {
			s.count = n.Low.Num().Int64()
		}
		list = append(list, *s)
	}
	return list
}

// swap is two bends whose hardware changes places: easy has the better efficiency now.
type swap struct {
	better
	easy, hard sheave
}

// swaps lists the exchanges that win enough, the best first.
func swaps(p *lint.Pass, ph *solve.Phase, limit *house.Limit) []swap {
	var list []swap
	all := sheaves(p, ph)
	for i, a := range all {
		for _, b := range all[:i] {
			if a.count != b.count || a.ties != b.ties || !a.runs && !b.runs || alike(a.part, b.part) {
				continue
			}
			gains := with(p, ph, map[*model.Part]solve.Hardware{
				a.part: solve.HardwareOf(b.part), b.part: solve.HardwareOf(a.part)})
			if gains == nil || !limit.Allows(gains.gain) {
				continue
			}
			s := swap{*gains, b, a}
			if a.part.Values.Efficiency.Middle().Cmp(b.part.Values.Efficiency.Middle()) > 0 {
				s.easy, s.hard = a, b
			}
			list = append(list, s)
		}
	}
	slices.SortStableFunc(list, func(a, b swap) int { return b.gain.Cmp(a.gain) })
	return list
}

// alike says whether two parts are of the same hardware.
func alike(a, b *model.Part) bool {
	x, y := a.Values.Efficiency, b.Values.Efficiency
	return a.Kind == b.Kind && x.Low.Cmp(y.Low) == 0 && x.High.Cmp(y.High) == 0
}

func (s swap) finding(p *lint.Pass, limit *house.Limit) diag.Diagnostic {
	easy, hard := s.easy.part, s.hard.part
	return diag.Diagnostic{
		Place: p.OnRope(easy), Subject: easy.Name, Also: []string{hard.Name},
		Message: fmt.Sprintf("%s (%s) turns easier than %s (%s) and wins less where it is: the actual advantage%s is %s, "+
			"with the two exchanged %s, %s", lint.NameOf(easy), easy.Values.Efficiency, lint.NameOf(hard),
			hard.Values.Efficiency, p.Of(s.haul), lint.Advantage(s.haul.Actual.Advantage), lint.Advantage(s.then), s.more()),
		Related: append([]diag.Related{{Place: p.OnRope(hard), Message: lint.NameOf(hard) + " has " + hard.Values.Efficiency.String()}},
			limit.Related()...),
	}
}
