package solve_test

import (
	"math"

	"fairlead/lang/model"
	"fairlead/solve"
)

// simulation lets the loads of a rig fall, a second way that shares no code with
// the package: bodies at places, and rope as material. Every strand has so many
// metres of rope in it and can reach no further; over a bend rope runs from strand
// to strand, at a grip one way only, at a tie not at all, and a loose end feeds its
// strand without end. The weights go as low as that lets them.
//
// Where a rig has no positions every strand is given a length of its own, as if the
// rope were made fast at different heights of one body.
type simulation struct {
	rig     *model.Rig
	lost    solve.Lost
	hauling bool
	// bodyOf is the body by part, -1 for what does not move; of are its weights.
	bodyOf  map[*model.Part]int
	weight  []float64
	strands []material
	flows   int
	// signs are those of the flows: 1 and -1 one way only, 0 both.
	signs []int
}

// material is a strand with the rope in it.
type material struct {
	from, to *model.Part
	// way is the distance from end to end at the start, up positive.
	way, rope float64
	// straight says that the strand is one of the drawing, which runs along stroke.
	straight bool
	stroke   float64
	// knotted says that it runs between a knot and a bend.
	knotted bool
	// in and out are the flows into it and out of it, -1 for none.
	in, out int
	endless bool
}

// looseRope is the slack in metres of a "~" without a length.
const looseRope = 7

func newSimulation(rig *model.Rig, lost solve.Lost, hauling bool, weightOf func(*model.Part) float64) *simulation {
	s := &simulation{rig: rig, lost: lost, hauling: hauling, bodyOf: map[*model.Part]int{}}
	s.join(weightOf)
	for _, r := range rig.Ropes {
		if !r.Broken && !s.isGone(r.Line) {
			s.feed(r)
		}
	}
	return s
}

// isGone says whether a part left the rig.
func (s *simulation) isGone(p *model.Part) bool {
	return p != nil && p == s.lost.Part && s.lost.Kind != solve.LostAnchor && s.lost.Kind != solve.LostClip &&
		s.lost.Kind != solve.LostTie && s.lost.Kind != solve.LostHold
}

// hangsOn gives what a part is still clipped to.
func (s *simulation) hangsOn(p *model.Part) *model.Part {
	if p.On == nil || s.isGone(p.On) {
		return nil
	}
	if p == s.lost.Part && (s.lost.Kind == solve.LostClip || s.lost.Kind == solve.LostAnchor) {
		return nil
	}
	return p.On
}

func (s *simulation) join(weightOf func(*model.Part) float64) {
	top := func(p *model.Part) *model.Part {
		for s.hangsOn(p) != nil {
			p = s.hangsOn(p)
		}
		return p
	}
	index := map[*model.Part]int{}
	for _, p := range s.rig.Parts {
		root := top(p)
		s.bodyOf[p] = -1
		if s.isGone(p) || root.Kind.IsPerson() || root.Kind == model.Leg || root.IsReeved() || s.isRock(root, top) {
			continue
		}
		i, seen := index[root]
		if !seen {
			i = len(s.weight)
			index[root] = i
			s.weight = append(s.weight, 0)
		}
		s.bodyOf[p] = i
		s.weight[i] += weightOf(p)
	}
}

// isRock says whether a part that hangs on nothing is fast to the ground.
func (s *simulation) isRock(p *model.Part, top func(*model.Part) *model.Part) bool {
	legs, holding := 0, 0
	for _, leg := range s.rig.Parts {
		if leg.Kind != model.Leg || leg.Values.To != p {
			continue
		}
		legs++
		if from := leg.Values.From; !s.isGone(leg) && !s.isGone(from) && top(from).Kind == model.Anchor &&
			!(s.lost.Kind == solve.LostAnchor && s.lost.Part == top(from)) {
			holding++
		}
	}
	switch {
	case legs > 0:
		return holding > 0
	case p == s.lost.Part && (s.lost.Kind == solve.LostAnchor || s.lost.Kind == solve.LostClip):
		return false
	}
	return p.Kind == model.Anchor || p.Kind == model.Edge || p.Kind == model.Focal
}

