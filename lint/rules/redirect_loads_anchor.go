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
	Summary:  "a redirect that carries more than the pull and adds no advantage; a warning where its anchor is the weak point",
	Check:    checkRedirectLoadsAnchor,
}

// checkRedirectLoadsAnchor looks at every haul that raises the load, and reports the
// redirect that carries the highest multiple of its pull.
func checkRedirectLoadsAnchor(p *lint.Pass) {
	var most *heavy
	for _, ph := range p.Result.Hauls() {
		if ph.Status != solve.OK || ph.Ideal == nil || p.Result.Brakes(ph) {
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

// heaviest finds the fixed bends between the last moving part and a hauler that carry
// more than their pull, and gives the one that carries most, if the rig has the same
// advantage with all of those bends taken out; else nil.
func heaviest(p *lint.Pass, ph *solve.Phase) *heavy {
	var all []turn
	var out []lint.Bend
	for index, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Hauled || n.Part != ph.Hauler {
				continue
			}
			for _, b := range redirects(r, index, i) {
				all = turnedAt(all, b)
				out = append(out, lint.Bend{Rope: r, Node: b.node, Stroke: b.stroke})
			}
		}
	}
	var most *heavy
	for _, b := range all {
		if h := b.weigh(ph); h != nil && (most == nil || h.multiple.Cmp(most.multiple) > 0) {
			most = h
		}
	}
	if most == nil {
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
	then := carried(t.Rig, without, most.part)
	most.alone = then.Known() && then.Value.IsZero()
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
	// force is what its bends put on the part, pull the tension of the hauled ends
	// that run over it, multiple the one over the other.
	force, pull, multiple lp.Num
	// alone says that the part carries nothing else.
	alone bool
}

// weigh compares what the bends of a turn put on their part with the pull; nil if it is no
// more. It is the figures that are shown that are compared: the ends of two ranges may
// belong to two states that never come together.
func (b turn) weigh(ph *solve.Phase) *heavy {
	force, pull := b.force(ph, nil), b.pull(ph)
	if force == nil || pull == nil || pull.Sign() <= 0 || force.Cmp(*pull) <= 0 {
		return nil
	}
	return &heavy{turn: b, haul: ph, pull: *pull, force: *force, multiple: force.Quo(*pull)}
}

func (h *heavy) report(p *lint.Pass) {
	n := h.bends[0].rope.Nodes[h.bends[0].node]
	pull := ""
	if len(p.Result.Hauls()) > 1 {
		pull = " of " + lint.NameOf(h.haul.Hauler)
	}
	more, angle := "", "0 deg"
	if !h.alone {
		more = " more for this turn"
	}
	if n.Angle != nil {
		angle = n.Angle.String()
	}
	d := diag.Diagnostic{
		Place: n.Place, Subject: h.part.Name,
		Message: fmt.Sprintf("%s carries %s%s%s, %s the pull%s, at an included angle of %s, and adds no advantage%s", lint.NameOf(h.part),
			p.Force(h.force), more, p.Frictionless(h.haul), lint.Times(h.multiple), pull, angle, h.saving(p)),
	}
	root := h.part.Root()
	d.Also = append(d.Also, root.Name)
	d.Severity = diag.Advice
	if lost := p.Result.Without(root); !lint.Stops(lost.Answer) {
		d.Severity = diag.Warning
		d.Related = []diag.Related{{Place: root.NamePlace, Message: lint.Fall(p.Rig, lost, "without "+lint.NameOf(root))}}
	}
	for _, b := range burdens(p) {
		if (b.Part == root || b.Part == h.part) && b.grade() > fine {
			d.Severity = diag.Warning
			d.Related = append(d.Related, diag.Related{Place: b.Part.NamePlace,
				Message: lint.NameOf(b.Part) + " " + b.carries(p, "carries", "carry") + " and " + b.bears(p)})
		}
	}
	p.ReportAs(d.Severity, d)
}

// saving says what the part would carry less if its bends opened to the angle at which a
// bend carries as much as its rope: with friction both pull and bend then change.
func (h *heavy) saving(p *lint.Pass) string {
	bends := map[int][]int{}
	for _, b := range h.bends {
		bends[b.index] = append(bends[b.index], b.node)
	}
	opened, ok := p.WithAngle(solve.EvenAngle, bends)
	if !ok {
		return ""
	}
	for _, ph := range opened.Hauls() {
		if ph.Hauler != h.haul.Hauler {
			continue
		}
		if then := h.turn.force(ph, opened.Rig); then != nil && then.Cmp(h.force) < 0 {
			return fmt.Sprintf("; at %s deg it would carry %s less", lint.Number(solve.EvenAngle), p.Force(h.force.Sub(*then)))
		}
	}
	return ""
}
