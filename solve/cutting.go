package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// stop is a place where a rope still touches something: one node, or several
// successive grips that count as one.
type stop struct {
	nodes []int
	// cuts says that a piece ends here; cut says how.
	cuts bool
	cut  cut
	// side is the held side of a grip.
	side model.Side
}

func (s stop) first() int { return s.nodes[0] }
func (s stop) last() int  { return s.nodes[len(s.nodes)-1] }

// cutRope makes the pieces and grips of one rope.
func (n *network) cutRope(r *model.Rope) {
	stops := n.stops(r)
	if len(stops) == 0 {
		return
	}
	links := n.links(r, stops)
	if r.Loop {
		stops, links = unrolled(stops, links)
	}
	stops, links = n.grouped(r, stops, links)
	n.cutAt(r, stops, links)
}

// cutAt closes a piece at every stop that cuts.
func (n *network) cutAt(r *model.Rope, stops []stop, links []link) {
	groups := n.addGroups(r, stops)
	current := &piece{rope: r, start: n.boundary(r, stops[0], groups[0])}
	for i, k := range links {
		current.links = append(current.links, k)
		next := stops[i+1]
		if !next.cuts && i+1 < len(links) {
			continue
		}
		current.end = n.boundary(r, next, groups[i+1])
		n.addPiece(current)
		current = &piece{rope: r, start: n.boundary(r, next, groups[i+1])}
	}
}

// addPiece notes a finished piece at its strokes and at its grips.
func (n *network) addPiece(p *piece) {
	index := len(n.pieces)
	n.pieces = append(n.pieces, p)
	for i, k := range p.links {
		for _, stroke := range k.strokes {
			n.strands[p.rope][stroke].piece, n.strands[p.rope][stroke].link = index, i
		}
	}
	if p.start.cut == grip {
		n.grips[p.start.grip].after = index
	}
	if p.end.cut == grip {
		n.grips[p.end.grip].before = index
	}
}

// addGroups makes a grip group of each gripping stop and gives the group of
// every stop, -1 for none. A closed line ends at the stop where it starts.
func (n *network) addGroups(r *model.Rope, stops []stop) []int {
	groups := make([]int, len(stops))
	for i, s := range stops {
		groups[i] = -1
		if !s.cuts || s.cut != grip {
			continue
		}
		if i > 0 && i == len(stops)-1 && s.first() == stops[0].first() {
			groups[i] = groups[0]
			continue
		}
		groups[i] = len(n.grips)
		n.grips = append(n.grips, &gripGroup{rope: r, nodes: s.nodes, holds: s.side, before: -1, after: -1})
		for _, node := range s.nodes[:len(s.nodes)-1] {
			n.strands[r][node].group = groups[i]
		}
	}
	return groups
}

func (n *network) boundary(r *model.Rope, s stop, group int) boundary {
	if !s.cuts {
		return boundary{cut: closed, node: -1}
	}
	return boundary{cut: s.cut, node: s.first(), hauler: r.Nodes[s.first()].Part, grip: group}
}

// stops lists what a rope still touches. The two ends of a line always stop it:
// an end that came free is an open one.
func (n *network) stops(r *model.Rope) []stop {
	var stops []stop
	for i := range r.Nodes {
		atEnd := !r.Loop && (i == 0 || i == len(r.Nodes)-1)
		s, there := n.stop(r, i)
		if !there && atEnd {
			s, there = stop{cuts: true, cut: open}, true
		}
		if there {
			s.nodes = []int{i}
			stops = append(stops, s)
		}
	}
	return stops
}