// passing is what rope does at a node: it is not there, it bends, rope goes one
// way, it is tied, or its hands let rope go.
type passing int

const (
	notThere passing = iota
	bent
	onward
	back
	tied
	letGo
)

func (s *simulation) passing(r *model.Rope, i int) passing {
	n := r.Nodes[i]
	lineEnd := !r.Loop && (i == 0 || i == len(r.Nodes)-1)
	off := s.isGone(n.Part) || s.lost.Kind == solve.LostTie && s.lost.Rope == r && s.lost.Node == i ||
		n.Role == model.Hauled && !s.hauling
	switch {
	case off && lineEnd:
		return letGo
	case off:
		return notThere
	}
	holds := n.Holds
	if s.lost.Kind == solve.LostHold && s.lost.Part == n.Part {
		holds = model.NoSide
	}
	switch n.Role {
	case model.Bend, model.Capture, model.Grip:
		return map[model.Side]passing{model.NoSide: bent, model.FirstSide: onward, model.LastSide: back}[holds]
	case model.Tended, model.Loose:
		return letGo
	case model.Tied:
		if !lineEnd && n.Holds != model.NoSide { // a device beside slack rope holds the taut side
			switch before := r.Strokes[r.Before(i)]; {
			case holds == model.NoSide:
				return bent
			case before == model.Slack:
				return back
			}
			return onward
		}
	}
	return tied
}

// feed cuts a rope into strands with material.
func (s *simulation) feed(r *model.Rope) {
	var at []int
	for i := range r.Nodes {
		if s.passing(r, i) != notThere {
			at = append(at, i)
		}
	}
	if len(at) < 2 && !(r.Loop && len(at) == 1) {
		return
	}
	first := len(s.strands)
	for k, i := range at {
		if k+1 < len(at) {
			s.strands = append(s.strands, s.strand(r, i, at[k+1]))
		} else if r.Loop {
			s.strands = append(s.strands, s.strand(r, i, at[0]))
		}
	}
	mine := s.strands[first:]
	for k, i := range at {
		before, after := k-1, k
		if r.Loop && before < 0 {
			before = len(mine) - 1
		}
		s.connect(s.passing(r, i), mine, before, after)
	}
}

// connect lets rope pass from one strand to the next.
func (s *simulation) connect(how passing, mine []material, before, after int) {
	if how == letGo {
		if before >= 0 {
			mine[before].endless = true
		}
		if after < len(mine) {
			mine[after].endless = true
		}
	}
	if how != bent && how != onward && how != back || before < 0 || after >= len(mine) || before == after {
		return
	}
	mine[before].out, mine[after].in = s.flows, s.flows
	s.signs = append(s.signs, map[passing]int{bent: 0, onward: 1, back: -1}[how])
	s.flows++
}

// strand makes the strand from one node to another: over what lies between.
func (s *simulation) strand(r *model.Rope, from, to int) material {
	m := material{from: r.Nodes[from].Part, to: r.Nodes[to].Part, straight: true, stroke: float64(r.Strokes[from]), in: -1, out: -1}
	slack := false
	for i := from; ; i = r.After(i) {
		way, rope := s.drawn(r, i)
		m.way, m.rope = m.way+way, m.rope+rope
		if r.Strokes[i] == model.Slack || r.Strokes[i] != r.Strokes[from] {
			m.straight = false
		}
		slack = slack || r.Strokes[i] == model.Slack
		if r.After(i) == to {
			break
		}
	}
	if slack && r.Line.Values.Length != nil {
		m.rope = quantityOf(r.Line.Values.Length)
		for i := range r.Strokes {
			if (i < from || i >= to) && r.Strokes[i] != model.Slack {
				_, rope := s.drawn(r, i)
				m.rope -= rope
			}
		}
	}
	isKnot := func(n model.Node) bool { return n.Part != nil && n.Part.Kind == model.Knot }
	isBend := func(n model.Node) bool { return n.Role == model.Bend || n.Role == model.Capture }
	a, b := r.Nodes[from], r.Nodes[to]
	m.knotted = isKnot(a) && isBend(b) || isBend(a) && isKnot(b)
	return m
}

