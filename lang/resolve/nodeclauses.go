package resolve

import (
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/syntax"
)

// readClauses gives every node the values of its own clauses, and those of its
// part where it has none.
func (l *ropeWork) readClauses() {
	for i := range l.rope.Nodes {
		node := &l.rope.Nodes[i]
		var own model.Values
		for _, c := range l.body.Nodes[i].Clauses {
			l.readNodeClause(i, &own, c)
		}
		var of model.Values
		if node.Part != nil {
			of = node.Part.Values
		}
		var tied model.Values
		if node.TieStock = l.tieModel(i); node.TieStock != nil {
			tied = node.TieStock.Values
		}
		node.Share, node.Retains = own.Share, ownOr(own.Retains, ownOr(tied.Retains, of.Retains))
		node.Efficiency, node.Lowering = ownOr(own.Efficiency, of.Efficiency), ownOr(own.Lowering, of.Lowering)
		node.Friction, node.Turns = ownOr(own.Friction, of.Friction), ownOr(own.Turns, of.Turns)
		node.Sideways = own.Sideways || of.Sideways
		l.readAngle(i, own.Angle)
	}
	l.checkFixedEnds()
}

// tieModel gives the model of the knot that ties a node. Of most knots nothing is
// known, and they are not reported; one that is nearly the name of another is.
func (l *ropeWork) tieModel(i int) *model.Stock {
	tie := l.body.Nodes[i].Knot
	if tie == nil {
		return nil
	}
	kind := string(model.Knot)
	found := l.of.work.modelNamed(kind, tie.Text)
	if found != nil || l.of.work.lacking {
		return found
	}
	if near := l.nearModels(l.of.work, kind, tie.Text); len(near) > 0 {
		d := l.report(unknownModel, tie.Span, l.word(i),
			"%s: nothing is known of the knot %s%s", l.word(i), tie.Text, didYouMean(near))
		l.offerName(d, *tie, near)
	}
	return nil
}

// ownOr gives a node's own value, or its part's where it has none.
func ownOr(own, of *quantity.Quantity) *quantity.Quantity {
	if own != nil {
		return own
	}
	return of
}

// readNodeClause reads one clause of a node but for holds and the angle.
func (l *ropeWork) readNodeClause(i int, own *model.Values, c syntax.ClauseUse) {
	node := l.rope.Nodes[i]
	between := l.passes(i)
	switch c.Word.Text {
	case "holds":
		return
	case "angle":
		if c.Amount != nil && c.Amount.Low != nil {
			q := c.Amount.Quantity
			own.Angle = &q
		}
		return
	case "share":
		if between || node.Role == model.KnotTie {
			l.report(misplacedClause, c.Span, l.word(i), "%s shares a load only where a rope ends, not in mid rope", l.word(i))
		}
	case "sideways":
		if node.Part != nil && (!between || node.Part.Fixed()) {
			l.report(misplacedClause, c.Span, l.word(i), "%s moves sideways only as a moving part between two strands", l.word(i))
			return
		}
	}
	l.readClause(l.word(i), "", own, c)
}
