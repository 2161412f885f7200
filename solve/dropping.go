package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// dropping is a drop being worked out.
type dropping struct {
	*stayProgram
	place positions
	drop  *Drop
	// loose says that some piece is left out, or longer than it may be.
	loose bool
}

// drop minimises Σ W·x over the displacements x of the bodies, the straight
// distances along each piece of rope being no longer than its rope and what its
// grips let pass. It is solved as the program of the forces: a column for the
// tension of each piece, which costs its length, and two for each link, which are
// worth its distance as drawn; the multipliers are the displacements. Parts have met
// when what is between them is their own lengths: no link is shorter than those.
func (n *network) drop(weight []lp.Num, place positions) *Drop {
	if len(place) == 0 {
		return &Drop{Missing: []Missing{{Gap: NoPosition}}}
	}
	d := &dropping{drop: &Drop{}, place: place}
	d.stayProgram = &stayProgram{program: &program{network: n, lp: &lp.Program{}}}
	d.lp.RHS = append(append(d.lp.RHS, weight...), make([]lp.Num, len(n.grips))...)
	for i, piece := range n.pieces {
		if !piece.opens() {
			d.addLong(i, piece)
		}
	}
	for i, g := range n.grips {
		d.addGrip(i, g)
	}
	if solved := d.solve(); solved.Status == lp.Optimal {
		d.read(solved, weight)
	}
	d.drop.AtMost = d.loose && d.drop.known
	return d.drop
}

// read takes the displacements of the loads from a solution: the lowest place of
// each, where they leave one another room.
func (d *dropping) read(solved *lp.Solution, weight []lp.Num) {
	for i, b := range d.bodies {
		if weight[i].Sign() <= 0 || len(b.Loads) == 0 {
			continue
		}
		lowest, _, limited, _ := solved.MultiplierRange(i)
		if !limited { // only rope that was left out settles how far which load goes
			d.drop.Loads = nil
			return
		}
		if lowest.Sign() >= 0 {
			continue
		}
		for _, load := range b.Loads {
			d.drop.Loads = append(d.drop.Loads, LoadDrop{Load: load, Metres: lowest.Neg()})
		}
	}
	d.drop.known = true
	slices.SortFunc(d.drop.Loads, func(a, b LoadDrop) int { return a.Load.Index - b.Load.Index })
}

// addLong adds a piece with its length; one of unknown length is left out.
func (d *dropping) addLong(index int, p *piece) {
	sum, known := lp.Num{}, true
	apart := make([]lp.Num, len(p.links))
	for i, k := range p.links {
		rope, ok := d.rope(p.rope, k)
		far, too := d.apart(p.rope, k)
		if ok && too && far.Abs().Cmp(rope) > 0 {
			d.miss(TooShort, p.rope.Line)
			ok = false
		}
		apart[i], sum, known = far, sum.Add(rope), known && ok && too
	}
	if !known {
		d.loose = true
		return
	}
	column := d.lp.Add(sum.Neg(), d.gripEntries(p, lp.Int(1))...)
	for i, k := range p.links {
		with, against := d.addDistance(index, column, k)
		d.lp.Columns[with].Cost, d.lp.Columns[against].Cost = apart[i], apart[i].Neg()
		if met := d.met(p.rope, k, apart[i]); met.Sign() > 0 {
			row := d.lp.Columns[with].Entries[len(d.lp.Columns[with].Entries)-1]
			d.lp.Add(met, row)
		}
	}
}

// met gives how far apart the ends of a link are once the parts there have met; they may
// have met already.
func (d *dropping) met(r *model.Rope, k link, apart lp.Num) lp.Num {
	sum := lp.Num{}
	for _, node := range []int{k.from, k.to} {
		if part := r.Nodes[node].Part; part != nil {
			sum = sum.Add(lengthOf(part))
		}
	}
	if now := apart.Abs(); now.Cmp(sum) < 0 {
		return now
	}
	return sum
}

// apart gives the distance of the ends of a link at the start: up positive of a new
// strand, along its stroke of one as drawn.
func (d *dropping) apart(r *model.Rope, k link) (metres lp.Num, known bool) {
	if !k.fresh {
		return d.rope(r, k)
	}
	from, known := d.at(r, k.from)
	to, alsoKnown := d.at(r, k.to)
	return to.Sub(from), known && alsoKnown
}

// rope gives the rope in a link: its strands as drawn, and where it has slack, all
// that the line's other strands leave of its length. Of slack in several places, or
// where more rope may lie beyond an end that is not tied, that is the most it can be.
func (d *dropping) rope(r *model.Rope, k link) (metres lp.Num, known bool) {
	slack := slices.ContainsFunc(k.strokes, func(stroke int) bool { return r.Strokes[stroke] == model.Slack })
	if !slack {
		sum, known := lp.Num{}, true
		for _, stroke := range k.strokes {
			long, ok := d.strand(r, stroke)
			sum, known = sum.Add(long), known && ok
		}
		return sum, known
	}
	if r.Line.Values.Length == nil {
		d.miss(NoLength, r.Line)
		return lp.Num{}, false
	}
	left := lp.FromRat(r.Line.Values.Length.High)
	for stroke, s := range r.Strokes {
		if slices.Contains(k.strokes, stroke) {
			continue
		}
		if s == model.Slack {
			d.loose = true
			continue
		}
		long, ok := d.strand(r, stroke)
		left, d.loose = left.Sub(long), d.loose || !ok
	}
	if !r.Loop && (runsOut(r.Nodes[0]) || runsOut(r.Nodes[len(r.Nodes)-1])) {
		d.loose = true
	}
	return left, true
}

// runsOut says whether more rope may lie beyond a node that ends a line.
func runsOut(n model.Node) bool {
	return n.Role == model.Hauled || n.Role == model.Tended || n.Role == model.Loose || n.Role == model.Stopper
}

// strand gives the length of a strand as drawn.
func (d *dropping) strand(r *model.Rope, stroke int) (metres lp.Num, known bool) {
	_, known = d.at(r, stroke)
	_, alsoKnown := d.at(r, r.After(stroke))
	metres, _ = d.place.strand(r, stroke)
	if metres.Sign() < 0 {
		d.miss(Against, r.Line)
		return lp.Num{}, false
	}
	return metres, known && alsoKnown
}

// at gives where a node is.
func (d *dropping) at(r *model.Rope, node int) (metres lp.Num, known bool) {
	part := r.Nodes[node].Part
	metres, known = d.place.of(part)
	if !known && part != nil {
		d.miss(NoPosition, part)
	}
	return metres, known
}

func (d *dropping) miss(gap Gap, part *model.Part) {
	if m := (Missing{gap, part}); !slices.Contains(d.drop.Missing, m) {
		d.drop.Missing = append(d.drop.Missing, m)
	}
}
