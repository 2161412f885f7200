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

// checkRedirectLoadsAnchor takes the fixed bends between the last moving part and
// the hauler out of the rope and compares what their parts carry.
func checkRedirectLoadsAnchor(p *lint.Pass) {
	main := p.Result.Main()
	if main == nil || main.Status != solve.OK || main.Ideal == nil {
		return
	}
	var all []redirect
	var edits []diag.Edit
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role == model.Hauled && n.Part == main.Hauler {
				found := redirects(r, i)
				all = append(all, found...)
				for _, b := range found {
					edits = append(edits, lint.TakeOut(r, b.node, b.stroke)...)
				}
			}
		}
	}
	if len(all) == 0 {
		return
	}
	t, ok := p.Try(edits...)
	if !ok || t.Result.Status != solve.OK || t.Compare(p) != 0 {
		return
	}
	var most *heavy
	for _, b := range all {
		if h := weigh(p, t, b); h != nil && (most == nil || h.multiple.Cmp(most.multiple) > 0) {
			most = h
		}
	}
	if most != nil {
		most.report(p)
	}
}

// redirect is a fixed bend between the last moving part and a hauler.
type redirect struct {
	rope *model.Rope
	node int
	// stroke is the one on the hauler's side, end that at the hauler.
	stroke, end int
}

// redirects walks from a hauled end to the first thing that is no fixed bend. An
// edge is passed by: it is the ground's, and cannot be taken out. A capture ends
// the walk: without it the load would not be held.
func redirects(r *model.Rope, hauler int) []redirect {
	back := r.Before(hauler) >= 0 && r.Strokes[r.Before(hauler)] != model.Slack
	end := hauler
	if back {
		end = r.Before(hauler)
	}
	var found []redirect
	node := hauler
	for range r.Nodes {
		stroke := node // the strand toward the hauler, once node is the next one
		if back {
			if r.Before(node) < 0 {
				return nil
			}
			node = r.Before(node)
			stroke = node
		} else {
			if node >= len(r.Strokes) {
				return nil
			}
			node = r.After(node)
		}
		n := r.Nodes[node]
		switch bends := n.Role == model.Bend; {
		case bends && n.Part.Kind == model.Edge:
		case bends && n.Part.Fixed():
			found = append(found, redirect{r, node, stroke, end})
		case n.Role == model.Tied && n.Part.Fixed():
			return nil // nothing between the hauler and the ground moves
		default:
			return found
		}
	}
	return nil
}

// heavy is a redirect that carries more than the pull.
type heavy struct {
	redirect
	part *model.Part
	// force is what the redirect adds to its part, pull the tension of the hauled
	// strand, multiple the one over the other.
	force, pull, multiple lp.Num
	// alone says that the part carries nothing else.
	alone bool
}

// weigh compares what the part of a redirect carries with and without it; nil if
// the difference is no more than the pull.
func weigh(p *lint.Pass, t *lint.Trial, b redirect) *heavy {
	main, without := p.Result.Main(), t.Result.Main()
	part := b.rope.Nodes[b.node].Part
	now, then := main.Parts[part.Index], without.Parts[t.Rig.Part(part.Name).Index]
	pull := strand(main, b.rope, b.end)
	if !now.Known() || !then.Known() || pull == nil || pull.Sign() <= 0 {
		return nil
	}
	h := &heavy{redirect: b, part: part, pull: *pull, force: now.Most().Sub(then.Most()), alone: then.Most().IsZero()}
	h.multiple = h.force.Quo(h.pull)
	if h.force.Cmp(h.pull) <= 0 {
		return nil
	}
	return h
}

// strand gives the tension of a strand in a phase.
func strand(ph *solve.Phase, r *model.Rope, stroke int) *lp.Num {
	for _, s := range ph.Strands {
		if s.Rope == r && s.Index == stroke {
			return s.Value
		}
	}
	return nil
}

func (h *heavy) report(p *lint.Pass) {
	n := h.rope.Nodes[h.node]
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
		Message: fmt.Sprintf("%s carries %s%s%s, %s the pull, at an included angle of %s, and adds no advantage; "+
			"at 120 deg it would carry %s less", lint.NameOf(h.part), p.Force(h.force), more, p.WithoutFriction(),
			lint.Times(h.multiple), angle, p.Force(h.force.Sub(h.pull))),
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
