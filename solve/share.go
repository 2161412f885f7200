package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// sharedEnd is a rope's end whose part of what its part holds is stated.
type sharedEnd struct {
	column    int
	factor    lp.Num
	low, high lp.Num
	// all are the tensions on all ends at the same part.
	all linear
}

// withShares narrows a solved phase to the stated shares: "team (share 40 to 60 %)"
// says how much of the pull of all of the team's ends is on this one, and likewise
// of a load's. Shares only settle what statics leaves open: the motion and the pull
// stay what they are. Unmet says that forces in balance do not allow them.
func (p *program) withShares(solved *lp.Solution) (narrowed *lp.Solution, unmet bool) {
	q := p.sharing()
	if q == nil {
		return solved, false
	}
	again := lp.Solve(q)
	if again.Status != lp.Optimal || again.Value.Cmp(solved.Value) != 0 {
		return solved, true
	}
	return again, false
}

// solve solves the program with the stated shares, and without them if they leave
// no balance: with friction the pull depends on them.
func (p *program) solve() *lp.Solution {
	if q := p.sharing(); q != nil {
		if solved := lp.Solve(q); solved.Status == lp.Optimal {
			return solved
		}
	}
	return lp.Solve(p.lp)
}

// sharing gives the program with a row for each end of a stated share; nil if no
// share is stated.
func (p *program) sharing() *lp.Program {
	ends := p.sharedEnds()
	if len(ends) == 0 {
		return nil
	}
	q := &lp.Program{RHS: p.lp.RHS[:len(p.lp.RHS):len(p.lp.RHS)]}
	for _, c := range p.lp.Columns {
		c.Entries = c.Entries[:len(c.Entries):len(c.Entries)]
		q.Columns = append(q.Columns, c)
	}
	for _, end := range ends {
		end.bound(q, end.low, lp.Int(1))
		end.bound(q, end.high, lp.Int(-1))
	}
	return q
}

// bound adds the row sign·(tension − share·all) ≥ 0.
func (e *sharedEnd) bound(q *lp.Program, share, sign lp.Num) {
	row := q.Row(lp.Num{})
	add := func(column int, value lp.Num) {
		q.Columns[column].Entries = append(q.Columns[column].Entries, lp.Entry{Row: row, Value: value})
	}
	add(e.column, sign.Mul(e.factor))
	for _, t := range e.all.list() {
		add(t.Column, sign.Neg().Mul(share).Mul(t.Value))
	}
	q.Add(lp.Num{}, lp.Entry{Row: row, Value: lp.Int(-1)})
}

// sharedEnds lists the ends with a stated share that can carry something.
func (p *program) sharedEnds() []*sharedEnd {
	var ends []*sharedEnd
	for _, r := range p.rig.Ropes {
		for i, n := range r.Nodes {
			if n.Share == nil || !n.Role.Ends() || r.Broken {
				continue
			}
			column, factor := p.endTerm(r, i)
			if column < 0 {
				continue
			}
			ends = append(ends, &sharedEnd{column: column, factor: factor, all: p.endsAt(n.Part),
				low: lp.FromRat(n.Share.Low), high: lp.FromRat(n.Share.High)})
		}
	}
	return ends
}

// endsAt adds up the tensions on all ends at a part.
func (p *program) endsAt(part *model.Part) linear {
	var all linear
	for _, r := range p.rig.Ropes {
		for i, n := range r.Nodes {
			if n.Part == part && n.Role.Ends() && !r.Broken {
				all.add(p.endTerm(r, i))
			}
		}
	}
	return all
}

// endTerm gives the tension on the rope at an end node.
func (p *program) endTerm(r *model.Rope, node int) (column int, factor lp.Num) {
	stroke := node
	if stroke >= len(r.Strokes) || r.Strokes[stroke] == model.Slack {
		stroke = r.Before(node)
	}
	if stroke < 0 {
		return -1, lp.Num{}
	}
	at := p.strands[r][stroke]
	return p.term(at.piece, at.link)
}
