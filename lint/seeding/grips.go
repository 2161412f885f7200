package seeding

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
)

// hitchMoved sets each hitch and clamp on each other strand of every line.
func hitchMoved(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		if n.Role != model.Grip {
			return
		}
		before := r.Before(i)
		for _, q := range b.rig.Ropes {
			for k, stroke := range q.Strokes {
				if stroke == model.Slack || q == r && (k == before || k == i) || q.Loop && k == len(q.Strokes)-1 {
					continue
				}
				edits := append(lint.TakeOut(r, i, before), lint.SetIn(q, k, n.Place.Text()))
				done := n.Part.Name + " is set on " + lint.StrandName(q, k)
				list = append(list, seed(done, []*model.Part{n.Part}, edits...))
			}
		}
	})
	return list
}

func hitchTakenOff(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		if n.Role == model.Grip {
			done := n.Part.Name + " is not on " + r.Line.Name
			list = append(list, seed(done, []*model.Part{n.Part}, lint.TakeOut(r, i, r.Before(i))...))
		}
	})
	return list
}

// gripTurned makes every one-way grip and every capture hold the side of the other end.
func gripTurned(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		if n.Role != model.Grip && n.Role != model.Capture {
			return
		}
		first, last, open := ends(r, i)
		if !open {
			return
		}
		end, other := r.Nodes[last].Part, r.Nodes[first].Part
		if n.Holds == model.LastSide {
			end, other = other, end
		}
		if end == nil || end == other {
			return
		}
		done := n.Part.Name + " holds the side of " + end.Name
		list = append(list, seed(done, []*model.Part{n.Part}, b.say(r, i, "holds", end.Name)))
	})
	return list
}

// captureDropped takes "holds" away, at the node or at the part, wherever it makes a bend
// hold.
func captureDropped(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		if n.Role != model.Capture {
			return
		}
		var edit diag.Edit
		if at, ok := b.nodeClause(r, i, "holds"); ok {
			edit = b.cutNodeClause(n, at)
		} else if edit, ok = b.drop(n.Part, "holds"); !ok {
			return
		}
		list = append(list, seed(n.Part.Name+" does not hold", []*model.Part{n.Part}, edit))
	})
	return list
}

// captureMoved lets another bend of the line hold in place of the one that does.
func captureMoved(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		at, here := b.nodeClause(r, i, "holds")
		if n.Role != model.Capture {
			return
		}
		edit, atPart := b.drop(n.Part, "holds")
		if !here && !atPart {
			return
		}
		if here {
			edit = b.cutNodeClause(n, at)
		}
		for k, m := range r.Nodes {
			if k != i && m.Role == model.Bend && m.Part.Kind != model.Edge {
				list = append(list, seed(m.Part.Name+" holds in place of "+n.Part.Name,
					[]*model.Part{m.Part, n.Part}, edit, b.say(r, k, "holds", "")))
			}
		}
	})
	return list
}

func releasableDropped(b *board) []Seed {
	var list []Seed
	for _, p := range b.rig.Parts {
		if edit, ok := b.drop(p, "releasable"); ok {
			list = append(list, seed(p.Name+" cannot be opened under load", []*model.Part{p}, edit))
		}
	}
	return list
}

func setBackGrown(b *board) []Seed {
	var list []Seed
	for _, h := range b.solved.Hauls() {
		if h.Stroke == nil || h.Stroke.Rise == nil || h.Stroke.Rise.Sign() <= 0 {
			continue
		}
		for _, p := range b.rig.Parts {
			if p.Values.SetBack != nil || b.captures(p) {
				done := p.Name + " lets half of each stroke back"
				list = append(list, seed(done, []*model.Part{p}, b.set(p, "set-back", rounded(h.Stroke.Rise.Float()/2)+" m")))
			}
		}
	}
	return list
}

// captures says whether a fixed part lets a rope run one way only.
func (b *board) captures(p *model.Part) bool {
	found := false
	b.eachNode(func(_ *model.Rope, _ int, n model.Node) {
		found = found || n.Part == p && p.Fixed() && (n.Role == model.Capture || n.Role == model.Grip)
	})
	return found
}

// eachNode walks every node of every line in file order.
func (b *board) eachNode(visit func(r *model.Rope, i int, n model.Node)) {
	for _, r := range b.rig.Ropes {
		for i, n := range r.Nodes {
			visit(r, i, n)
		}
	}
}