// stop says what one node does now; there is false if the rope passes it by.
func (n *network) stop(r *model.Rope, i int) (s stop, there bool) {
	node := r.Nodes[i]
	if node.Part != nil && n.gone(node.Part) || n.lost.unties(r, i) {
		return s, false
	}
	if n.lost.slips(r, i) {
		return s, true
	}
	switch node.Role {
	case model.Bend:
		return s, true
	case model.Capture, model.Grip:
		return stop{cuts: true, cut: grip, side: node.Holds}, true
	case model.Hauled:
		if n.handsOff && node.Part != n.tied {
			return s, false
		}
		if slices.Contains(n.giving, node.Part) {
			return stop{cuts: true, cut: open}, true
		}
		return stop{cuts: true, cut: hauled}, true
	case model.Tended, model.Loose:
		return stop{cuts: true, cut: open}, true
	}
	if side := tautSide(r, i); node.Holds != model.NoSide && side != model.NoSide {
		return stop{cuts: true, cut: grip, side: side}, true
	}
	return stop{cuts: true, cut: fast}, true
}

// tautSide gives the side of a node in mid line that is not slack: a grip
// beside slack rope holds that side.
func tautSide(r *model.Rope, i int) model.Side {
	in, out := r.Before(i), i
	if in < 0 || out >= len(r.Strokes) {
		return model.NoSide
	}
	switch {
	case r.Strokes[out] == model.Slack && r.Strokes[in] != model.Slack:
		return model.FirstSide
	case r.Strokes[in] == model.Slack && r.Strokes[out] != model.Slack:
		return model.LastSide
	}
	return model.NoSide
}

// unrolled turns a closed line into one that starts and ends at the same stop,
// one that cuts if there is any.
func unrolled(stops []stop, links []link) ([]stop, []link) {
	start := 0
	for i, s := range stops {
		if s.cuts {
			start = i
			break
		}
	}
	turnedStops := append(append([]stop{}, stops[start:]...), stops[:start+1]...)
	return turnedStops, append(append([]link{}, links[start:]...), links[:start]...)
}

// grouped joins successive grips of one body that hold the same way into one
// stop; the strands between them are in no piece.
func (n *network) grouped(r *model.Rope, stops []stop, links []link) ([]stop, []link) {
	outStops, outLinks := append(make([]stop, 0, len(stops)), stops[0]), make([]link, 0, len(links))
	for i, k := range links {
		last, next := &outStops[len(outStops)-1], stops[i+1]
		closing := r.Loop && i == len(links)-1
		if !closing && !k.fresh && n.sameGrip(r, *last, next) {
			last.nodes = append(append([]int{}, last.nodes...), next.nodes...)
			continue
		}
		outStops = append(outStops, next)
		outLinks = append(outLinks, k)
	}
	return outStops, outLinks
}

func (n *network) sameGrip(r *model.Rope, a, b stop) bool {
	return a.cuts && b.cuts && a.cut == grip && b.cut == grip && a.side == b.side &&
		n.of(r.Nodes[a.last()].Part) == n.of(r.Nodes[b.first()].Part)
}

// links gives what runs between neighbouring stops.
func (n *network) links(r *model.Rope, stops []stop) []link {
	count := len(stops) - 1
	if r.Loop {
		count = len(stops)
	}
	links := make([]link, count)
	for i := range links {
		links[i] = n.link(r, stops[i].last(), stops[(i+1)%len(stops)].first())
	}
	return links
}

// link joins the strands from one node to a later one. Where a bend that turned
// the rope is gone, or rope is loose, the strand is new; past a node that the
// rope ran straight through it stays an ordinary one.
func (n *network) link(r *model.Rope, from, to int) link {
	k := link{from: from, to: to, stroke: r.Strokes[from]}
	for i := from; ; i = r.After(i) {
		k.strokes = append(k.strokes, i)
		if r.Strokes[i] != k.stroke || r.Strokes[i] == model.Slack {
			k.fresh = true
		}
		if r.After(i) == to {
			break
		}
	}
	if k.fresh {
		k.form = k.form.plus(n.of(r.Nodes[to].Part), lp.Int(1)).plus(n.of(r.Nodes[from].Part), lp.Int(-1))
		return k
	}
	sign := lp.Int(int64(k.stroke))
	k.form = n.nodeTerm(n.nodeTerm(nil, r, from, sign.Neg()), r, to, sign)
	return k
}
