package lp

// Entry is one coefficient of a column: Value in row Row.
type Entry struct {
	Row   int
	Value Num
}

// Column is one unknown: what it puts into the rows, and what one unit of it is
// worth. Entries may stand in any order; several of one row add up.
type Column struct {
	Entries []Entry
	Cost    Num
}

// Program is: maximise Σ cost·x subject to A·x = RHS, x ≥ 0. The rows of A are
// as many as the numbers of RHS.
type Program struct {
	RHS     []Num
	Columns []Column
}

// Add appends a column and gives its index.
func (p *Program) Add(cost Num, entries ...Entry) int {
	p.Columns = append(p.Columns, Column{Entries: entries, Cost: cost})
	return len(p.Columns) - 1
}

// Row appends a row with its right-hand side and gives its index.
func (p *Program) Row(rhs Num) int {
	p.RHS = append(p.RHS, rhs)
	return len(p.RHS) - 1
}

// Term is one term of a linear form over the columns: Value times the unknown of
// that column. Several terms of one column add up.
type Term struct {
	Column int
	Value  Num
}

// Status is the outcome of a program.
type Status int

// The outcomes.
const (
	// Optimal: the largest value is attained.
	Optimal Status = iota
	// Infeasible: no x ≥ 0 meets the rows.
	Infeasible
	// Unbounded: some x ≥ 0 meets the rows, and the value has no upper limit.
	Unbounded
)

// String gives the outcome in a word.
func (s Status) String() string {
	switch s {
	case Optimal:
		return "optimal"
	case Infeasible:
		return "infeasible"
	case Unbounded:
		return "unbounded"
	}
	return "unknown"
}
