package ide

import (
	"fmt"
	"slices"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/lint/rules"
)

// ActionSort says what an action is for.
type ActionSort int

const (
	// MendAction mends a finding, by a fix that is proved.
	MendAction ActionSort = iota
	// AddAction adds a part that is named and not there.
	AddAction
	// AcceptAction writes that a finding is accepted.
	AcceptAction
	// ExplainAction shows the page of a rule.
	ExplainAction
	// RewriteAction writes the same in another way.
	RewriteAction
)

// Action is a change that is offered at a place.
type Action struct {
	Sort  ActionSort
	Title string
	Edits []diag.Edit
	// Finding is what it is about; nil for one that is about none.
	Finding *diag.Diagnostic
	// Preferred says that it is the one thing to do about its finding.
	Preferred bool
	// Select is what the author goes on with once the edits are made: a span of the text
	// as it is then. Nil for nothing.
	Select *source.Span
}

// Actions gives what can be done about the findings that touch a span, and about what
// stands there.
func (d *Document) Actions(within source.Span, found []diag.Diagnostic) []Action {
	var mend, others []Action
	touched := d.words(within)
	for i, f := range found {
		if f.Place.File != d.File || f.Place.Span.Start > touched.End || f.Place.Span.End < touched.Start {
			continue
		}
		mend = append(mend, d.mend(&found[i])...)
		others = append(others, d.accept(&found[i])...)
		if _, ok := PageOf(f.Rule); ok {
			others = append(others, Action{Sort: ExplainAction, Title: "why: " + f.Rule, Finding: &found[i]})
		}
	}
	return slices.Concat(mend, others, d.rewrite(within))
}

// words widens a span to the words that it touches: something may be missing at either
// end of them.
func (d *Document) words(within source.Span) source.Span {
	for _, offset := range []int{within.Start, within.End} {
		if t, ok := d.tokenAt(offset); ok {
			within = within.To(t.Span)
		}
	}
	return within
}

// mend gives the fixes of a finding.
func (d *Document) mend(f *diag.Diagnostic) []Action {
	var list []Action
	for _, fix := range f.Fixes {
		title := fix.Title
		if fix.Gives != "" {
			title += "; " + fix.Gives
		}
		list = append(list, Action{
			Sort: MendAction, Title: title, Edits: fix.Edits, Finding: f, Preferred: len(f.Fixes) == 1,
		})
	}
	if f.Rule == "unknown-part" {
		list = append(list, d.addPart(f)...)
	}
	return list
}

// accept offers to accept a finding, with a reason that the author writes.
func (d *Document) accept(f *diag.Diagnostic) []Action {
	if !acceptable(f) || len(d.Model.Rigs) == 0 {
		return nil
	}
	at, blank := d.claimsEnd(d.rigAt(f.Place.Span.Start))
	line := "accept " + f.Rule
	for _, r := range d.rigsAt(f.Place.Span.Start) {
		if f.Subject != "" && r.Part(f.Subject) != nil {
			line += " at " + f.Subject
			break
		}
	}
	const reason = "…"
	end := d.lineEnd()
	text := end + line + ` because "` + reason + `"`
	if blank {
		text = end + text
	}
	edits, ok := d.fit(diag.Edit{Place: d.File.At(source.Span{Start: at, End: at}), NewText: text})
	if !ok {
		return nil
	}
	chosen := edits[0].Place.Span.Start + strings.LastIndex(edits[0].NewText, reason)
	return []Action{{
		Sort: AcceptAction, Title: line + " because …", Edits: edits, Finding: f,
		Select: &source.Span{Start: chosen, End: chosen + len(reason)},
	}}
}

// acceptable says whether an author can accept a finding: not an error of the text, nor
// what is about the file's own claims.
func acceptable(f *diag.Diagnostic) bool {
	for _, r := range slices.Concat(rules.All(), lint.ClaimRules()) {
		if r.Name == f.Rule && r.Final {
			return false
		}
	}
	ofText := slices.ContainsFunc(lint.TextRules(), func(r *lint.Rule) bool { return r.Name == f.Rule })
	return !ofText || f.Severity < diag.Error
}

// claimsEnd gives the end of the last line of a rig, or of what stands before the first
// one; blank says that no claim stands there, so that a blank line goes before one.
func (d *Document) claimsEnd(rig int) (offset int, blank bool) {
	last := -1
	for i, st := range d.Tree.Statements {
		if d.rigAt(st.Span.Start) == rig && !wholeFile(st) {
			last = i
		}
	}
	if last < 0 {
		return len(d.File.Text), false
	}
	keyword := d.Tree.Statements[last].Keyword.Text
	return linesOf(d.Tree, last).End, keyword != "expect" && keyword != "accept"
}

// lineEnd gives the line end of the document.
func (d *Document) lineEnd() string {
	if end := d.File.LineSpan(0).End; strings.HasPrefix(d.File.Whole[end:], "\r\n") {
		return "\r\n"
	}
	return "\n"
}

// rewrite offers to turn the reeving line at a place round.
func (d *Document) rewrite(within source.Span) []Action {
	st := d.statementAt(within.Start)
	if st == nil {
		return nil
	}
	line, ok := st.Body.(*syntax.Reeve)
	if !ok || line.Loop != nil || st.Faulty {
		return nil
	}
	edits, ok := d.fit(resolve.Turn(d.File, st, line))
	if !ok {
		return nil
	}
	title := fmt.Sprintf("write %s from its other end", line.Rope.Text)
	if grips := d.gripsOn(st); len(grips) > 0 {
		verb := "hold"
		if len(grips) == 1 {
			verb = "holds"
		}
		title += "; " + lint.List(grips) + " then " + verb + " the other way"
	}
	return []Action{{Sort: RewriteAction, Title: title, Edits: edits}}
}

// gripsOn names what holds the rope of a reeving line by the line's direction: hitches,
// clamps, and captures that do not say which end they hold.
func (d *Document) gripsOn(st *syntax.Statement) []string {
	var names []string
	for _, r := range d.rigsAt(st.Span.Start) {
		for _, rope := range r.Ropes {
			if rope.Place.File != d.File || rope.Place.Span != st.Span {
				continue
			}
			for i, n := range rope.Nodes {
				grips := n.Role == model.Grip && i > 0 && i < len(rope.Nodes)-1
				captures := n.Role == model.Capture && n.Part.Values.HoldsEnd == nil
				if (grips || captures) && !slices.Contains(names, n.Name()) && !d.holdsNamed(st, i) {
					names = append(names, n.Name())
				}
			}
		}
	}
	return names
}

// holdsNamed says whether a node names the end that it holds.
func (d *Document) holdsNamed(st *syntax.Statement, node int) bool {
	line := st.Body.(*syntax.Reeve)
	return node < len(line.Nodes) && slices.ContainsFunc(line.Nodes[node].Clauses, func(c syntax.ClauseUse) bool {
		return c.Word.Text == "holds" && c.Name != nil
	})
}
