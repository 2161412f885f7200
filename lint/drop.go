package lint

import (
	"strings"

	"fairlead/lang/diag"
	"fairlead/lint/house"
	"fairlead/solve"
)

// dropLimit gives what a house allows a load to drop; nil where it allows none.
func dropLimit(rules *house.Rules) *house.Limit { return rules.Limit(house.Figure{Name: "drop"}) }

// DropLimit gives what the house allows a load to drop; nil where it allows none.
func (p *Pass) DropLimit() *house.Limit { return dropLimit(p.House) }

// Keeps says whether the loads stay up as well as the house wants it: held, or stopped
// by rope or by a knot after a drop that is known and that the house allows.
func (p *Pass) Keeps(stay solve.Stay) bool { return keeps(p.House, stay) }

func keeps(rules *house.Rules, stay solve.Stay) bool {
	if stay.LoadsStay() {
		return true
	}
	limit := dropLimit(rules)
	return limit != nil && stopsByRope(stay) && stay.Drop.Known() && limit.Allows(*stay.Drop.Most())
}

// stopsByRope says whether a load that drops is stopped by rope, tight or with a knot
// drawn up to a bend: what a house may allow.
func stopsByRope(stay solve.Stay) bool {
	return stay.Answer == solve.Caught || stay.Answer == solve.Jams && stay.AtKnot
}

// Allowed says what the house allows where a drop is all that stands against a load that
// stays up: "; the house allows a drop under 1 m". It is empty elsewhere.
func (p *Pass) Allowed(stay solve.Stay) string { return allowed(p.House, stay) }

func allowed(rules *house.Rules, stay solve.Stay) string {
	limit := dropLimit(rules)
	switch {
	case !stopsByRope(stay):
		return ""
	case limit == nil:
		return "; no house rule allows a drop"
	}
	return "; the house allows a drop " + limit.Wanted()
}

// allowance gives the line of the house that allows a drop, where that is the question.
func allowance(rules *house.Rules, stay solve.Stay) []diag.Related {
	if !stopsByRope(stay) {
		return nil
	}
	return dropLimit(rules).Related()
}

// WhyUnknown says in a clause why it is not known how far loads drop: "back has no
// length".
func WhyUnknown(drop *solve.Drop) string {
	if drop == nil || len(drop.Missing) == 0 {
		return "the drop is not known"
	}
	var said []string
	for _, m := range drop.Missing {
		said = append(said, lacks(m))
	}
	if n := len(said); n > mostNamed {
		said = append(said[:mostNamed-1], "so do others")
	}
	return strings.Join(said, ", ")
}

// lacks says what is missing: what lacks a figure, or has one that cannot be.
func lacks(m solve.Missing) string {
	if m.Part == nil {
		return "no part has a position"
	}
	name := NameOf(m.Part)
	switch m.Gap {
	case solve.NoLength:
		return name + " has no length"
	case solve.TooShort:
		return name + " is shorter than its way"
	case solve.Against:
		return "the positions contradict " + name
	}
	return name + " has no position"
}
