package seeding

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint"
)

// belayLeftOut leaves out each line that somebody only minds, or that hangs loose below.
func belayLeftOut(b *board) []Seed { return b.linesLeftOut(isMinded) }

// lineLeftOut leaves out each line that nobody hauls or minds.
func lineLeftOut(b *board) []Seed {
	return b.linesLeftOut(func(r *model.Rope) bool { return !isMinded(r) && !isHauled(r) })
}

func (b *board) linesLeftOut(chosen func(*model.Rope) bool) []Seed {
	var list []Seed
	for _, r := range b.rig.Ropes {
		if !written(r.Line) || !chosen(r) {
			continue
		}
		gone := b.belongsTo(r)
		spans := []source.Span{r.Place.Span}
		for _, p := range gone {
			spans = append(spans, p.Place.Span)
		}
		s := seed(r.Line.Name+" is left out, with all that belongs to it", gone, b.erase(spans, gone)...)
		for _, n := range r.Nodes { // what is left of the two ends
			if n.Part != nil && !slices.Contains(gone, n.Part) {
				s.Parts = append(s.Parts, n.Part.Name)
			}
		}
		list = append(list, s)
	}
	return list
}

// erase gives the edits that take statements out, and with them every acceptance that
// names one of the parts gone.
func (b *board) erase(spans []source.Span, gone []*model.Part) []diag.Edit {
	for _, a := range b.rig.Accepted {
		if a.At != nil && slices.Contains(gone, a.At) {
			spans = append(spans, a.Place.Span)
		}
	}
	var edits []diag.Edit
	for _, s := range spans {
		edits = append(edits, wholeLines(b.file.File, s))
	}
	return edits
}

// belongsTo lists a line and the parts that only it needs.
func (b *board) belongsTo(r *model.Rope) []*model.Part {
	gone := []*model.Part{r.Line}
	for grown := true; grown; {
		grown = false
		for _, p := range b.rig.Parts {
			if !slices.Contains(gone, p) && !p.Kind.IsWeight() && b.touches(r, p) && !b.needed(p, r, gone) {
				gone, grown = append(gone, p), true
			}
		}
	}
	slices.SortFunc(gone, func(a, b *model.Part) int { return a.Index - b.Index })
	return gone
}

// touches says whether a line meets a part, or something that is on it or hangs on it.
func (b *board) touches(r *model.Rope, p *model.Part) bool {
	for _, n := range r.Nodes {
		for q := n.Part; q != nil; q = q.On {
			if q == p || q.Root() == p {
				return true
			}
		}
	}
	for _, leg := range b.rig.Parts {
		if to := leg.Values.To; to != nil && (leg == p || leg.Values.From == p) && b.touches(r, to) {
			return true
		}
	}
	return false
}

// needed says whether anything that stays needs a part.
func (b *board) needed(p *model.Part, r *model.Rope, gone []*model.Part) bool {
	for _, q := range b.rig.Ropes {
		if q != r && slices.ContainsFunc(q.Nodes, func(n model.Node) bool { return n.Part == p }) {
			return true
		}
	}
	for _, q := range b.rig.Parts {
		v := q.Values
		if !slices.Contains(gone, q) && (q.On == p || v.HoldsEnd == p || v.To == p || v.From == p && !slices.Contains(gone, v.To)) {
			return true
		}
	}
	return false
}

func isHauled(r *model.Rope) bool {
	return slices.ContainsFunc(r.Nodes, func(n model.Node) bool { return n.Role == model.Hauled })
}

// isMinded says whether nobody hauls a line, but somebody minds its end or it hangs free.
func isMinded(r *model.Rope) bool {
	return !isHauled(r) && slices.ContainsFunc(r.Nodes, func(n model.Node) bool {
		return n.Role == model.Tended || n.Role == model.Loose
	})
}

// belaySlack lets the strand between a load and the first thing that holds it lie loose.
func belaySlack(b *board) []Seed {
	var list []Seed
	for _, r := range b.rig.Ropes {
		if !isMinded(r) || r.Loop {
			continue
		}
		for k, s := range r.Strokes {
			from, to := r.Nodes[k], r.Nodes[k+1]
			if s == model.Slack || from.Role != model.Tied || to.Holds == model.NoSide {
				continue
			}
			edits := []diag.Edit{replace(r.StrokePlaces[k], "~")}
			if at, ok := b.clause(to.Part, "holds"); ok { // the end that it names is none of its run now
				edits = append(edits, replace(at, "holds"))
			}
			list = append(list, seed(r.Line.Name+" lies slack between "+from.Name()+" and "+to.Name(),
				[]*model.Part{r.Line, from.Part, to.Part}, edits...))
		}
	}
	return list
}

// belayOnMainAnchor clips what holds a minded line to the anchor that the hauled line has.
func belayOnMainAnchor(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, _ int, n model.Node) {
		if !isMinded(r) || n.Part == nil || n.Part.On == nil || !n.Part.Fixed() {
			return
		}
		for _, main := range b.rig.Ropes {
			if !isHauled(main) {
				continue
			}
			for _, m := range main.Nodes {
				if m.Part == nil || !m.Part.Fixed() || m.Part.Root() == n.Part.Root() || m.Holds == model.NoSide {
					continue
				}
				anchor, own := m.Part.Root(), n.Part.On
				s := seed(n.Part.Name+" is on "+anchor.Name+", as the main line",
					[]*model.Part{n.Part, anchor}, replace(n.Part.OnPlace, anchor.Name))
				if own.Kind == model.Anchor && !b.needed(own, nil, []*model.Part{n.Part}) { // nobody draws it then
					s.Edits = append(s.Edits, b.erase([]source.Span{own.Place.Span}, []*model.Part{own})...)
				}
				list = append(list, s)
			}
		}
	})
	return list
}