// drawn gives the way that one stroke leads, up positive, and the rope in it.
func (s *simulation) drawn(r *model.Rope, i int) (way, rope float64) {
	from, known := place(r.Nodes[i].Part)
	to, too := place(r.Nodes[r.After(i)].Part)
	switch {
	case known && too:
		way = to - from
	case r.Strokes[i] == model.Slack:
		way = 1.5
	default: // some length, another for each strand
		way = float64(r.Strokes[i]) * (3 + math.Mod(float64(i)*1.7+float64(r.Line.Index)*2.3, 5))
	}
	rope = math.Abs(way)
	if r.Strokes[i] == model.Slack {
		rope += looseRope
	}
	return way, rope
}

func place(p *model.Part) (float64, bool) {
	for q := p; q != nil; q = q.On {
		if q.Values.At != nil {
			return quantityOf(q.Values.At), true
		}
	}
	return 0, false
}

// ghosts say which strands may turn over as if their ends passed through each other.
type ghosts int

const (
	noGhosts  ghosts = iota // parts meet and stop
	butKnots                // only a knot stops at a bend
	allGhosts               // nothing meets
)

// lowest gives the work of the weights at their lowest places, and each place;
// bottomless says that there is none. A body named by favour is as low as it can
// be there.
func (s *simulation) lowest(how ghosts, favour int) (work float64, places []float64, bottomless, ok bool) {
	n := len(s.weight)
	// Unknowns: how far each body goes down and up, and each flow onward and back.
	p := &pivoting{columns: 2*n + 2*s.flows}
	for _, m := range s.strands {
		if m.endless {
			continue
		}
		if m.straight && (how == allGhosts || how == butKnots && !m.knotted) {
			s.reach(p, m, m.stroke, m.rope-m.stroke*m.way)
			continue
		}
		s.reach(p, m, 1, m.rope-m.way)
		s.reach(p, m, -1, m.rope+m.way)
	}
	for i, w := range s.weight {
		if i == favour {
			w += 1e-7
		}
		p.gain(i, w)
		p.gain(n+i, -w)
	}
	for f, sign := range s.signs {
		if sign > 0 {
			p.bar(2*n + s.flows + f)
		} else if sign < 0 {
			p.bar(2*n + f)
		}
	}
	x, outcome := p.solve()
	if outcome != settled {
		return 0, nil, outcome == endless, outcome == endless
	}
	for i, w := range s.weight {
		down := x[i] - x[n+i]
		places = append(places, -down)
		work += w * down
	}
	return work, places, false, true
}

// reach adds sign·(distance of the ends) ≤ rope, with room at the start.
func (s *simulation) reach(p *pivoting, m material, sign, room float64) {
	row := p.row(math.Max(room, 0))
	n := len(s.weight)
	move := func(part *model.Part, by float64) {
		if b := s.bodyOf[part]; part != nil && b >= 0 {
			p.rows[row].a[b] -= by // down
			p.rows[row].a[n+b] += by
		}
	}
	move(m.to, sign)
	move(m.from, -sign)
	feed := func(flow int, by float64) {
		if flow >= 0 {
			p.rows[row].a[2*n+flow] += by
			p.rows[row].a[2*n+s.flows+flow] -= by
		}
	}
	feed(m.in, -1)
	feed(m.out, 1)
}

// answer tells the four answers apart by what the simulation does; undecided where
// its numbers do not say.
func (s *simulation) answer() (answer solve.Answer, atKnot, decided bool) {
	work, _, bottomless, ok := s.lowest(noGhosts, -1)
	switch {
	case !ok || work > 1e-9 && work < 1e-3:
		return "", false, false
	case bottomless:
		return solve.Down, false, true
	case work <= 1e-9:
		return solve.Held, false, true
	}
	_, _, bottomless, ok = s.lowest(allGhosts, -1)
	if !bottomless {
		return solve.Caught, false, ok
	}
	_, _, bottomless, ok = s.lowest(butKnots, -1)
	return solve.Jams, !bottomless, ok
}
