package seeding

import (
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lint"
)

func strokeFlipped(b *board) []Seed {
	var list []Seed
	for _, r := range b.rig.Ropes {
		for k, s := range r.Strokes {
			if s == model.Slack {
				continue
			}
			done := lint.StrandName(r, k) + " is drawn the other way"
			list = append(list, seed(done, beside(r, k), replace(r.StrokePlaces[k], flipped(s))))
		}
	}
	return list
}

// beside gives the parts at the two ends of a stroke.
func beside(r *model.Rope, stroke int) []*model.Part {
	return []*model.Part{r.Nodes[stroke].Part, r.Nodes[r.After(stroke)].Part}
}

// strokesSwapped exchanges two strokes that follow one another and differ.
func strokesSwapped(b *board) []Seed {
	var list []Seed
	for _, r := range b.rig.Ropes {
		for k := 1; k < len(r.Strokes); k++ {
			x, y := r.Strokes[k-1], r.Strokes[k]
			if x == y || x == model.Slack || y == model.Slack {
				continue
			}
			done := "the strokes on the two sides of " + r.Nodes[k].Name() + " are swapped"
			list = append(list, seed(done, []*model.Part{r.Nodes[k].Part},
				replace(r.StrokePlaces[k-1], y.String()), replace(r.StrokePlaces[k], x.String())))
		}
	}
	return list
}

// nodesSwapped exchanges two neighbours in mid rope.
func nodesSwapped(b *board) []Seed {
	var list []Seed
	for _, r := range b.rig.Ropes {
		for i := 1; i < len(r.Nodes); i++ {
			x, y := r.Nodes[i-1], r.Nodes[i]
			if !between(r, i-1) || !between(r, i) || x.Part == y.Part {
				continue
			}
			done := x.Name() + " and " + y.Name() + " are swapped"
			list = append(list, seed(done, []*model.Part{x.Part, y.Part},
				replace(x.Place, y.Place.Text()), replace(y.Place, x.Place.Text())))
		}
	}
	return list
}

// bendTakenOut lets the rope pass a bend by, with either of the strokes beside it gone, and
// the bend too if nothing else needs it.
func bendTakenOut(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		if n.Role != model.Bend && n.Role != model.Capture || !between(r, i) || i == 0 {
			return
		}
		for _, stroke := range []int{i - 1, i} {
			edits := lint.TakeOut(r, i, stroke)
			if written(n.Part) && b.meets(n.Part) == 1 { // nobody draws it then
				edits = append(edits, b.erase([]source.Span{n.Part.Place.Span}, []*model.Part{n.Part})...)
			}
			s := seed(r.Line.Name+" passes "+n.Name()+" by", []*model.Part{n.Part, r.Line}, edits...)
			for _, k := range []int{i - 1, r.After(i)} {
				s.Parts = append(s.Parts, r.Nodes[k].Name())
			}
			list = append(list, s)
		}
	})
	return list
}

// meets counts the places at which anything meets a part: ropes, and what is on it.
func (b *board) meets(p *model.Part) int {
	n := 0
	b.eachNode(func(_ *model.Rope, _ int, node model.Node) {
		if node.Part == p {
			n++
		}
	})
	for _, q := range b.rig.Parts {
		if q.On == p || q.Values.HoldsEnd == p {
			n++
		}
	}
	return n
}

// lineTurnedRound writes each line from its other end: the same way of the rope, but the
// sides of its grips change unless their ends are named.
func lineTurnedRound(b *board) []Seed {
	var list []Seed
	for _, r := range b.rig.Ropes {
		n := len(r.Nodes)
		if r.Loop || n < 2 {
			continue
		}
		var line strings.Builder
		for i := n - 1; i >= 0; i-- {
			line.WriteString(r.Nodes[i].Place.Text())
			if i > 0 {
				line.WriteString(" " + flipped(r.Strokes[i-1]) + " ")
			}
		}
		whole := r.Nodes[0].Place
		whole.Span = whole.Span.To(r.Nodes[n-1].Place.Span)
		done := r.Line.Name + " is written from " + r.Nodes[n-1].Name() + " to " + r.Nodes[0].Name()
		list = append(list, seed(done, []*model.Part{r.Line}, replace(whole, line.String())))
	}
	return list
}

