package count

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// sum adds up what meets at a body if only one rope that it pulls is still
// unknown, and walks on along that rope.
func (c *counter) sum(body *solve.Body) {
	unknown := -1
	for _, i := range c.at[body] {
		if c.known[i] || c.factor(body, i).Sign() == 0 {
			continue
		}
		if unknown >= 0 {
			return
		}
		unknown = i
	}
	if unknown < 0 || c.isReference(body) && c.count.Unit == OfPull {
		return
	}
	p := c.pieces[unknown]
	items := c.items(body)
	c.known[unknown] = true
	s := Step{Kind: Sum, Body: body, Items: items, Value: c.tension(unknown)}
	fromEnd := p.Touches[len(p.Touches)-1].Body == body
	stroke, far := p.Strokes[0], p.Touches[len(p.Touches)-1]
	if fromEnd {
		stroke, far = p.Strokes[len(p.Strokes)-1], p.Touches[0]
	}
	s.Line = c.fragment(p.Rope, c.beside(p.Rope, stroke, fromEnd))
	s.Reaches = len(p.Touches) == 2 && far.Body != nil && c.isReference(far.Body) && len(c.taut(far.Body)) == 1
	c.reached = c.reached || s.Reaches
	c.add(s)
	c.walk(unknown, fromEnd)
}

// taut lists the pieces at a body that carry something.
func (c *counter) taut(body *solve.Body) []int {
	var list []int
	for _, i := range c.at[body] {
		if c.pieces[i].Tension.Sign() != 0 {
			list = append(list, i)
		}
	}
	return list
}

// beside gives a stroke and its neighbour on the body's side, so that the figure
// on both sides of a grip is seen.
func (c *counter) beside(r *model.Rope, stroke int, fromEnd bool) []int {
	switch {
	case fromEnd && stroke+1 < len(r.Strokes) && r.Strokes[stroke+1] != model.Slack:
		return []int{stroke, stroke + 1}
	case !fromEnd && stroke > 0 && r.Strokes[stroke-1] != model.Slack:
		return []int{stroke - 1, stroke}
	}
	return []int{stroke}
}

// factor is the upward force on a body for each unit of a piece's tension.
func (c *counter) factor(body *solve.Body, piece int) lp.Num {
	sum := lp.Num{}
	for _, t := range c.pieces[piece].Touches {
		if t.Body == body {
			sum = sum.Add(t.Factor)
		}
	}
	return sum
}

// items lists the known forces on a body, part by part in the order of its
// pieces, and its weight if the count is in weights.
func (c *counter) items(body *solve.Body) []Item {
	var items []Item
	add := func(part *model.Part, value lp.Num) {
		for i := range items {
			if items[i].Part == part {
				items[i].Value = items[i].Value.Add(value)
				return
			}
		}
		items = append(items, Item{Part: part, Value: value})
	}
	for _, i := range c.at[body] {
		if !c.known[i] {
			continue
		}
		for _, t := range c.pieces[i].Touches {
			if t.Body == body && t.Factor.Sign() != 0 && c.tension(i).Sign() != 0 {
				add(t.Part, t.Factor.Mul(c.tension(i)))
			}
		}
	}
	// A part between two strands of one tension, such as a hitch that slides, adds
	// nothing to its body.
	items = slices.DeleteFunc(items, func(i Item) bool { return i.Value.IsZero() })
	if c.count.Unit == OfLoad {
		for _, p := range body.Parts {
			if w := c.res.WeightOf(p, true); w.Sign() != 0 {
				items = append(items, Item{Part: p, Value: w.Neg(), Weight: true})
			}
		}
	}
	return items
}

func (c *counter) isReference(body *solve.Body) bool {
	return body.Parts[0].Root() == c.res.Reference.Root()
}

// finish writes equations for what could not be had step by step, then the total
// at the load and the checks.
func (c *counter) finish() {
	if s, needed := c.equations(); needed {
		c.add(s)
	}
	if !c.reached {
		c.total()
	}
	force := c.force()
	c.count.Force, c.count.Travel = &force, c.ph.Ideal
	for _, l := range c.ph.Parts {
		if l.Part.Root() == l.Part && l.Part.Kind.IsFixed() && l.Known() && l.Most().Sign() > 0 {
			c.count.Fixed = append(c.count.Fixed, FixedLoad{Part: l.Part, Load: c.scaled(l.Force), AtMost: l.AtMost})
		}
	}
	for _, s := range c.ph.Strands {
		c.count.Open = c.count.Open || s.Ranges()
	}
}

// force is what all ropes together give the reference load, in pulls.
func (c *counter) force() lp.Num {
	if c.count.Unit == OfLoad {
		return c.ph.Pull.Inv()
	}
	sum := lp.Num{}
	for body := range c.at {
		if c.isReference(body) {
			for _, i := range c.taut(body) {
				sum = sum.Add(c.factor(body, i).Mul(c.tension(i)))
			}
		}
	}
	return sum
}

func (c *counter) scaled(f solve.Force) solve.Force {
	scale := func(n *lp.Num) *lp.Num {
		if n == nil {
			return nil
		}
		m := n.Mul(c.scale)
		return &m
	}
	return solve.Force{Value: scale(f.Value), Low: scale(f.Low), High: scale(f.High)}
}

// total adds up what meets at the reference load.
func (c *counter) total() {
	for body := range c.at {
		pulling := c.taut(body)
		if !c.isReference(body) || len(pulling) == 0 {
			continue
		}
		s := Step{Kind: Total, Body: body}
		for _, item := range c.items(body) {
			if !item.Weight {
				s.Items = append(s.Items, item)
				s.Value = s.Value.Add(item.Value)
			}
		}
		p := c.pieces[pulling[0]]
		end := p.Strokes[:1]
		if p.Touches[0].Body != body {
			end = p.Strokes[len(p.Strokes)-1:]
		}
		s.Line = c.fragment(p.Rope, end)
		c.add(s)
	}
}

// equations writes the balance of every body that a still unknown rope pulls.
func (c *counter) equations() (s Step, needed bool) {
	s.Kind = Equations
	number := map[int]int{}
	for i := range c.pieces {
		if c.known[i] {
			continue
		}
		number[i] = len(s.Unknowns)
		s.Unknowns = append(s.Unknowns, Unknown{Value: c.tension(i)})
	}
	if len(number) == 0 {
		return s, false
	}
	for _, body := range c.res.Bodies {
		if e, touches := c.equation(body, number); touches {
			s.Equations = append(s.Equations, e)
		}
	}
	for i, k := range number {
		c.known[i] = true
		s.Unknowns[k].Line = c.fragment(c.pieces[i].Rope, c.pieces[i].Strokes)
	}
	return s, true
}

// equation is the balance of one body over the unknown pieces. The reference
// load's own balance is left to the total when the pull is the unit.
func (c *counter) equation(body *solve.Body, number map[int]int) (e Equation, touches bool) {
	e.Body = body
	if c.isReference(body) && c.count.Unit == OfPull {
		return e, false
	}
	for _, item := range c.items(body) {
		e.Constant = e.Constant.Sub(item.Value)
	}
	for _, i := range c.at[body] {
		if k, open := number[i]; open {
			if f := c.factor(body, i); f.Sign() != 0 {
				e.Terms = append(e.Terms, Term{Factor: f, Unknown: k})
			}
		}
	}
	return e, len(e.Terms) > 0
}
