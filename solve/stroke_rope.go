package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// RopeNeed is how much of one line a rig takes. Lengths are in metres.
type RopeNeed struct {
	Rope *model.Rope
	// Strands is the sum of its strands at the start, measured along the haul line;
	// nil if a strand's length is unknown. A "~" counts 0 unless both its ends have
	// positions, and so does a strand to people without one: they may stand where
	// the rope comes out.
	Strands *lp.Num
	// Missing are the parts whose positions Strands needs, as in Stroke.
	Missing []*model.Part
	// Against says that the positions at the ends of a strand contradict its stroke;
	// nothing is added up then.
	Against bool
	// TakenIn is the rope of this line that the hauler takes in over the raise, or
	// over one stroke where no raise is known; PaidOut is what its tender or its
	// loose end has to give meanwhile. Nil if neither is known.
	TakenIn, PaidOut *lp.Num
	// Needed is Strands + PaidOut. What is taken in was in the strands before: a rope
	// keeps its length, so this is also what lies in the strands at the end and what
	// hands have taken in until then.
	Needed *lp.Num
	// Length is that of the line as written, nil if it is not; Short says that it is
	// less than Needed.
	Length *lp.Num
	Short  bool
}

// RopeFor gives the rope that a haul needs for a height in metres, one entry for
// each line in file order; Result.Rope has it for the height that "raise" asks for.
func (r *Result) RopeFor(ph *Phase, height lp.Num) []RopeNeed {
	return r.system.ropeNeeds(ph, &height)
}

// ropeNeeds computes it over a height, nil for one stroke. Nil if no part of the rig
// has a position.
func (s *system) ropeNeeds(ph *Phase, height *lp.Num) []RopeNeed {
	if len(s.place) == 0 {
		return nil
	}
	raised, hauled, known := ph.over(height)
	list := make([]RopeNeed, len(s.rig.Ropes))
	for i, r := range s.rig.Ropes {
		need := &list[i]
		need.Rope = r
		if r.Broken {
			continue
		}
		need.addStrands(s)
		rate := s.paidOut(ph, r)
		if known {
			taken, paid := hauled.Mul(lp.Int(int64(ph.takes(r)))), rate.Mul(raised)
			need.TakenIn, need.PaidOut = &taken, &paid
		}
		if known || rate.Sign() == 0 {
			need.sum()
		}
	}
	return list
}

// over gives how far the load rises and how much rope is hauled for a height, or in
// one stroke.
func (p *Phase) over(height *lp.Num) (raised, hauled lp.Num, known bool) {
	switch {
	case p == nil || !p.Stroke.Known():
		return raised, hauled, false
	case height != nil:
		raise := p.Stroke.For(*height)
		return raise.Reached, raise.Hauled, true
	case p.Stroke.Rise != nil:
		return *p.Stroke.Rise, *p.Stroke.Hauled, true
	}
	return raised, hauled, false
}

// takes counts the ends of a line that the hauler takes in.
func (p *Phase) takes(r *model.Rope) int {
	ends := 0
	for _, piece := range p.program.pieces {
		if piece.rope == r {
			ends += piece.pulledBy(p.Hauler)
		}
	}
	return ends
}

// paidOut is the rope that a tender or a loose end has to give for each metre that
// the load rises: what the strands of a line with such an end grow by. People stand
// still; what hangs at a loose end is no strand.
func (s *system) paidOut(ph *Phase, r *model.Rope) lp.Num {
	if ph == nil || ph.Stroke == nil {
		return lp.Num{}
	}
	var growth lp.Num
	gives := false
	for _, piece := range ph.program.pieces {
		if piece.rope != r {
			continue
		}
		gives = gives || piece.opens()
		for _, k := range piece.links {
			if k.fresh || r.Nodes[k.from].Part == nil || r.Nodes[k.to].Part == nil {
				continue
			}
			for _, t := range k.form {
				growth = growth.Add(t.factor.Mul(ph.Motion[t.body].Rise))
			}
		}
	}
	if !gives || ph.takes(r) > 0 {
		return lp.Num{}
	}
	return lp.Max(lp.Num{}, growth.Mul(ph.Stroke.Travel))
}

// addStrands adds up the strands at the start.
func (n *RopeNeed) addStrands(s *system) {
	var sum lp.Num
	lacks := map[*model.Part]bool{}
	for i, stroke := range n.Rope.Strokes {
		length, known := s.place.strand(n.Rope, i)
		if known {
			sum = sum.Add(length)
			n.Against = n.Against || length.Sign() < 0
			continue
		}
		ends := []model.Node{n.Rope.Nodes[i], n.Rope.Nodes[n.Rope.After(i)]}
		if stroke == model.Slack || s.unplaced(ends[0]) || s.unplaced(ends[1]) {
			continue
		}
		for _, end := range ends {
			if _, placed := s.place.of(end.Part); !placed {
				lacks[end.Part.Root()] = true
			}
		}
	}
	for _, p := range s.rig.Parts {
		if lacks[p] {
			n.Missing = append(n.Missing, p)
		}
	}
	if len(n.Missing) == 0 && !n.Against {
		n.Strands = &sum
	}
}

// unplaced says whether a node is a loose end, or people of whom no position is known.
func (s *system) unplaced(n model.Node) bool {
	if n.Part == nil {
		return true
	}
	_, placed := s.place.of(n.Part)
	return !placed && (n.Role == model.Hauled || n.Role == model.Tended)
}

// sum compares what is needed with the line's length.
func (n *RopeNeed) sum() {
	if v := n.Rope.Line.Values.Length; v != nil {
		length := lp.FromRat(v.Middle())
		n.Length = &length
	}
	if n.Strands == nil {
		return
	}
	needed := *n.Strands
	if n.PaidOut != nil {
		needed = needed.Add(*n.PaidOut)
	}
	n.Needed = &needed
	n.Short = n.Length != nil && n.Length.Cmp(needed) < 0
}
