package solve

import "fairlead/lang/model"

// LostKind says how something is lost.
type LostKind string

// What can be lost. Losing a part takes it and its ties away: the strands beside
// it become one, a rope whose end came free holds nothing up to its next grip, and
// what hung on it moves free.
const (
	// LostNothing: all is there.
	LostNothing LostKind = ""
	// LostAnchor: the fixed point only; what is tied or clipped to the anchor stays
	// together as one body.
	LostAnchor LostKind = "anchor"
	// LostLeg: one leg of a focal point, which stays fixed while another holds it.
	LostLeg LostKind = "leg"
	// LostBend: a part over which rope bends.
	LostBend LostKind = "bend"
	// LostGrip: a hitch or clamp.
	LostGrip LostKind = "grip"
	// LostKnot: a knot comes undone.
	LostKnot LostKind = "knot"
	// LostPart: any other part, such as a carabiner that only joins others.
	LostPart LostKind = "part"
	// LostLine: a rope, cord or sling with a reeving line of its own.
	LostLine LostKind = "line"
	// LostHold: a bend that holds lets rope run both ways; it still bends it.
	LostHold LostKind = "hold"
	// LostClip: a part comes off what it is on, with all that hangs on it.
	LostClip LostKind = "clip"
	// LostTie: one end of a run of rope comes off the part that it is tied to.
	LostTie LostKind = "tie"
)

// Lost is one thing that is lost. The zero Lost is nothing.
type Lost struct {
	Kind LostKind
	// Part is what is lost; of a hold the bend, of a clip the part that comes off,
	// of a tie the part that the rope was tied to.
	Part *model.Part
	// Rope and Node, an index into Rope.Nodes, say which tie; Rope is nil otherwise.
	Rope *model.Rope
	Node int
}

// LostOf gives the loss of a part as such; of nil, nothing.
func LostOf(rig *model.Rig, p *model.Part) Lost {
	if p == nil {
		return Lost{}
	}
	return Lost{Kind: kindOfLoss(p, usesOf(rig)[p.Index]), Part: p}
}

func kindOfLoss(p *model.Part, use use) LostKind {
	switch {
	case p.Kind == model.Anchor:
		return LostAnchor
	case p.Kind == model.Leg:
		return LostLeg
	case p.Kind.IsGrip():
		return LostGrip
	case p.Kind == model.Knot:
		return LostKnot
	case p.IsReeved():
		return LostLine
	case use.bends:
		return LostBend
	}
	return LostPart
}

func isBend(n model.Node) bool { return n.Role == model.Bend || n.Role == model.Capture }

// holdsRope says whether a node is a bend that holds: a capture in mid rope, or one
// beside slack rope, which ends a run.
func holdsRope(r *model.Rope, node int) bool {
	n := r.Nodes[node]
	if n.Part == nil || n.Part.Kind.IsGrip() || n.Holds == model.NoSide {
		return false
	}
	return n.Role == model.Capture || n.Role == model.Tied && tautSide(r, node) != model.NoSide
}

// takes says whether a part is gone, with its ties.
func (l Lost) takes(p *model.Part) bool {
	if p != l.Part {
		return false
	}
	switch l.Kind {
	case LostNothing, LostAnchor, LostHold, LostClip, LostTie:
		return false
	}
	return true
}

// unclips says whether a part comes off what it was fixed or clipped to, and stays
// otherwise as it is.
func (l Lost) unclips(p *model.Part) bool {
	return p == l.Part && (l.Kind == LostClip || l.Kind == LostAnchor)
}

// unties says whether a rope comes off at a node where it was tied.
func (l Lost) unties(r *model.Rope, node int) bool {
	return l.Kind == LostTie && l.Rope == r && l.Node == node
}

// slips says whether a bend that held rope no longer does.
func (l Lost) slips(r *model.Rope, node int) bool {
	return l.Kind == LostHold && r.Nodes[node].Part == l.Part && holdsRope(r, node)
}

// everyLost lists what can be lost, in file order: of each part the part itself,
// its hold, and its clip; of each line the line and then its ties. Not in it are
// loads and people, whose footing is no part of the rig, focal points, which are
// lost with their legs, and what carries nothing because nothing touches it.
func everyLost(rig *model.Rig) []Lost {
	uses := usesOf(rig)
	var list []Lost
	for _, p := range rig.Parts {
		use := uses[p.Index]
		if use.carries && !p.Kind.IsWeight() && !p.Kind.IsPerson() && p.Kind != model.Focal {
			list = append(list, Lost{Kind: kindOfLoss(p, use), Part: p})
		}
		if use.holds {
			list = append(list, Lost{Kind: LostHold, Part: p})
		}
		if p.On != nil && !p.Kind.IsPerson() {
			list = append(list, Lost{Kind: LostClip, Part: p})
		}
		list = append(list, use.ties...)
	}
	return list
}

// use says what a part is there for.
type use struct {
	carries, bends, holds bool
	// ties are those of a line.
	ties []Lost
}

// usesOf gives the use of each part by its index.
func usesOf(rig *model.Rig) []use {
	uses := make([]use, len(rig.Parts))
	for _, p := range rig.Parts {
		if p.On != nil {
			uses[p.On.Index].carries = true
		}
		if p.Kind == model.Leg && p.Values.To != nil {
			uses[p.Index].carries = true
			if from := p.Values.From; from != nil {
				uses[from.Index].carries = true
			}
		}
	}
	for _, r := range rig.Ropes {
		if r.Broken || len(r.Strokes) == 0 {
			continue
		}
		line := &uses[r.Line.Index]
		line.carries = true
		for i, n := range r.Nodes {
			if n.Part == nil {
				continue
			}
			at := &uses[n.Part.Index]
			at.carries = true
			at.bends = at.bends || isBend(n)
			at.holds = at.holds || holdsRope(r, i)
			if n.Role == model.Tied && n.Part.Kind != model.Knot && !holdsRope(r, i) {
				line.ties = append(line.ties, Lost{Kind: LostTie, Part: n.Part, Rope: r, Node: i})
			}
		}
	}
	return uses
}
