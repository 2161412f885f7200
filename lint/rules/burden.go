package rules

import (
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// grade says how a part stands under a load.
type grade int

const (
	fine grade = iota
	// weak: its factor is under what the house requires.
	weak
	// broken: it carries more than it bears.
	broken
)

// burden is a part with what it bears, set against its load and the house rules.
type burden struct {
	solve.Rating
	// limit is the factor that the house requires; nil where it requires none.
	limit *house.Limit
}

// burdens gives the parts of which load and strength are known, in file order; nil for a
// rig that does not do its job, whose loads are not those that its author means.
func burdens(p *lint.Pass) []burden {
	if status := p.Result.Status; p.Explained() || status != solve.OK && status != solve.NoHaul {
		return nil
	}
	var list []burden
	for _, r := range p.Result.Ratings() {
		if r.Load != nil && r.Strength != nil && r.Load.Sign() > 0 {
			list = append(list, burden{r, p.House.Factor(r.Part.Kind)})
		}
	}
	return list
}

// under gives the grade of the part under a load in newtons.
func (b burden) under(load lp.Num) grade {
	switch {
	case load.Sign() <= 0:
		return fine
	case load.Cmp(*b.Strength) > 0:
		return broken
	case !b.limit.Allows(b.Strength.Quo(load)):
		return weak
	}
	return fine
}

// grade is that under its worst load.
func (b burden) grade() grade { return b.under(*b.Load) }

// byShare says that the part stands worse at the upper end of a share that statics leaves
// open while hauling than it does otherwise.
func (b burden) byShare() bool {
	return b.Open != nil && b.under(b.Open.High) > b.under(b.Open.Settled)
}

// bears says in words what the part bears: "bears 10 kN", "slips at 7 kN".
func (b burden) bears(p *lint.Pass) string {
	switch b.Limit {
	case solve.Slips:
		return "slips at " + p.Newtons(*b.Strength)
	case solve.Damages:
		return "damages rope at " + p.Newtons(*b.Strength)
	}
	words := "bears " + p.NewtonsFrom(*b.Strength, *b.Load)
	if b.Knot != "" {
		words += " with " + lint.Clipped(b.Knot)
	}
	return words
}

// carries says in words what the part carries at its worst, and when: "carries 12 kN
// hauling".
func (b burden) carries(p *lint.Pass, verb, infinitive string) string {
	if b.Ranges || b.AtMost {
		verb = "can " + infinitive + " up to"
	}
	return verb + " " + p.NewtonsFrom(*b.Load, *b.Strength) + " " + p.During(b.Phase) + p.Frictionless(b.Phase)
}

// required says what a house rule asks for: "the house requires at least 10", "under 90
// deg is usual".
func required(l *house.Limit) string {
	if l.Line.Usual() {
		return l.Wanted() + " is usual"
	}
	return "the house requires " + l.Wanted()
}

// forKind names the kind of part that a factor is required of, as its line does; empty for
// all.
func forKind(l *house.Limit) string {
	if of := l.Line.Require.For; of != nil {
		return " for " + of.Text
	}
	return ""
}

// ratio gives a multiple above 1 as a message writes it: "1.2 times", "just over" where
// no more would be seen.
func ratio(n lp.Num) string {
	if words := lint.Times(n); words != "1 times" {
		return words
	}
	return "just over"
}
