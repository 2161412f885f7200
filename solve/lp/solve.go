package lp

import "slices"

// way is how the basis of an exact program is looked for.
type way int

const (
	guessing way = iota
	exactly
)

// Solve solves p. The numbers of the solution are exact if all numbers of p are.
// It panics if an entry names a row that p does not have.
//
// An exact program is first solved in floating point, which leads to a basis.
// What that basis proves is then computed anew and exactly; if it proves nothing,
// the search is done again in fractions. So floating point decides how long it
// takes and never what is true. Where there are several optima the search decides
// at which of them X stands, the same on every machine.
func Solve(p *Program) *Solution { return solve(p, guessing) }

func solve(p *Program, how way) *Solution {
	if p.exact() {
		return solveExact(p, how)
	}
	if s := solveRounded(p); s != nil {
		return s
	}
	s := solveExact(p.rationalised(), how)
	s.rounded = true
	s.Value, s.X, s.Y = s.told(s.Value), s.toldAll(s.X), s.toldAll(s.Y)
	return s
}

func solveExact(p *Program, how way) *Solution {
	m := newMatrix[Num](p, fromNum[Num])
	spent := 0
	if how == guessing {
		d, found := search(converted(m, fromNum[real]))
		spent = d.pivots
		if found.reliable {
			if v := newVertex(m, found); v != nil && v.proven(found) {
				return standing(v, spent)
			}
		}
	}
	d, found := search(m)
	v := newVertex(m, found)
	if v == nil || !v.proven(found) {
		panic("lp: an exact solution fails its own proof")
	}
	return standing(v, spent+d.pivots)
}

// solveRounded solves a program in floating point; nil if that leads nowhere.
func solveRounded(p *Program) *Solution {
	m := newMatrix[real](p, fromNum[real])
	d, found := search(m)
	if !found.reliable {
		return nil
	}
	v := newVertex(m, found)
	if v == nil {
		return nil
	}
	settleVertex(v, d)
	if !sound(v) {
		return nil
	}
	return standing(v, d.pivots)
}

// standing gives the solution that stands at v.
func standing[F number[F]](v *vertex[F], pivots int) *Solution {
	s := &Solution{Status: v.status, Pivots: pivots, vertex: v}
	switch v.status {
	case Optimal:
		s.X, s.Y = toNums(v.point()), toNums(v.y)
		s.Value = toNum(dot(v.y, v.rhs))
	case Infeasible:
		s.Y = toNums(v.y)
	case Unbounded:
		s.X = toNums(v.ray)
	}
	return s
}

// pivotLimit is the number of pivots after which rounded numbers are taken to go
// round in a circle; 0, for none, if the numbers do not round.
func pivotLimit[F number[F]](rows, columns int) int {
	if !rounds[F]() {
		return 0
	}
	return 200 + 20*(rows+columns)
}

// exact says whether all numbers of p are.
func (p *Program) exact() bool {
	for _, c := range p.Columns {
		if !c.Cost.IsExact() || slices.ContainsFunc(c.Entries, func(e Entry) bool { return !e.Value.IsExact() }) {
			return false
		}
	}
	return !slices.ContainsFunc(p.RHS, func(n Num) bool { return !n.IsExact() })
}

// rationalised gives p with every inexact number taken at its word.
func (p *Program) rationalised() *Program {
	out := &Program{RHS: slices.Clone(p.RHS)}
	for i, n := range out.RHS {
		out.RHS[i] = n.rationalised()
	}
	for _, c := range p.Columns {
		entries := slices.Clone(c.Entries)
		for k := range entries {
			entries[k].Value = entries[k].Value.rationalised()
		}
		out.Add(c.Cost.rationalised(), entries...)
	}
	return out
}
