package resolve

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// nodeClause gives a clause written at the node; nil if there is none.
func (l *ropeWork) nodeClause(i int, word string) *syntax.ClauseUse {
	clauses := l.body.Nodes[i].Clauses
	for k := range clauses {
		if clauses[k].Word.Text == word {
			return &clauses[k]
		}
	}
	return nil
}

// holdsAt says whether a bend lets the rope run one way only at this node. A
// clause on the part that names an end acts only where the run has that end.
func (l *ropeWork) holdsAt(i int) bool {
	if l.nodeClause(i, "holds") != nil {
		return true
	}
	v := &l.rope.Nodes[i].Part.Values
	if !v.Holds {
		return false
	}
	named := v.HoldsEnd != nil
	return !named || len(l.sidesOf(i, v.HoldsEnd)) > 0
}

// sidesOf gives the ends of the node's run at which a part is: none, one or both.
func (l *ropeWork) sidesOf(i int, end *model.Part) []model.Side {
	r := l.runAt(i)
	if r.closed || end == nil {
		return nil
	}
	var sides []model.Side
	if l.rope.Nodes[r.first()].Part == end {
		sides = append(sides, model.FirstSide)
	}
	if r.last() != r.first() && l.rope.Nodes[r.last()].Part == end {
		sides = append(sides, model.LastSide)
	}
	return sides
}

// readHold gives a node its held side.
func (l *ropeWork) readHold(i int) {
	node := &l.rope.Nodes[i]
	if node.Part == nil { // tail takes no clause; an unknown name is reported
		return
	}
	written := l.nodeClause(i, "holds")
	grips := node.Role == model.Capture || node.Role == model.Grip
	besideSlack := l.runEnd(i) && !l.lineEnd(i) && node.Role == model.Tied &&
		(node.Part.Kind.IsGrip() || isBend(node.Part) && l.holdsAt(i))
	if !grips && !besideSlack {
		if written != nil {
			l.report(misplacedClause, written.Span, l.word(i),
				"%s does not hold the rope one way here; holds belongs to a bend, a hitch or a clamp between two strands", l.word(i))
		}
		return
	}
	node.Holds = model.FirstSide
	if besideSlack && l.runAt(i).first() == i && l.runAt(i).last() != i {
		node.Holds = model.LastSide // the taut side
	}
	switch {
	case written != nil && written.Name != nil:
		end := l.find(*written.Name, canEnd)
		if end == nil {
			l.rig.Incomplete = true
			return
		}
		l.holdNamed(i, end.Part, written.Name)
	case written == nil && node.Part.Values.HoldsEnd != nil:
		l.holdOfPart(i)
	}
}

// word gives a node's name as written.
func (l *ropeWork) word(i int) string { return l.body.Nodes[i].Name.Text }

// holdNamed takes the held side from the end that the node's own clause names.
func (l *ropeWork) holdNamed(i int, end *model.Part, name *syntax.Word) {
	sides := l.sidesOf(i, end)
	node := &l.rope.Nodes[i]
	if len(sides) == 1 {
		if node.Role != model.Tied { // beside slack rope it is the taut side
			node.Holds = sides[0]
		}
		return
	}
	if !l.endsKnown(l.runAt(i)) {
		return
	}
	l.rig.Incomplete = true
	if len(sides) == 2 {
		l.report(holdAmbiguous, name.Span, node.Part.Name,
			"%s holds %s, but both ends of the run are at %s", node.Part.Name, end.Name, end.Name)
		return
	}
	l.reportNoEnd(node.Part, end, *name, l.ends(l.runAt(i)))
}

// reportNoEnd reports a holds that names what is no end of the run.
func (r *rigWork) reportNoEnd(p, end *model.Part, name syntax.Word, ends []string) *diag.Diagnostic {
	if len(ends) == 0 {
		return r.report(holdAmbiguous, name.Span, p.Name,
			"%s holds %s, but the line is closed and has no end; write bare holds", p.Name, end.Name)
	}
	near := r.hint.near(name.Text, ends)
	d := r.report(holdAmbiguous, name.Span, p.Name,
		"%s holds %s, which is no end of its run; the ends are %s", p.Name, end.Name, both(ends))
	r.offerName(d, name, near)
	return d
}

// holdOfPart takes the held side from the end that the part's clause names.
func (l *ropeWork) holdOfPart(i int) {
	node := &l.rope.Nodes[i]
	w := l.work(node.Part)
	sides := l.sidesOf(i, node.Part.Values.HoldsEnd)
	switch {
	case len(sides) == 1:
		w.acted = true
		if node.Role != model.Tied {
			node.Holds = sides[0]
		}
	case len(sides) == 2:
		w.acted = true
		l.rig.Incomplete = true
		name := node.Part.Name
		end := node.Part.Values.HoldsEnd.Name
		l.reportAt(holdAmbiguous, l.saidAt(node.Part, "holds"), name,
			"%s holds %s, but both ends of the run are at %s", name, end, end)
	}
}
