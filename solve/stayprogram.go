package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// reading says how the strands of a piece count in a program of forces.
type reading int

const (
	asDrawn     reading = iota // pieces with a new strand are slack: left out
	pulledTight                // new strands count with the distance of their ends
	knotsMeet                  // so do strands between a knot and a bend: it stops there
	partsMeet                  // every strand does: parts that meet push
)

// spans says whether a link of a rope counts with the distance of its ends.
func (how reading) spans(r *model.Rope, k link) bool {
	switch how {
	case asDrawn:
		return false
	case partsMeet:
		return true
	}
	return k.fresh || how == knotsMeet && drawsUp(r.Nodes[k.from], r.Nodes[k.to])
}

// drawsUp says whether one of two neighbouring nodes is a knot that cannot pass the
// other, a bend.
func drawsUp(a, b model.Node) bool {
	isKnot := func(n model.Node) bool { return n.Part != nil && n.Part.Kind == model.Knot }
	return isKnot(a) && isBend(b) || isBend(a) && isKnot(b)
}

// stayProgram asks for forces in balance with the weights. A strand that counts
// with the distance of its ends may pull either way up to the tension of its
// piece: it has two columns that add up to that tension.
type stayProgram struct {
	*program
	distances []distance
}

// distance is a strand that counts with the distance of its ends.
type distance struct {
	piece int
	link  link
	// with and against are the columns that act as the strand is drawn, and the
	// other way.
	with, against int
}

func newStayProgram(n *network, weight []lp.Num, how reading) *stayProgram {
	s := &stayProgram{program: &program{network: n, lp: &lp.Program{}}}
	s.lp.RHS = append(append(s.lp.RHS, weight...), make([]lp.Num, len(n.grips))...)
	for i, p := range n.pieces {
		column := -1
		if !p.opens() && (how != asDrawn || !p.fresh()) {
			column = s.addPiece(i, p, how)
		}
		s.column = append(s.column, column)
	}
	for i, g := range n.grips {
		s.grip = append(s.grip, s.addGrip(i, g))
	}
	return s
}

func (s *stayProgram) solve() *lp.Solution { return lp.Solve(s.lp) }

// strandForces gives the tensions of a solution.
func (s *stayProgram) strandForces(x []lp.Num) strandForces {
	return s.network.strandForces(func(piece int) lp.Num {
		if s.column[piece] < 0 {
			return lp.Num{}
		}
		return x[s.column[piece]]
	})
}

// addPiece adds the column of a piece and those of its distances.
func (s *stayProgram) addPiece(index int, p *piece, how reading) int {
	var drawn form
	var free []link
	for _, k := range p.links {
		if how.spans(p.rope, k) {
			free = append(free, k)
			continue
		}
		drawn = drawn.join(k.form)
	}
	column := s.lp.Add(lp.Num{}, append(s.balance(drawn), s.gripEntries(p, lp.Int(1))...)...)
	for _, k := range merged(free) {
		if len(k.form) > 0 {
			s.addDistance(index, column, k)
		}
	}
	return column
}

// addDistance adds the two columns of a strand that counts with the distance of its
// ends, and the row in which they add up to the tension in a column.
func (s *stayProgram) addDistance(piece, column int, k link) (with, against int) {
	row := s.lp.Row(lp.Num{})
	s.lp.Columns[column].Entries = append(s.lp.Columns[column].Entries, lp.Entry{Row: row, Value: lp.Int(-1)})
	entries := s.balance(k.form)
	opposite := make([]lp.Entry, len(entries))
	for i, e := range entries {
		opposite[i] = lp.Entry{Row: e.Row, Value: e.Value.Neg()}
	}
	one := lp.Entry{Row: row, Value: lp.Int(1)}
	with = s.lp.Add(lp.Num{}, append(entries, one)...)
	against = s.lp.Add(lp.Num{}, append(opposite, one)...)
	s.distances = append(s.distances, distance{piece, k, with, against})
	return with, against
}

// merged joins the strands of one piece that grow alike or the opposite way: they
// run between the same two bodies, and their distances add up.
func merged(links []link) []link {
	var list []link
	for _, k := range links {
		found := false
		for i := range list {
			if n, same := multiple(list[i].form, k.form); same {
				list[i].form = scaled(k.form, n.Add(lp.Int(1)))
				found = true
				break
			}
		}
		if !found {
			list = append(list, k)
		}
	}
	return list
}

// multiple says whether f is n times g or -g, n positive.
func multiple(f, g form) (n lp.Num, same bool) {
	if len(f) != len(g) || len(f) == 0 {
		return n, false
	}
	for i, t := range f {
		j := slices.IndexFunc(g, func(u term) bool { return u.body == t.body })
		if j < 0 {
			return n, false
		}
		ratio := t.factor.Quo(g[j].factor)
		if i == 0 {
			n = ratio
		}
		if ratio.Cmp(n) != 0 {
			return n, false
		}
	}
	return n.Abs(), true
}

func scaled(f form, factor lp.Num) form {
	g := make(form, len(f))
	for i, t := range f {
		g[i] = term{t.body, t.factor.Mul(factor)}
	}
	return g
}

// catching lists the slack strokes in the pieces that carry something.
func (s *stayProgram) catching(x []lp.Num) []Strand {
	var list []Strand
	for i, p := range s.pieces {
		if s.column[i] < 0 || x[s.column[i]].Sign() <= 0 {
			continue
		}
		for _, k := range p.links {
			if k.fresh {
				list = append(list, Strand{Rope: p.rope, Index: k.strokes[0]})
			}
		}
	}
	return list
}

// meeting lists the pairs of parts between which a strand pushes, or pulls less
// than its rope's tension: the parts at its ends have met.
func (s *stayProgram) meeting(x []lp.Num) [][2]*model.Part {
	var list [][2]*model.Part
	for _, d := range s.distances {
		if x[d.against].Sign() <= 0 {
			continue
		}
		nodes := s.pieces[d.piece].rope.Nodes
		pair := [2]*model.Part{nodes[d.link.from].Part, nodes[d.link.to].Part}
		if !slices.Contains(list, pair) && !slices.Contains(list, [2]*model.Part{pair[1], pair[0]}) {
			list = append(list, pair)
		}
	}
	return list
}
