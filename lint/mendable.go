package lint

import (
	"cmp"
	"maps"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// candidate is a finding with the one fix that it has.
type candidate struct {
	diag.Diagnostic
	rig string
}

func (c candidate) fix() diag.Fix { return c.Fixes[0] }

// candidates lists, in the order of the file, the findings that have one fix. Of fixes
// that overlap only that of the graver finding is among them, or of the earlier one.
// What silences findings is not touched before all of them can be seen; and what an
// acceptance that cannot be understood may mean is left alone.
func (x *examined) candidates() []candidate {
	var list []candidate
	silencing, clear := x.silencing()
	for _, d := range x.Findings {
		c := candidate{d, rigNameAt(x.file, d.Place)}
		switch {
		case len(d.Fixes) != 1 || !x.own(d.Fixes[0].Edits):
		case !clear && within(silencing, d.Fixes[0].Edits):
		case x.mayBeAccepted(c):
		default:
			list = append(list, c)
		}
	}
	byPlace := func(a, b candidate) int { return cmp.Compare(a.Place.Span.Start, b.Place.Span.Start) }
	slices.SortStableFunc(list, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(b.Severity, a.Severity), byPlace(a, b))
	})
	taken := make([]bool, len(x.file.File.Text)+1)
	list = slices.DeleteFunc(list, func(c candidate) bool { return !take(taken, c.fix()) })
	slices.SortStableFunc(list, byPlace)
	return list
}

// take notes the text that a fix changes; false if another one changes some of it, or
// text that touches it.
func take(taken []bool, fix diag.Fix) bool {
	for _, e := range fix.Edits {
		if slices.Contains(taken[e.Place.Span.Start:e.Place.Span.End+1], true) {
			return false
		}
	}
	for _, e := range fix.Edits {
		for at := e.Place.Span.Start; at <= e.Place.Span.End; at++ {
			taken[at] = true
		}
	}
	return true
}

// silencing lists the statements that accept or expect findings; clear says that no
// error but in these hides any finding.
func (x *examined) silencing() (statements []source.Span, clear bool) {
	for _, s := range x.file.Tree.Statements {
		expect, isExpect := s.Body.(*syntax.Expect)
		if _, accepts := s.Body.(*syntax.Accept); accepts || isExpect && expect.Subject == syntax.Finding {
			statements = append(statements, s.Span)
		}
	}
	for _, d := range x.file.Problems {
		if d.Severity == diag.Error && !inOneOf(statements, d.Place.Span) {
			return statements, false
		}
	}
	return statements, !slices.Contains(slices.Collect(maps.Values(x.legible())), false)
}

// within says whether one of the edits is in one of the statements.
func within(statements []source.Span, edits []diag.Edit) bool {
	return slices.ContainsFunc(edits, func(e diag.Edit) bool {
		return slices.ContainsFunc(statements, func(s source.Span) bool {
			return e.Place.Span.Start < s.End && s.Start < e.Place.Span.End || s.Contains(e.Place.Span)
		})
	})
}

func inOneOf(statements []source.Span, span source.Span) bool {
	return slices.ContainsFunc(statements, func(s source.Span) bool { return s.Contains(span) })
}

// mayBeAccepted says whether a finding is one that an acceptance may mean of which it
// is not known what it means.
func (x *examined) mayBeAccepted(c candidate) bool {
	is := func(r *Rule) bool { return r.Name == c.Rule }
	if slices.ContainsFunc(ClaimRules(), is) || c.Severity == diag.Error && slices.ContainsFunc(TextRules(), is) {
		return false
	}
	return slices.ContainsFunc(x.Acceptances, func(a Acceptance) bool {
		return a.State == NotJudged && (c.rig == "" || a.Rig.Name == c.rig)
	})
}

// own says whether edits are all of the file.
func (x *examined) own(edits []diag.Edit) bool {
	return len(edits) > 0 && !slices.ContainsFunc(edits, func(e diag.Edit) bool { return e.Place.File != x.file.File })
}
