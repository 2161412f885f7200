package seeding

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve/lp"
)

// changed makes a seed for each part that says a figure, with the figure changed.
func (b *board) changed(of func(*model.Part) *quantity.Quantity, word string, factor float64, says string) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if q := of(p); q != nil {
			value := times(q, factor)
			list = append(list, seed(fmt.Sprintf("%s %s %s", p.Name, says, value), []*model.Part{p}, b.set(p, word, value)))
		}
	}
	return list
}

func strengthCut(b *board) []Seed {
	return b.changed(func(p *model.Part) *quantity.Quantity { return p.Values.Strength }, "strength", 0.05, "bears")
}

func slipLowered(b *board) []Seed {
	return b.changed(func(p *model.Part) *quantity.Quantity { return p.Values.Slips }, "slips", 1.0/6, "slips at")
}

func overload(b *board) []Seed {
	return b.changed(func(p *model.Part) *quantity.Quantity {
		if p.Kind != model.Load {
			return nil
		}
		return p.Values.Mass
	}, "mass", 5, "has a mass of")
}

func cordThinned(b *board) []Seed {
	return b.changed(func(p *model.Part) *quantity.Quantity { return p.Values.Cord }, "cord", 0.5, "is tied of cord of")
}

// cordThickened ties each hitch of cord as thick as the rope that it grips.
func cordThickened(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, _ int, n model.Node) {
		if d := r.Line.Values.Diameter; d != nil && n.Role == model.Grip && n.Part.Kind == model.Hitch && n.Part.Values.Cord != nil {
			list = append(list, seed(n.Part.Name+" is tied of cord as thick as "+r.Line.Name,
				[]*model.Part{n.Part}, b.set(n.Part, "cord", times(d, 1))))
		}
	})
	return list
}

// ropeOutOfDevice takes a rope half as thick again as the device that it runs through takes.
func ropeOutOfDevice(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, _ int, n model.Node) {
		if n.Part != nil && n.Part.Values.Takes != nil && r.Line.Values.Diameter != nil && written(r.Line) {
			takes := n.Part.Values.Takes
			value := in(takes.High, 1.5, takes.Unit, takes.Dimension)
			list = append(list, seed(r.Line.Name+" is "+value+" thick, too thick for "+n.Part.Name,
				[]*model.Part{r.Line, n.Part}, b.set(r.Line, "diameter", value)))
		}
	})
	return list
}

// brakeWeakened lets a device brake next to nothing when rope is given out.
func brakeWeakened(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		at, ok := b.clause(p, "efficiency")
		if p.Kind != model.Device || p.Values.Lowering == nil || !ok {
			continue
		}
		edits := []diag.Edit{replace(at, "efficiency "+p.Values.Efficiency.String()+" lowering 90 %")}
		if turns, ok := b.drop(p, "turns"); ok {
			edits = append(edits, turns)
		}
		list = append(list, seed(p.Name+" hardly brakes", []*model.Part{p}, edits...))
	}
	return list
}

// ropeShortened cuts each rope to six tenths of what it needs, or of what it is where
// nobody can tell.
func ropeShortened(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if p.Values.Length == nil || !p.Kind.IsLine() {
			continue
		}
		value := times(p.Values.Length, 0.6)
		for _, need := range b.solved.Rope {
			if need.Rope.Line == p && need.Needed != nil && need.Needed.Sign() > 0 {
				value = rounded(need.Needed.Float()*0.6) + " m"
			}
		}
		list = append(list, seed(p.Name+" is "+value+" long", []*model.Part{p}, b.set(p, "length", value)))
	}
	return list
}

// tractorSetHigh leaves each hitch on a moving strand a twentieth of its way.
func tractorSetHigh(b *board) []Seed {
	main := b.solved.Main()
	if main == nil || main.Stroke == nil || main.Stroke.Rise == nil {
		return nil
	}
	var list []Seed
	for _, pair := range main.Stroke.Pairs {
		p := pair.Lower
		if pair.Gap == nil || pair.Gap.Sign() <= 0 || !p.Moves() || p.Kind.IsWeight() || p.Values.At == nil {
			continue
		}
		at, known := b.solved.Position(p)
		if !known {
			continue
		}
		value := rounded(at.Float()+0.95*pair.Gap.Float()) + " m"
		list = append(list, seed(p.Name+" starts at "+value+", just below "+pair.Upper.Name,
			[]*model.Part{p, pair.Upper}, b.set(p, "at", value)))
	}
	return list
}

