package count

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// counter walks a solved phase.
type counter struct {
	res   *solve.Result
	ph    *solve.Phase
	count *Count
	// scale turns fractions of the reference weight into the count's unit.
	scale  lp.Num
	pieces []solve.Piece
	grips  []solve.Grip
	known  []bool
	// pieceAt has the piece of each stroke.
	pieceAt map[strand]int
	// at has the pieces that touch each body; pending the bodies to look at.
	at      map[*solve.Body][]int
	pending []*solve.Body
	reached bool // a Sum has ended at the reference load
}

// strand names a stroke of a rope.
type strand struct {
	rope   *model.Rope
	stroke int
}

func newCounter(res *solve.Result, ph *solve.Phase) *counter {
	c := &counter{res: res, ph: ph, scale: lp.Int(1), pieces: ph.Pieces(), grips: ph.Grips(),
		count: &Count{Phase: ph, Unit: OfLoad}, at: map[*solve.Body][]int{}, pieceAt: map[strand]int{}}
	if !othersWeigh(res) {
		c.count.Unit = OfPull
		c.scale = c.pull().Inv()
	}
	c.known = make([]bool, len(c.pieces))
	for i, p := range c.pieces {
		c.known[i] = p.Tension.Sign() == 0
		for _, s := range p.Strokes {
			c.pieceAt[strand{p.Rope, s}] = i
		}
		for _, t := range p.Touches {
			if t.Body != nil && (len(c.at[t.Body]) == 0 || c.at[t.Body][len(c.at[t.Body])-1] != i) {
				c.at[t.Body] = append(c.at[t.Body], i)
			}
		}
	}
	return c
}

// pull adds up the tensions that the hauler holds. They stay exact where the pull
// in weights is not, as on a slope.
func (c *counter) pull() lp.Num {
	sum := lp.Num{}
	for _, p := range c.pieces {
		sum = sum.Add(lp.Int(int64(p.Pulled)).Mul(p.Tension))
	}
	return sum
}

// start walks from every hauled end and then from sum to sum.
func (c *counter) start() {
	for i, p := range c.pieces {
		if p.Pulled == 0 || p.Tension.Sign() == 0 {
			continue
		}
		end := p.Touches[len(p.Touches)-1]
		fromEnd := end.Part == c.ph.Hauler
		stroke := p.Strokes[0]
		if fromEnd {
			stroke = p.Strokes[len(p.Strokes)-1]
		}
		c.known[i] = true
		c.add(Step{Kind: Pull, Part: c.ph.Hauler, Value: c.tension(i), Line: c.fragment(p.Rope, []int{stroke})})
		c.walk(i, fromEnd)
	}
	for len(c.pending) > 0 {
		body := c.pending[0]
		c.pending = c.pending[1:]
		c.sum(body)
	}
}

func (c *counter) tension(piece int) lp.Num { return c.pieces[piece].Tension.Mul(c.scale) }

func (c *counter) add(s Step) { c.count.Steps = append(c.count.Steps, s) }

// walk follows a piece whose tension is known from one end to the other.
func (c *counter) walk(piece int, fromEnd bool) {
	p := c.pieces[piece]
	n := len(p.Touches)
	for step := 1; step < n; step++ {
		i := step
		if fromEnd {
			i = n - 1 - step
		}
		if t := p.Touches[i]; step < n-1 {
			c.bend(piece, i, t)
		}
	}
	for _, t := range p.Touches {
		c.look(t.Body)
	}
	c.arrive(piece, fromEnd)
}

// look puts a body on the list of those to sum up.
func (c *counter) look(body *solve.Body) {
	if body != nil {
		c.pending = append(c.pending, body)
	}
}

// bend is the step of a bend in the middle of a piece.
func (c *counter) bend(piece, i int, t solve.Touch) {
	p := c.pieces[piece]
	s := Step{Kind: FixedBend, Part: t.Part, Value: c.tension(piece),
		Line: c.fragment(p.Rope, []int{p.Strokes[i-1], p.Strokes[i]})}
	if t.Body != nil {
		s.Kind, s.Body, s.Force = MovingBend, t.Body, t.Factor.Mul(c.tension(piece)).Abs()
	}
	c.add(s)
}

// arrive is the far end of a piece: a grip that holds nothing passes the rope on
// with the same tension, a tie ends it, and what a grip holds is summed up later.
func (c *counter) arrive(piece int, fromEnd bool) {
	p := c.pieces[piece]
	end, group, stroke := p.Touches[len(p.Touches)-1], p.EndGrip, p.Strokes[len(p.Strokes)-1]
	if fromEnd {
		end, group, stroke = p.Touches[0], p.StartGrip, p.Strokes[0]
	}
	if group < 0 {
		if end.Part != nil && end.Part != c.ph.Hauler && end.Part.Root() != c.res.Reference.Root() {
			c.add(Step{Kind: Ends, Part: end.Part, Body: end.Body, Value: c.tension(piece),
				Line: c.fragment(p.Rope, []int{stroke})})
		}
		return
	}
	g := c.grips[group]
	next, nextFromEnd := g.Before, true
	if !fromEnd {
		next, nextFromEnd = g.After, false
	}
	if g.Force.Sign() != 0 || next < 0 || c.known[next] {
		return
	}
	c.known[next] = true
	c.add(c.pass(g, piece))
	c.walk(next, nextFromEnd)
}

// pass is the step over a grip that holds nothing.
func (c *counter) pass(g solve.Grip, piece int) Step {
	node := g.Nodes[0]
	part := g.Rope.Nodes[node].Part
	s := Step{Kind: Passes, Part: part, Body: g.Body, Value: c.tension(piece)}
	if in := g.Rope.Before(node); in >= 0 && node < len(g.Rope.Strokes) {
		s.Line = c.fragment(g.Rope, []int{in, g.Nodes[len(g.Nodes)-1]})
	}
	if g.Rope.Nodes[node].Role != model.Capture {
		return s
	}
	s.Kind = FixedBend
	if g.Body != nil {
		before, after := c.pieces[g.Before].Touches, c.pieces[g.After].Touches
		factor := before[len(before)-1].Factor.Add(after[0].Factor)
		s.Kind, s.Force = MovingBend, s.Value.Mul(factor).Abs()
	}
	return s
}

// fragment is a piece of reeving line with what is known by now.
func (c *counter) fragment(r *model.Rope, strokes []int) Fragment {
	f := Fragment{Rope: r, Strokes: strokes, Known: make([]*lp.Num, len(strokes))}
	for k, s := range strokes {
		if piece, carries := c.pieceAt[strand{r, s}]; carries && c.known[piece] {
			value := c.tension(piece)
			f.Known[k] = &value
		}
	}
	return f
}
