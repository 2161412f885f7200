package rules

import (
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var hitchBackward = &lint.Rule{
	Name:     "hitch-backward",
	Severity: diag.Error,
	Summary:  "a one-way grip that holds the wrong way: turned round, the rig does its job",
	Check:    checkHitchBackward,
}

// turned is a grip turned round.
type turned struct {
	node model.Node
	edit diag.Edit
	// how says in words what to write.
	how string
	ground
}

// ground is why a grip is turned round.
type ground struct {
	// mends is what the rig must be with the grip turned.
	mends func(*lint.Outlook) bool
	// against is the strand that holds against the haul; empty if that is not why.
	against string
}

// checkHitchBackward looks at every grip and capture turned round, one at a time, and
// reports the one with which the mended rig has the highest advantage.
func checkHitchBackward(p *lint.Pass) {
	of := groundsToTurn(p)
	var found []outlook[turned]
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Grip && n.Role != model.Capture {
				continue
			}
			grounds := of(r, i)
			if len(grounds) == 0 {
				continue
			}
			edit, how, ok := p.Turn(r, i)
			if !ok {
				continue
			}
			o, ok := p.Look(p.Turned(r, i))
			at := slices.IndexFunc(grounds, func(g ground) bool { return ok && g.mends(o) })
			if at >= 0 {
				found = append(found, outlook[turned]{o, turned{n, edit, how, grounds[at]}})
			}
		}
	}
	for _, f := range bestFirst(found) {
		if t, ok := p.Try(f.change.edit); ok && f.change.mends(t.Outlook) {
			explain(p, t, backward(p, f.change, t))
			return
		}
	}
}

// groundsToTurn gives the grounds to turn each grip: the rig does not do its job, or
// the grip may hold against the haul.
func groundsToTurn(p *lint.Pass) func(r *model.Rope, node int) []ground {
	mends, open := turnMends(p), preloaded(p)
	hinders := func(o *lint.Outlook) bool { return o.Mends(p) && o.Compare(p) > 0 }
	return func(r *model.Rope, node int) (grounds []ground) {
		if mends != nil {
			grounds = append(grounds, ground{mends, ""})
		}
		if against := beside(open, r, node); against != "" {
			grounds = append(grounds, ground{hinders, against})
		}
		return grounds
	}
}

// turnMends gives the test that a turned grip must pass; nil if the rig does its job. A
// rig that raises its load but, hands off, does not hold it is mended if it raises it as
// well as before and then holds it.
func turnMends(p *lint.Pass) func(*lint.Outlook) bool {
	switch p.Fault() {
	case solve.RaisesNothing, solve.Falls, solve.Jammed:
		return func(o *lint.Outlook) bool { return o.Mends(p) }
	}
	if p.Result.Status != solve.OK || p.Explained() || p.Result.Released.Answer == solve.Held {
		return nil
	}
	return func(o *lint.Outlook) bool {
		return o.Mends(p) && o.Released() == solve.Held && o.Compare(p) >= 0
	}
}

// strandOf is a strand of a rope, by the place of its stroke.
type strandOf struct {
	rope   *model.Rope
	stroke int
}

// preloaded gives the strands that can be pulled as tight as one likes while the load is
// hauled; none in a rig that raises nothing.
func preloaded(p *lint.Pass) map[strandOf]bool {
	if p.Result.Status != solve.OK || p.Explained() {
		return nil
	}
	open := map[strandOf]bool{}
	for _, s := range p.Result.Main().Strands {
		if s.Known() && s.High == nil {
			open[strandOf{s.Rope, s.Index}] = true
		}
	}
	return open
}

// beside names such a strand beside a grip, which may hold against the haul; empty if
// there is none.
func beside(open map[strandOf]bool, r *model.Rope, node int) string {
	for _, stroke := range []int{r.Before(node), node} {
		if open[strandOf{r, stroke}] {
			return lint.StrandName(r, stroke)
		}
	}
	return ""
}

// backward makes the finding about a grip and the trial in which it is turned.
func backward(p *lint.Pass, g turned, t *lint.Trial) diag.Diagnostic {
	name := lint.NameOf(g.node.Part)
	message := fmt.Sprintf("%s grips the wrong way: %s; turned round, %s", name, p.Trouble(), t.Rises())
	gives := t.Rises()
	switch {
	case g.against != "":
		message = fmt.Sprintf("%s grips the wrong way: %s holds against the haul, and %s; turned round, %s",
			name, g.against, p.Rises(), t.Rises())
	case p.Result.Status == solve.OK:
		message = fmt.Sprintf("%s grips the wrong way: hands off, %s; turned round, it holds",
			name, lint.Fall(p.Rig, p.Result.Released, ""))
		gives = "hands off, the load is held"
	}
	return diag.Diagnostic{
		Place: g.node.Place, Message: message, Subject: g.node.Part.Name,
		Fixes: []diag.Fix{{Title: "turn " + name + " round: " + g.how, Gives: gives, Edits: []diag.Edit{g.edit}}},
	}
}