// oneLink ties every line that ends at a load into one carabiner on it.
func oneLink(b *board) []Seed {
	var list []Seed
	for _, load := range b.rig.Parts {
		if load.Kind != model.Load || !written(load) {
			continue
		}
		name := b.fresh("link")
		edits := []diag.Edit{before(load.Place, "carabiner "+name+" on "+load.Name+" locking strength 40 kN\n")}
		for _, p := range b.rig.Parts { // whoever holds the side of the load holds that of the link now
			if at, ok := b.clause(p, "holds"); ok && p.Values.HoldsEnd == load {
				edits = append(edits, replace(at, "holds "+name))
			}
		}
		lines := 0
		b.eachNode(func(r *model.Rope, i int, n model.Node) {
			if n.Part == load && n.Role == model.Tied {
				edits = append(edits, replace(n.NamePlace, name))
				lines++
			}
			if at, ok := b.nodeClause(r, i, "holds"); ok && at.Text() == "holds "+load.Name {
				edits = append(edits, replace(at, "holds "+name))
			}
		})
		if lines > 1 {
			made := seed("all lines of "+load.Name+" are tied into one carabiner", []*model.Part{load}, edits...)
			made.Parts = append(made.Parts, name)
			list = append(list, made)
		}
	}
	return list
}

// endUntied lets each tied end of a line hang loose.
func endUntied(b *board) []Seed {
	return b.atEnds(model.Tied, func(r *model.Rope, n model.Node) []Seed {
		return []Seed{seed(r.Line.Name+" is not tied to "+n.Name(), []*model.Part{n.Part, r.Line}, replace(n.Place, "tail"))}
	})
}

// teamGone leaves nobody at a hauled end.
func teamGone(b *board) []Seed {
	return b.atEnds(model.Hauled, func(r *model.Rope, n model.Node) []Seed {
		return []Seed{seed("nobody hauls "+r.Line.Name, []*model.Part{n.Part, r.Line}, replace(n.Place, "tail"))}
	})
}

// atEnds makes seeds at the first and last node of each open line.
func (b *board) atEnds(role model.Role, faults func(*model.Rope, model.Node) []Seed) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		if !r.Loop && (i == 0 || i == len(r.Nodes)-1) && n.Part != nil && n.Role == role {
			list = append(list, faults(r, n)...)
		}
	})
	return list
}

// tieMoved ties each tied end to each other part that a rope can be tied to.
func tieMoved(b *board) []Seed {
	return b.atEnds(model.Tied, func(r *model.Rope, n model.Node) []Seed {
		var list []Seed
		for _, to := range b.rig.Parts {
			if to == n.Part || to == r.Nodes[1].Part || to == r.Nodes[len(r.Nodes)-2].Part || !canTie(to) {
				continue
			}
			done := r.Line.Name + " is tied to " + to.Name + " instead of " + n.Name()
			list = append(list, seed(done, []*model.Part{to, n.Part, r.Line}, replace(n.NamePlace, to.Name)))
		}
		return list
	})
}

// canTie says whether people tie a rope's end to such a part.
func canTie(p *model.Part) bool {
	switch p.Kind {
	case model.Anchor, model.Focal, model.Load, model.Counterweight, model.Pulley, model.Carabiner, model.Ring, model.Hitch:
		return true
	}
	return false
}

// stopperDropped leaves the knot at the end of a line out.
func stopperDropped(b *board) []Seed {
	return b.atEnds(model.Stopper, func(r *model.Rope, n model.Node) []Seed {
		i := len(r.Nodes) - 1
		edits := append(lint.TakeOut(r, i, i-1), b.erase([]source.Span{n.Part.Place.Span}, []*model.Part{n.Part})...)
		return []Seed{seed(r.Line.Name+" has no stopper", []*model.Part{r.Line, r.Nodes[i-1].Part}, edits...)}
	})
}

// ropeToNowhere ties one more rope to each load, whose other end hangs loose or is tied to
// the load as well, and one from anchor to anchor.
func ropeToNowhere(b *board) []Seed {
	var list []Seed
	name := b.fresh("spare")
	for _, p := range b.rig.Parts {
		if p.Kind != model.Load || !written(p) {
			continue
		}
		for _, end := range []string{"tail", p.Name} {
			list = append(list, spare(p, p.Name, end, name))
		}
	}
	var fixed []*model.Part
	for _, p := range b.rig.Parts {
		if p.Kind == model.Anchor && written(p) {
			fixed = append(fixed, p)
		}
	}
	if len(fixed) > 1 {
		list = append(list, spare(fixed[0], fixed[0].Name, fixed[1].Name, name))
	}
	return list
}

// spare makes one more rope between two ends, of which the first is a part's.
func spare(p *model.Part, from, to, name string) Seed {
	made := seed("one more rope is tied to "+from+" and leads to "+to, []*model.Part{p},
		before(p.Place, "rope "+name+" diameter 11 mm\nreeve "+name+": "+from+" / "+to+"\n"))
	made.Parts = append(made.Parts, name)
	return made
}

// statements gives the bodies of the rig's part statements by their parts.
func (b *board) statements() map[*model.Part]*syntax.Part {
	of := map[source.Span]*syntax.Part{}
	for _, s := range b.file.Tree.Statements {
		if body, ok := s.Body.(*syntax.Part); ok {
			of[s.Span] = body
		}
	}
	list := map[*model.Part]*syntax.Part{}
	for _, p := range b.rig.Parts {
		if body := of[p.Place.Span]; body != nil {
			list[p] = body
		}
	}
	return list
}
