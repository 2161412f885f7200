package rules

import (
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// team is one hauler with what its people pull.
type team struct {
	haul *solve.Phase
	// fewest and most are its people.
	fewest, most lp.Num
	// low and high are what each gives in newtons: what the hauler says, else what the
	// house has.
	low, high lp.Num
	// limit is the line of the house that low and high come from; nil where the hauler says
	// it.
	limit *house.Limit
}

// teamOf gives the team of a haul that raises the load; ok is false if it does not say how
// many pull, or if what each gives is not known. The usual figure is that of people who
// stand and pull: for who hangs on the rope it says nothing.
func teamOf(p *lint.Pass, haul *solve.Phase) (t team, ok bool) {
	v := haul.Hauler.Values
	if haul.Status != solve.OK || p.Result.Brakes(haul) || v.People == nil || v.People.Low.Sign() <= 0 {
		return t, false
	}
	t = team{haul: haul, fewest: lp.FromRat(v.People.Low), most: lp.FromRat(v.People.High)}
	limit := p.House.PerPerson()
	switch {
	case v.Pull != nil:
		t.low, t.high = lp.FromRat(v.Pull.Low), lp.FromRat(v.Pull.High)
	case limit == nil || limit.Line.Usual() && haul.Hauler.Moves():
		return t, false
	default:
		t.limit = limit
		t.low, t.high = lp.FromRat(limit.High), lp.FromRat(limit.High)
	}
	return t, t.low.Sign() > 0
}

// usual says that what each gives is the usual figure, since nobody says another.
func (t team) usual() bool { return t.limit != nil && t.limit.Line.Usual() }

// gives is the most that all together give, in newtons.
func (t team) gives() lp.Num { return t.most.Mul(t.high) }

// each says in words what one person gives: "0.25 kN each", "the usual 0.27 kN each".
func (t team) each(p *lint.Pass) string {
	switch {
	case t.limit == nil:
		return p.Between(t.low, t.high) + " each"
	case t.usual():
		return "the usual " + p.Newtons(t.low) + " each" // in the rig's unit
	}
	return t.limit.Wanted() + " each, as the house requires"
}

// mostPeople is how many people are counted.
const mostPeople = 1_000_000_000

// need gives how many people it takes for a pull in newtons if each gives the lower end of
// what one gives.
func (t team) need(pull lp.Num) int64 {
	fewer := pull.Quo(t.low).Float()
	if fewer >= mostPeople {
		return mostPeople
	}
	n := max(1, int64(fewer))
	for !t.gets(pull.Quo(lp.Int(n))) {
		n++
	}
	return n
}

// gets says whether each gives so many newtons.
func (t team) gets(share lp.Num) bool {
	if t.limit != nil {
		return t.limit.Allows(share)
	}
	return share.Cmp(t.low) <= 0
}

// byHouse gives the team if each gives what the house allows.
func (t team) byHouse(limit *house.Limit) team {
	t.limit, t.low, t.high = limit, lp.FromRat(limit.High), lp.FromRat(limit.High)
	return t
}
