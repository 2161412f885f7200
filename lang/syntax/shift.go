package syntax

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// shift moves what was read of a statement by so many bytes. It copies what it moves.
type shift int

func (s shift) span(of source.Span) source.Span {
	return source.Span{Start: of.Start + int(s), End: of.End + int(s)}
}

func (s shift) word(w Word) Word {
	if w.Text != "" || w.Span != (source.Span{}) {
		w.Span = s.span(w.Span)
	}
	return w
}

func (s shift) maybeWord(w *Word) *Word { return moved(w, s.word) }

func (s shift) text(t Text) Text {
	t.Span = s.span(t.Span)
	return t
}

func (s shift) amount(a Amount) Amount {
	a.Span, a.LowSpan, a.HighSpan, a.UnitSpan = s.span(a.Span), s.span(a.LowSpan), s.span(a.HighSpan), s.span(a.UnitSpan)
	return a
}

func (s shift) clause(c ClauseUse) ClauseUse {
	c.Word, c.Name, c.Span = s.word(c.Word), s.maybeWord(c.Name), s.span(c.Span)
	c.Amount, c.Second = moved(c.Amount, s.amount), moved(c.Second, s.amount)
	return c
}

func (s shift) clauses(list []ClauseUse) []ClauseUse { return all(list, s.clause) }

func (s shift) node(n Node) Node {
	n.Name, n.Clauses, n.Knot, n.Span = s.word(n.Name), s.clauses(n.Clauses), s.maybeWord(n.Knot), s.span(n.Span)
	return n
}

func (s shift) stroke(t Stroke) Stroke {
	t.Span = s.span(t.Span)
	return t
}

func (s shift) change(c Change) Change {
	c.Part, c.Clauses = s.word(c.Part), s.clauses(c.Clauses)
	return c
}

func (s shift) ratio(r Ratio) Ratio {
	r.Span = s.span(r.Span)
	return r
}

// body moves what a statement says.
func (s shift) body(b Body) Body {
	if s == 0 {
		return b
	}
	switch b := b.(type) {
	case *Rig:
		return &Rig{Name: s.word(b.Name), Title: moved(b.Title, s.text)}
	case *Use:
		return &Use{Path: s.text(b.Path)}
	case *Include:
		return &Include{
			Rig: s.word(b.Rig), As: s.word(b.As),
			With: all(b.With, s.change), Without: all(b.Without, s.word),
		}
	case *Join:
		return &Join{A: s.word(b.A), B: s.word(b.B)}
	case *Part:
		return &Part{
			Kind: s.word(b.Kind), Name: s.word(b.Name),
			Model: s.maybeWord(b.Model), On: s.maybeWord(b.On), Clauses: s.clauses(b.Clauses),
		}
	case *Stock:
		return &Stock{Kind: s.word(b.Kind), Model: s.word(b.Model), Clauses: s.clauses(b.Clauses)}
	case *Reeve:
		return &Reeve{
			Rope: s.word(b.Rope), Nodes: all(b.Nodes, s.node),
			Strokes: all(b.Strokes, s.stroke), Loop: s.maybeWord(b.Loop),
		}
	}
	return s.other(b)
}

// other moves the claims and house rules.
func (s shift) other(b Body) Body {
	switch b := b.(type) {
	case *Expect:
		e := *b
		e.Not, e.Of, e.By = s.maybeWord(b.Not), s.maybeWord(b.Of), s.maybeWord(b.By)
		e.Class, e.Rule = s.maybeWord(b.Class), s.maybeWord(b.Rule)
		e.SubjectSpan, e.Ratio = s.span(b.SubjectSpan), moved(b.Ratio, s.ratio)
		e.Amount, e.Per = moved(b.Amount, s.amount), moved(b.Per, s.amount)
		return &e
	case *Accept:
		return &Accept{Rule: s.word(b.Rule), At: s.maybeWord(b.At), Because: s.text(b.Because)}
	case *Units:
		return &Units{Words: all(b.Words, s.word)}
	case *Policy:
		return &Policy{Name: s.word(b.Name), Title: moved(b.Title, s.text)}
	case *Require:
		q := *b
		q.Subject, q.For, q.Amount = s.word(b.Subject), s.maybeWord(b.For), moved(b.Amount, s.amount)
		return &q
	case *RuleSetting:
		return &RuleSetting{Rule: s.word(b.Rule), Severity: s.word(b.Severity)}
	case *Bad:
		return &Bad{Names: all(b.Names, s.word)}
	}
	return b
}

// problems moves findings into a file.
func (s shift) problems(list []diag.Diagnostic, f *source.File) []diag.Diagnostic {
	place := func(p source.Place) source.Place { return source.Place{File: f, Span: s.span(p.Span)} }
	return all(list, func(d diag.Diagnostic) diag.Diagnostic {
		d.Place = place(d.Place)
		d.Related = all(d.Related, func(r diag.Related) diag.Related {
			r.Place = place(r.Place)
			return r
		})
		d.Fixes = all(d.Fixes, func(fix diag.Fix) diag.Fix {
			fix.Edits = all(fix.Edits, func(e diag.Edit) diag.Edit {
				e.Place = place(e.Place)
				return e
			})
			return fix
		})
		return d
	})
}

// moved moves what may lack.
func moved[T any](v *T, move func(T) T) *T {
	if v == nil {
		return nil
	}
	m := move(*v)
	return &m
}

// all moves each of a list; nil stays nil.
func all[T any](list []T, move func(T) T) []T {
	out := slices.Clone(list)
	for i, v := range list {
		out[i] = move(v)
	}
	return out
}
