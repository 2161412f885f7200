package solve

import (
	"cmp"
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// positions say where the parts of a rig are along the haul line, by Part.Index. Empty
// if no part of the rig has a position.
type positions []position

// position is where a part is, in metres, up positive, and the part whose "at" says so;
// by is nil where nothing is known.
type position struct {
	by *model.Part
	at lp.Num
}

// newPositions gives every part its own "at", else that of the nearest part that
// it is on, else that of the nearest part hanging on it, else what the part that
// it is on has by that last rule: a body of which one part is placed is placed.
// Of a range the middle is taken.
func newPositions(rig *model.Rig) positions {
	if !slices.ContainsFunc(rig.Parts, func(p *model.Part) bool { return p.Values.At != nil }) {
		return nil
	}
	order := outward(rig)
	at := make(positions, len(rig.Parts))
	for _, p := range order {
		switch {
		case p.Values.At != nil:
			at[p.Index] = position{p, lp.FromRat(p.Values.At.Middle())}
		case p.On != nil:
			at[p.Index] = at[p.On.Index]
		}
	}
	hanging := at.hanging(order)
	for _, p := range order {
		if at[p.Index].by == nil {
			at[p.Index] = hanging[p.Index]
		}
		if at[p.Index].by == nil && p.On != nil {
			at[p.Index] = at[p.On.Index]
		}
	}
	return at
}

// hanging gives for each part the position of the nearest part that hangs on it
// and has one, the first of the file among equally near ones. The order has what is
// hung on before what hangs.
func (at positions) hanging(order []*model.Part) positions {
	found := make(positions, len(order))
	type nearest struct{ steps, part int }
	near := make([]nearest, len(order))
	for _, p := range slices.Backward(order) {
		if p.On == nil {
			continue
		}
		mine, position := nearest{1, p.Index}, found[p.Index]
		if p.Values.At != nil {
			position = at[p.Index]
		} else {
			mine = nearest{near[p.Index].steps + 1, near[p.Index].part}
		}
		on := p.On.Index
		closer := cmp.Or(cmp.Compare(mine.steps, near[on].steps), cmp.Compare(mine.part, near[on].part)) < 0
		if position.by != nil && (found[on].by == nil || closer) {
			found[on], near[on] = position, mine
		}
	}
	return found
}

// outward lists the parts so that each comes after the one it is on.
func outward(rig *model.Rig) []*model.Part {
	depth := make([]int, len(rig.Parts))
	for _, p := range rig.Parts {
		var chain []*model.Part
		for q := p; q != nil && depth[q.Index] == 0; q = q.On {
			chain = append(chain, q)
		}
		for _, q := range slices.Backward(chain) {
			depth[q.Index] = 1
			if q.On != nil {
				depth[q.Index] += depth[q.On.Index]
			}
		}
	}
	order := slices.Clone(rig.Parts)
	slices.SortStableFunc(order, func(a, b *model.Part) int { return cmp.Compare(depth[a.Index], depth[b.Index]) })
	return order
}

// of gives the position of a part; known is false for nil.
func (at positions) of(p *model.Part) (metres lp.Num, known bool) {
	if p == nil || len(at) == 0 || at[p.Index].by == nil {
		return lp.Num{}, false
	}
	return at[p.Index].at, true
}

// strand gives the length of a strand along the haul line: the way that its stroke
// leads, so negative where the positions contradict the stroke. A "~" has the
// distance of its two ends, which is the least that it can be.
func (at positions) strand(r *model.Rope, stroke int) (metres lp.Num, known bool) {
	from, ok := at.of(r.Nodes[stroke].Part)
	to, too := at.of(r.Nodes[r.After(stroke)].Part)
	switch {
	case !ok || !too:
		return lp.Num{}, false
	case r.Strokes[stroke] == model.Slack:
		return to.Sub(from).Abs(), true
	}
	return to.Sub(from).Mul(lp.Int(int64(r.Strokes[stroke]))), true
}

// Position gives where a part is along the haul line, in metres from the author's
// zero, up positive: its own "at", else that of what it is on, else that of what
// hangs on it. known is false if none of them says.
func (r *Result) Position(p *model.Part) (metres lp.Num, known bool) {
	return r.system.place.of(p)
}

// PlacedBy gives the part whose "at" says where a part is: itself, what it is on, or
// what hangs on it. Nil if none does.
func (r *Result) PlacedBy(p *model.Part) *model.Part {
	if p == nil || len(r.system.place) == 0 {
		return nil
	}
	return r.system.place[p.Index].by
}

// StrandLength gives the length in metres of one stroke of a rope as the positions
// of its two ends have it, measured along the haul line; of a "~", the distance of
// its ends. It is negative where the positions contradict the stroke. known is
// false if an end has no position.
func (r *Result) StrandLength(rope *model.Rope, stroke int) (metres lp.Num, known bool) {
	return r.system.place.strand(rope, stroke)
}

// Highest gives where a load gets to, as Position: where it is at the start and the
// height by which the rig raises it on top: what "raise" asks for, as far as it is known
// to be reached, or else one stroke. known is false if its start is not.
func (r *Result) Highest(load *model.Part) (metres lp.Num, known bool) {
	metres, known = r.Position(load)
	rise, reached := lp.Num{}, false
	for _, ph := range r.Hauls() {
		if !ph.Stroke.Known() || !slices.Contains(ph.Stroke.Load.Parts, load) {
			continue
		}
		switch k := ph.Stroke; {
		case k.Raise != nil:
			rise, reached = lp.Max(rise, k.Raise.Reached), true
		case k.Rise != nil:
			rise, reached = lp.Max(rise, *k.Rise), true
		}
	}
	if v := load.Values.Raise; v != nil && !reached {
		rise = lp.FromRat(v.Middle())
	}
	return metres.Add(rise), known
}
