package house

import (
	"math/big"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/solve/lp"
)

// Limit is a figure that is required.
type Limit struct {
	// Bound says from which side it bounds.
	Bound syntax.Bound
	// Low and High are in SI units, angles in degrees, proportions as fractions; the same
	// but for a band.
	Low, High *big.Rat
	// Strict says that the figure itself is not allowed: "under", "over".
	Strict bool
	// Quantity is the figure as written.
	Quantity quantity.Quantity
	Line     *Line
}

// Limit gives what is required of a figure; nil where nothing is.
func (r *Rules) Limit(f Figure) *Limit {
	line := r.limits[f]
	if line == nil {
		return nil
	}
	figure, _ := syntax.FigureNamed(f.Name)
	q := line.Require.Amount.Quantity
	return &Limit{Bound: figure.Bound, Low: q.Low, High: q.High, Strict: line.Require.Compare != syntax.Equal, Quantity: q, Line: line}
}

// Factor gives the factor that a part must have: that of its kind, else that of all
// parts; nil where none is required.
func (r *Rules) Factor(kind model.Kind) *Limit {
	if l := r.Limit(Figure{Name: "factor", Kind: kind}); l != nil {
		return l
	}
	return r.Limit(Figure{Name: "factor"})
}

// PerPerson gives what one person may have to pull; nil where nothing is required.
func (r *Rules) PerPerson() *Limit { return r.Limit(Figure{Name: "pull", PerPerson: true}) }

// Allows says whether a figure in SI units keeps to the limit; a nil limit allows all.
func (l *Limit) Allows(n lp.Num) bool {
	if l == nil {
		return true
	}
	low, high := n.Cmp(lp.FromRat(l.Low)), n.Cmp(lp.FromRat(l.High))
	switch {
	case l.Bound == syntax.Ceiling && l.Strict:
		return high < 0
	case l.Bound == syntax.Ceiling:
		return high <= 0
	case l.Bound == syntax.Floor && l.Strict:
		return low > 0
	case l.Bound == syntax.Floor:
		return low >= 0
	}
	return low >= 0 && high <= 0
}

// String gives the figure as written, "0.27 kN", "60 to 80 %".
func (l *Limit) String() string { return l.Quantity.String() }

// Wanted gives what is required in words: "under 1 m", "at most 1 m", "over 10",
// "at least 10", "60 to 80 %".
func (l *Limit) Wanted() string {
	words := ""
	switch {
	case l.Bound == syntax.Ceiling && l.Strict:
		words = "under "
	case l.Bound == syntax.Ceiling:
		words = "at most "
	case l.Bound == syntax.Floor && l.Strict:
		words = "over "
	case l.Bound == syntax.Floor:
		words = "at least "
	}
	return words + l.String()
}

// Related gives the line of a user's policy that sets the limit, as a place that helps
// to understand a finding; nothing for a usual one.
func (l *Limit) Related() []diag.Related {
	if l == nil || l.Line.Usual() {
		return nil
	}
	return []diag.Related{{Place: l.Line.Place, Message: "the house rule of " + l.Line.Name()}}
}

// Name gives the policy's name, or the file's where lines stand in none.
func (l *Line) Name() string {
	if l.Policy.Name != "" {
		return l.Policy.Name
	}
	return l.Place.File.Name
}

// Written gives the line as it stands in its file.
func (l *Line) Written() string {
	f := l.Place.File
	return f.Slice(source.Span{Start: l.Place.Span.Start, End: l.Place.Span.End})
}