// knotWeakened ties each rope's end with the simplest knot.
func knotWeakened(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, _ int, n model.Node) {
		if n.Tie != "" && n.Tie != "overhand" {
			list = append(list, seed(r.Line.Name+" is tied to "+n.Name()+" with an overhand knot",
				[]*model.Part{r.Line, n.Part}, replace(n.Place, n.Name()+" (overhand)")))
		}
	})
	return list
}

// cornerClosed turns the rope straight back wherever an angle is written at a bend.
func cornerClosed(b *board) []Seed {
	var list []Seed
	b.eachNode(func(r *model.Rope, i int, n model.Node) {
		if at, ok := b.nodeClause(r, i, "angle"); ok {
			list = append(list, seed("the corner at "+n.Name()+" is closed to 20 deg",
				[]*model.Part{n.Part}, replace(at, "angle 20 deg")))
		}
	})
	return list
}

func legTakenAway(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if p.Kind == model.Leg {
			gone := []*model.Part{p}
			if from := p.Values.From; from != nil && !b.needed(from, nil, gone) {
				gone = append(gone, from)
			}
			s := seed(p.Name+" is taken away", gone)
			for _, q := range gone {
				s.Edits = append(s.Edits, wholeLines(b.file.File, q.Place.Span))
			}
			if to := p.Values.To; to != nil {
				s.Parts = append(s.Parts, to.Name)
			}
			list = append(list, s)
		}
	}
	return list
}

// legsWidened spreads all legs of a focal point, the same way on both sides.
func legsWidened(b *board) []Seed {
	var list []Seed
	for _, focal := range b.rig.Parts {
		if focal.Kind != model.Focal {
			continue
		}
		parts, edits := []*model.Part{focal}, []diag.Edit(nil)
		for p := range b.inOrder() {
			at, ok := b.clause(p, "angle")
			if p.Values.To != focal || !ok || p.Values.Angle.Low.Sign() == 0 {
				continue
			}
			angle := "angle 65 deg"
			if p.Values.Angle.Low.Sign() < 0 {
				angle = "angle -65 deg"
			}
			parts, edits = append(parts, p), append(edits, replace(at, angle))
		}
		if len(edits) > 1 {
			list = append(list, seed("the legs of "+focal.Name+" are spread to 130 deg", parts, edits...))
		}
	}
	return list
}

func peopleSentAway(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if n := p.Values.People; p.Kind == model.Hauler && n != nil && n.Low.Num().Int64() > 1 {
			list = append(list, seed(p.Name+" is one person", []*model.Part{p}, b.set(p, "people", "1")))
		}
	}
	return list
}

func crowdOnRope(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		if n := p.Values.People; p.Kind == model.Hauler && n != nil {
			value := times(n, 8)
			list = append(list, seed(p.Name+" are "+value+" people", []*model.Part{p}, b.set(p, "people", value)))
		}
	}
	return list
}

// teamBelow puts each team two metres below the lowest load, where positions are known.
func teamBelow(b *board) []Seed {
	var lowest *lp.Num
	for _, p := range b.rig.Parts {
		if at, known := b.solved.Position(p); known && p.Kind == model.Load && (lowest == nil || at.Cmp(*lowest) < 0) {
			lowest = &at
		}
	}
	var list []Seed
	for p := range b.inOrder() {
		if p.Kind == model.Hauler && lowest != nil && p.On == nil {
			list = append(list, seed(p.Name+" stands below the load", []*model.Part{p},
				b.set(p, "at", rounded(lowest.Float()-2)+" m")))
		}
	}
	return list
}

// teamOnGrip clips each team to the hitch or clamp that its own rope pulls.
func teamOnGrip(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		for _, q := range b.rig.Parts {
			if p.Kind == model.Hauler && p.On == nil && q.Kind.IsGrip() && q.On == nil {
				list = append(list, seed(p.Name+" is on "+q.Name, []*model.Part{p, q}, after(p.NamePlace, " on "+q.Name)))
			}
		}
	}
	return list
}
