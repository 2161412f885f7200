package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
)

var redirectBeforeCapture = &lint.Rule{
	Name:     "redirect-before-capture",
	Severity: diag.Advice,
	Summary:  "a capture after a fixed bend that turns easier: the other way round there is more advantage",
	Check:    checkRedirectBeforeCapture,
}

// checkRedirectBeforeCapture lets each capture on the ground change places in its rope
// with each fixed bend over which the strand that it holds runs, and reports the exchange
// that wins most.
func checkRedirectBeforeCapture(p *lint.Pass) {
	limit := p.House.Limit(house.Figure{Name: "gain"})
	ph := p.Result.Main()
	if limit == nil || ph == nil || !ph.Actual.Known() || !ph.Actual.Advantage.Known() {
		return
	}
	var best *order
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Capture || !turnsOnGround(r, i) || ph.Runs(r, i).IsZero() {
				continue
			}
			for _, bend := range heldOver(r, i) {
				if o := exchanged(p, ph, r, bend, i); o != nil && limit.Allows(o.gain) && (best == nil || o.gain.Cmp(best.gain) > 0) {
					best = o
				}
			}
		}
	}
	if best != nil {
		best.report(p, limit)
	}
}

// turnsOnGround says whether a rope turns straight back at a node on a fixed part.
func turnsOnGround(r *model.Rope, node int) bool {
	n := r.Nodes[node]
	return n.Part.Fixed() && r.Turns(node) && n.Angle == nil
}

// heldOver lists the bends on the ground, of hardware that could be elsewhere in the rope,
// between a capture and the end of its run that it holds.
func heldOver(r *model.Rope, capture int) []int {
	first, last, open := r.Run(capture)
	if !open {
		return nil
	}
	from, to := first+1, capture
	if r.Nodes[capture].Holds == model.LastSide {
		from, to = capture+1, last
	}
	var list []int
	for i := from; i < to; i++ {
		n := r.Nodes[i]
		if n.Role == model.Bend && isHardware(n.Part.Kind) && n.Part != r.Nodes[capture].Part && turnsOnGround(r, i) {
			list = append(list, i)
		}
	}
	return list
}

// isHardware says whether a part of a kind is brought along, and no piece of the ground
// or of rope.
func isHardware(kind model.Kind) bool {
	return kind == model.Pulley || kind == model.Carabiner || kind == model.Ring || kind == model.Device
}

// order is another order of two nodes in a rope.
type order struct {
	better
	rope          *model.Rope
	bend, capture int
}

// exchanged tries a capture and a bend in each other's place. Nil if the capture turns no
// harder than the bend, or if the rig would not do the same job as well.
func exchanged(p *lint.Pass, ph *solve.Phase, r *model.Rope, bend, capture int) *order {
	hard, easy := solve.Growth(r, capture), solve.Growth(r, bend)
	if !hard.Known() || !easy.Known() || hard.Value.Cmp(*easy.Value) <= 0 {
		return nil
	}
	other, ok := p.Exchanged(r, bend, capture)
	if !ok || other.Status != solve.OK || lint.Weaker(other.Released.Answer, p.Result.Released.Answer) {
		return nil
	}
	main := other.Main()
	if main.Hauler != ph.Hauler || main.Ideal == nil || main.Ideal.Cmp(*ph.Ideal) != 0 || !p.Afford(1) {
		return nil
	}
	actual := other.HaulWith(main, nil)
	if !actual.Known() {
		return nil
	}
	b := better{ph, actual.Advantage, lint.Gain(ph.Actual.Advantage, actual.Advantage)}
	return &order{b, r, bend, capture}
}

func (o *order) report(p *lint.Pass, limit *house.Limit) {
	capture, bend := o.rope.Nodes[o.capture], o.rope.Nodes[o.bend]
	then := lint.Advantage(o.then)
	name, over := lint.NameOf(capture.Part), lint.NameOf(bend.Part)
	d := diag.Diagnostic{
		Place: capture.Place, Subject: capture.Part.Name, Also: []string{bend.Part.Name},
		Message: fmt.Sprintf("%s holds %s only after %s, so that the strand it holds pays the friction there: "+
			"the actual advantage is %s; with %s first it is %s, %s", name, lint.NameOf(o.rope.Line), over,
			lint.Advantage(o.haul.Actual.Advantage), name, then, o.more()),
		Related: append([]diag.Related{{Place: bend.Place, Message: over + " turns easier"}}, limit.Related()...),
	}
	// Where the team pulls on the capture, the bend would become a redirect, which is
	// another rule's to judge.
	if edits, own := p.ExchangeNodes(o.rope, o.bend, o.capture); own && !o.atHands() {
		t, ok := p.Try(edits...)
		if ok && t.Compare(p) == 0 && p.Proves(t, d) {
			d.Fixes = []diag.Fix{{Title: "exchange " + name + " and " + over + " on " + lint.NameOf(o.rope.Line),
				Gives: "the actual advantage is " + then, Edits: edits}}
		}
	}
	p.Report(d)
}

// atHands says whether the rope goes from the capture to a hauler.
func (o *order) atHands() bool {
	before := o.rope.Nodes[o.rope.Before(o.capture)].Role
	return before == model.Hauled || o.rope.Nodes[o.rope.After(o.capture)].Role == model.Hauled
}