// redirectAdded turns each hauled end once more, straight back to an anchor.
func redirectAdded(b *board) []Seed { return b.redirected("", "is turned round at") }

// redirectAside turns each hauled end to the side at the anchor of the line.
func redirectAside(b *board) []Seed { return b.redirected(" (angle 90 deg)", "is turned aside at") }

// redirected adds a fixed pulley in front of each hauled end, with a clause at its node.
func (b *board) redirected(clause, says string) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		k := r.Before(i)
		anchor := b.anchorNear(r, i)
		if n.Role != model.Hauled || k < 0 || r.Strokes[k] == model.Slack || anchor == nil || !written(r.Line) {
			return
		}
		name := b.fresh("corner")
		statement := "pulley " + name + " on " + anchor.Name
		if b.knowsFriction() {
			statement += " efficiency 90 %"
		}
		s := r.Strokes[k]
		made := seed(r.Line.Name+" "+says+" a pulley on "+anchor.Name, []*model.Part{anchor},
			before(r.Line.Place, statement+"\n"),
			after(r.Nodes[k].Place, " "+s.String()+" "+name+clause),
			replace(r.StrokePlaces[k], flipped(s)))
		made.Parts = append(made.Parts, name)
		list = append(list, made)
	})
	return list
}

// knotInRope ties a knot into each strand that runs to a bend, half way between the two
// parts where they have positions.
func knotInRope(b *board) []Seed {
	var list []Seed
	name := b.fresh("joint")
	for _, r := range b.rig.Ropes {
		for k, s := range r.Strokes {
			from, to := r.Nodes[k], r.Nodes[r.After(k)]
			if s == model.Slack || from.Part == nil || to.Role != model.Bend && to.Role != model.Capture || to.Part.Kind == model.Edge || !written(r.Line) {
				continue
			}
			x, known := b.solved.Position(from.Part)
			y, also := b.solved.Position(to.Part)
			if !known || !also {
				continue // nobody can tell when the knot comes to the bend
			}
			statement := "knot " + name + " at " + rounded((x.Float()+y.Float())/2) + " m"
			made := seed(r.Line.Name+" has a knot between "+from.Name()+" and "+to.Name(), []*model.Part{r.Line, to.Part},
				before(r.Line.Place, statement+"\n"), lint.SetIn(r, k, name))
			made.Parts = append(made.Parts, name)
			list = append(list, made)
		}
	}
	return list
}

// anchorNear gives the fixed point of the last fixed node in front of a node; the first
// anchor of the rig where there is none.
func (b *board) anchorNear(r *model.Rope, node int) *model.Part {
	for i := node - 1; i >= 0; i-- {
		if p := r.Nodes[i].Part; p != nil && p.Fixed() && p.Root().Kind == model.Anchor {
			return p.Root()
		}
	}
	for _, p := range b.rig.Parts {
		if p.Kind == model.Anchor {
			return p
		}
	}
	return nil
}

// fresh gives a name that no part has.
func (b *board) fresh(name string) string {
	for b.rig.Part(name) != nil {
		name += "-too"
	}
	return name
}

// knowsFriction says whether the rig's figures with friction are known.
func (b *board) knowsFriction() bool {
	main := b.solved.Main()
	return main != nil && main.Actual.Known()
}

// cutNodeClause gives the edit that takes a clause out of a node, with the parentheses if
// nothing else stands in them.
func (b *board) cutNodeClause(n model.Node, clause source.Place) diag.Edit {
	inside := source.Span{Start: n.NamePlace.Span.End, End: n.Place.Span.End}
	left := b.file.File.Slice(source.Span{Start: inside.Start, End: clause.Span.Start}) +
		b.file.File.Slice(source.Span{Start: clause.Span.End, End: inside.End})
	if strings.Trim(left, " \t()") == "" {
		return replace(b.file.File.At(inside), "")
	}
	return b.cut(clause.Span)
}
