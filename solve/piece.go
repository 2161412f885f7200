package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// cut says what ends a piece of rope.
type cut int

const (
	fast   cut = iota // made fast: no rope passes
	open              // a loose or tended end: the piece carries nothing
	hauled            // people pull here
	grip              // a one-way grip: rope passes one way
	closed            // the two ends of a line closed on itself without a grip
)

// boundary is one end of a piece.
type boundary struct {
	cut cut
	// node is the index into Rope.Nodes; -1 when closed.
	node int
	// hauler pulls at a hauled end.
	hauler *model.Part
	// grip is the index into network.grips when cut is grip.
	grip int
}

// link is what runs between two neighbouring nodes that are left: a strand of
// the drawing, or a new strand where a node between is gone or rope is loose.
type link struct {
	// from and to are indices into Rope.Nodes.
	from, to int
	// strokes are the strokes it is made of.
	strokes []int
	stroke  model.Stroke
	// fresh says that it is no strand of the drawing: its length is that of the
	// straight way between its ends.
	fresh bool
	form  form
}

// piece is rope between two cuts. One tension runs all along it.
type piece struct {
	rope       *model.Rope
	links      []link
	start, end boundary
}

// fresh says whether a link of the piece is no strand of the drawing.
func (p *piece) fresh() bool {
	for _, k := range p.links {
		if k.fresh {
			return true
		}
	}
	return false
}

// form gives how fast the length of the piece grows, as drawn.
func (p *piece) form() form {
	var f form
	for _, k := range p.links {
		f = f.join(k.form)
	}
	return f
}

// opens says whether a loose end leaves the piece without tension.
func (p *piece) opens() bool { return p.start.cut == open || p.end.cut == open }

// endsAt says whether the run of rope that the piece is of ends at a role.
func (p *piece) endsAt(role model.Role) bool {
	r := p.rope
	if r.Loop {
		return false
	}
	first := p.links[0].from
	for first > 0 && r.Strokes[first-1] != model.Slack {
		first--
	}
	last := p.links[len(p.links)-1].to
	for last < len(r.Strokes) && r.Strokes[last] != model.Slack {
		last++
	}
	return r.Nodes[first].Role == role || r.Nodes[last].Role == role
}

// pulledBy counts the ends of the piece that a hauler pulls.
func (p *piece) pulledBy(hauler *model.Part) int {
	n := 0
	for _, b := range []boundary{p.start, p.end} {
		if b.cut == hauled && b.hauler == hauler {
			n++
		}
	}
	return n
}

// pull gives the pull of a hauler on the piece for each unit of tension at its
// start, where last is the tension at its end.
func (p *piece) pull(hauler *model.Part, last lp.Num) lp.Num {
	sum := lp.Num{}
	if p.start.cut == hauled && p.start.hauler == hauler {
		sum = sum.Add(lp.Int(1))
	}
	if p.end.cut == hauled && p.end.hauler == hauler {
		sum = sum.Add(last)
	}
	return sum
}

// gripGroup is a one-way grip, or several successive ones on one body that
// hold the same way and count as one.
type gripGroup struct {
	rope  *model.Rope
	nodes []int
	holds model.Side
	// before and after are indices into network.pieces, -1 if the rope ends there.
	before, after int
}

// held and other give the pieces on the held side and on the other side.
func (g *gripGroup) held() int {
	if g.holds == model.LastSide {
		return g.after
	}
	return g.before
}

func (g *gripGroup) other() int {
	if g.holds == model.LastSide {
		return g.before
	}
	return g.after
}

// releasable says whether every grip of the group can be opened under load.
func (g *gripGroup) releasable() bool {
	for _, node := range g.nodes {
		if !g.rope.Nodes[node].Part.Values.Releasable {
			return false
		}
	}
	return true
}

// where says what a stroke of the drawing belongs to.
type where struct {
	piece int // index into network.pieces, -1 for none
	link  int // index into the piece's links
	group int // index into network.grips if it lies inside a group, else -1
}

// network is the rig as the program sees it: bodies, pieces and grips.
type network struct {
	*layout
	// handsOff says that haulers hold nothing, but for the one that is tied off.
	handsOff bool
	tied     *model.Part
	// giving are the haulers who give rope: their ends are loose.
	giving []*model.Part
	pieces []*piece
	grips  []*gripGroup
	// strands says, for each rope, where each of its strokes belongs.
	strands map[*model.Rope][]where
}

// newNetwork cuts every rope of a layout into pieces. With handsOff the hauled
// ends are loose, and a hauler in mid line lets the rope run on.
func newNetwork(l *layout, handsOff bool) *network { return newNetworkTied(l, handsOff, nil) }

// newNetworkTied is newNetwork with the ends of one hauler made fast, hands off.
func newNetworkTied(l *layout, handsOff bool, tied *model.Part) *network {
	n := &network{layout: l, handsOff: handsOff, tied: tied}
	n.cut()
	return n
}

// newNetworkGiving is that of hauls in which some of the haulers give rope.
func newNetworkGiving(l *layout, giving []*model.Part) *network {
	n := &network{layout: l, giving: giving}
	n.cut()
	return n
}

func (n *network) cut() {
	n.strands = map[*model.Rope][]where{}
	for _, r := range n.rig.Ropes {
		strands := make([]where, len(r.Strokes))
		for i := range strands {
			strands[i] = where{piece: -1, group: -1}
		}
		n.strands[r] = strands
		if !r.Broken && !n.gone(r.Line) {
			n.cutRope(r)
		}
	}
}
