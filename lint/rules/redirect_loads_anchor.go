package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var redirectLoadsAnchor = &lint.Rule{
	Name:     "redirect-loads-anchor",
	Severity: diag.Advice,
	Summary:  "a redirect that carries more than the pull and adds no advantage; a warning where losing its anchor drops the load",
	Check:    checkRedirectLoadsAnchor,
}

// checkRedirectLoadsAnchor looks at every haul that raises the load, and reports the
// redirect that carries the highest multiple of its pull.
func checkRedirectLoadsAnchor(p *lint.Pass) {
	var most *heavy
	for _, ph := range p.Result.Hauls() {
		if ph.Status != solve.OK || ph.Ideal == nil {
			continue
		}
		if h := heaviest(p, ph); h != nil && (most == nil || h.multiple.Cmp(most.multiple) > 0) {
			most = h
		}
	}
	if most != nil {
		most.report(p)
	}
}

// heaviest takes the fixed bends between the last moving part and a hauler out of
// the rope, compares what their parts carry, and gives the one that carries most more
// than its pull; nil if none does, or if the advantage needs them.
func heaviest(p *lint.Pass, ph *solve.Phase) *heavy {
	var all []turn
	var out []lint.Bend
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Hauled || n.Part != ph.Hauler {
				continue
			}
			for _, b := range redirects(r, i) {
				all = turnedAt(all, b)
				out = append(out, lint.Bend{Rope: r, Node: b.node, Stroke: b.stroke})
			}
		}
	}
	if len(all) == 0 {
		return nil
	}
	t, ok := p.TryWithout(out)
	if !ok || t.Result.Status != solve.OK {
		return nil
	}
	without := t.Haul(ph.Hauler)
	if without == nil || without.Ideal == nil || without.Ideal.Cmp(*ph.Ideal) != 0 {
		return nil
	}
	var most *heavy
	for _, b := range all {
		then := carried(t.Rig, without, b.part)
		if h := b.weigh(ph, then); h != nil && (most == nil || h.multiple.Cmp(most.multiple) > 0) {
			most = h
		}
	}
	return most
}

// carried gives what a part carries in a trial. One that stands before the first rig is
// not there any more once it has nothing to do; it carries nothing.
func carried(rig *model.Rig, ph *solve.Phase, part *model.Part) solve.PartLoad {
	if p := rig.Part(part.Name); p != nil {
		return ph.Parts[p.Index]
	}
	return solve.PartLoad{Part: part, Force: solve.Force{Value: &lp.Num{}, Low: &lp.Num{}, High: &lp.Num{}}}
}

// heavy is a part that carries more than the pull that it turns.
type heavy struct {
	turn
	haul *solve.Phase
	// force is what its bends add to the part, pull the tension of the hauled ends
	// that run over it, multiple the one over the other.
	force, pull, multiple lp.Num
	// alone says that the part carries nothing else.
	alone bool
}

// weigh compares what the part of a turn carries with and without it; nil if the
// difference is no more than the pull. It is the figures that are shown that are compared:
// the ends of two ranges may belong to two states that never come together.
func (b turn) weigh(ph *solve.Phase, then solve.PartLoad) *heavy {
	now, pull := ph.Parts[b.part.Index], b.pull(ph)
	if !now.Known() || !then.Known() || pull == nil || pull.Sign() <= 0 {
		return nil
	}
	h := &heavy{turn: b, haul: ph, pull: *pull, force: now.Value.Sub(*then.Value), alone: then.Value.IsZero()}
	h.multiple = h.force.Quo(h.pull)
	if h.force.Cmp(h.pull) <= 0 {
		return nil
	}
	return h
}

func (h *heavy) report(p *lint.Pass) {
	n := h.bends[0].rope.Nodes[h.bends[0].node]
	of := ""
	if len(p.Result.Hauls()) > 1 {
		of = " of " + lint.NameOf(h.haul.Hauler)
	}
	more, angle := "", "0 deg"
	if !h.alone {
		more = " more for this turn"
	}
	if n.Angle != nil {
		angle = n.Angle.String()
	}
	// At an included angle of 120 degrees the resultant of two equal tensions is
	// one tension.
	d := diag.Diagnostic{
		Place: n.Place, Subject: h.part.Name,
		Message: fmt.Sprintf("%s carries %s%s%s, %s the pull%s, at an included angle of %s, and adds no advantage; "+
			"at 120 deg it would carry %s less", lint.NameOf(h.part), p.Force(h.force), more, p.WithoutFriction(),
			lint.Times(h.multiple), of, angle, p.Force(h.force.Sub(h.pull))),
	}
	root := h.part.Root()
	d.Also = append(d.Also, root.Name)
	d.Severity = diag.Advice
	if lost := p.Result.Without(root); !lint.Stops(lost.Answer) {
		d.Severity = diag.Warning
		d.Related = []diag.Related{{Place: root.NamePlace, Message: lint.Fall(p.Rig, lost, "without "+lint.NameOf(root))}}
	}
	p.ReportAs(d.Severity, d)
}
