package rules

import (
	"cmp"
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var hitchOnWrongStrand = &lint.Rule{
	Name:     "hitch-on-wrong-strand",
	Severity: diag.Error,
	Summary:  "a hitch or clamp that grips the wrong strand, or none: on another one, the rig does its job",
	Check:    checkHitchOnWrongStrand,
}

// move is a hitch, and a strand into which it may be moved.
type move struct {
	hitch *model.Part
	// rope and node are where it grips now; rope is nil if it grips nowhere.
	rope *model.Rope
	node int
	to   *model.Rope
	// stroke is the strand of to, away how far it is from where the hitch grips now.
	stroke, away int
}

// checkHitchOnWrongStrand looks at every hitch, one at a time, on every other strand, and
// at one that was forgotten on every strand. It reports the move with which the mended
// rig has the highest advantage; among equals the first of moves. Where setting in one
// that was forgotten mends the rig, no other is moved.
func checkHitchOnWrongStrand(p *lint.Pass) {
	if f := p.Fault(); f != solve.RaisesNothing && f != solve.Falls {
		return
	}
	var mends []outlook[move]
	for _, m := range moves(p.Rig) {
		if m.rope != nil && len(mends) > 0 && mends[0].change.rope == nil {
			break // a hitch that grips nothing explains enough
		}
		rig, ok := p.Moved(m.hitch, m.rope, m.node, m.to, m.stroke)
		if !ok {
			continue
		}
		o, ok := p.Look(rig)
		if !ok { // the farther ones cost as much
			break
		}
		if o.Mends(p) {
			mends = append(mends, outlook[move]{o, m})
		}
	}
	for _, m := range bestFirst(mends) {
		edits := m.change.edits()
		if t, ok := p.Try(edits...); ok && t.Mends(p) {
			explain(p, t, misplaced(p, m.change, t, edits))
			return
		}
	}
}

// edits makes the move in the text.
func (m move) edits() []diag.Edit {
	if m.rope == nil {
		return []diag.Edit{lint.SetIn(m.to, m.stroke, m.hitch.Name)}
	}
	return append(lint.TakeOut(m.rope, m.node, m.rope.Before(m.node)),
		lint.SetIn(m.to, m.stroke, m.rope.Nodes[m.node].Place.Text()))
}

// moves lists every hitch or clamp with every other strand that is not slack. First come
// those that grip no rope, which are the likeliest to be wrong; then those through which
// the rope runs straight on, the nearest strands first; then in file order.
func moves(rig *model.Rig) []move {
	var list []move
	beyond := 0 // farther than any strand of the same rope
	for _, r := range rig.Ropes {
		beyond += len(r.Strokes)
	}
	for _, r := range rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Grip || !r.RunsOn(i) {
				continue
			}
			list = append(list, into(rig, move{hitch: n.Part, rope: r, node: i, away: beyond})...)
		}
	}
	for _, h := range hitches(rig) {
		if h.forgotten() != "" {
			list = append(list, into(rig, move{hitch: h.part})...)
		}
	}
	slices.SortStableFunc(list, func(a, b move) int { return cmp.Compare(a.away, b.away) })
	return list
}

// into lists the moves of one hitch into every strand but those beside it. Away is
// given for the strands of other ropes.
func into(rig *model.Rig, m move) []move {
	var list []move
	for _, to := range rig.Ropes {
		for k, s := range to.Strokes {
			if s == model.Slack || to == m.rope && (k == m.node || k == m.rope.Before(m.node)) {
				continue
			}
			one := m
			one.to, one.stroke = to, k
			if to == m.rope {
				one.away = max(k-m.node, m.node-1-k)
			}
			list = append(list, one)
		}
	}
	return list
}

// misplaced makes the finding about a hitch and the trial in which it is moved.
func misplaced(p *lint.Pass, m move, t *lint.Trial, edits []diag.Edit) diag.Diagnostic {
	name, strand := lint.NameOf(m.hitch), lint.StrandName(m.to, m.stroke)
	place, where := m.hitch.NamePlace, "no rope"
	if m.rope != nil {
		before, after := m.rope.Nodes[m.rope.Before(m.node)], m.rope.Nodes[m.rope.After(m.node)]
		place = m.rope.Nodes[m.node].Place
		where = fmt.Sprintf("the rope between %s and %s", lint.Clipped(before.Name()), lint.Clipped(after.Name()))
	}
	return diag.Diagnostic{
		Place:   place,
		Subject: m.hitch.Name,
		Message: fmt.Sprintf("%s grips %s: %s; on %s %s", name, where, p.Trouble(), strand, t.Rises()),
		Fixes:   []diag.Fix{{Title: "set " + name + " on " + strand, Gives: t.Rises() + " there", Edits: edits}},
	}
}
