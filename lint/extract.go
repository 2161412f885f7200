package lint

import (
	"sort"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// extract is a file without the rigs that have nothing to do with one of them: what that
// rig's findings can depend on. A place in it stays the same, whatever stands between its pieces.
type extract struct {
	file *source.File
	text string
	// pieces are the stretches of the file that it has, in order, starts where each
	// begins in its text.
	pieces []source.Span
	starts []int
}

// extract takes a rig out of its file.
func (e *examination) extract(rig int) extract {
	x := extract{file: e.file.File}
	at := 0
	piece := func(end int) {
		x.pieces = append(x.pieces, source.Span{Start: at, End: end})
	}
	for _, cut := range e.standing(rig).cuts {
		piece(cut.Place.Span.Start)
		at = cut.Place.Span.End
	}
	piece(len(x.file.Text))
	var b strings.Builder
	for i, p := range x.pieces {
		if i > 0 {
			b.WriteByte('\n')
		}
		x.starts = append(x.starts, b.Len())
		b.WriteString(x.file.Slice(p))
	}
	x.text = b.String()
	return x
}

// has says whether a place of the file is in the extract.
func (x *extract) has(span source.Span) bool {
	i := sort.Search(len(x.pieces), func(i int) bool { return span.Start <= x.pieces[i].End })
	return i < len(x.pieces) && x.pieces[i].Contains(span)
}

// within gives where a place of the file is in the extract.
func (x *extract) within(offset int) int {
	i := sort.Search(len(x.pieces), func(i int) bool { return offset <= x.pieces[i].End })
	return x.starts[i] + offset - x.pieces[i].Start
}

// inFile gives where a place of the extract is in the file.
func (x *extract) inFile(offset int) int {
	i := sort.Search(len(x.starts), func(i int) bool { return offset < x.starts[i] }) - 1
	return x.pieces[i].Start + offset - x.starts[i]
}

// movedTo gives what was seen as findings of another version of the file, of which
// the extract is the same.
func (s *seen) movedTo(now extract) *seen {
	place := func(p source.Place) source.Place {
		if p.File != s.text.file {
			return p
		}
		span := source.Span{Start: now.inFile(s.text.within(p.Span.Start)), End: now.inFile(s.text.within(p.Span.End))}
		return now.file.At(span)
	}
	return &seen{found: movedFindings(s.found, place), silent: movedFindings(s.silent, place), dim: s.dim}
}

// contained says whether every place of the findings that is in the file is in the
// extract.
func (s *seen) contained() bool {
	all := true
	check := func(p source.Place) source.Place {
		all = all && (p.File != s.text.file || s.text.has(p.Span))
		return p
	}
	movedFindings(s.found, check)
	movedFindings(s.silent, check)
	return all
}

func movedFindings(list []diag.Diagnostic, place func(source.Place) source.Place) []diag.Diagnostic {
	return moved(list, func(d diag.Diagnostic) diag.Diagnostic {
		d.Place = place(d.Place)
		d.Related = moved(d.Related, func(r diag.Related) diag.Related {
			r.Place = place(r.Place)
			return r
		})
		d.Fixes = moved(d.Fixes, func(f diag.Fix) diag.Fix {
			f.Edits = moved(f.Edits, func(e diag.Edit) diag.Edit {
				e.Place = place(e.Place)
				return e
			})
			return f
		})
		return d
	})
}

// moved moves each of a list in a copy of it; nil stays nil.
func moved[T any](list []T, move func(T) T) []T {
	if list == nil {
		return nil
	}
	out := make([]T, len(list))
	for i, v := range list {
		out[i] = move(v)
	}
	return out
}
