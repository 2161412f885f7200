package show

import (
	"fmt"
	"io"

	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/solve/report/page"
)

// Accepted writes, rig by rig, what the authors of rigs accept, with their reasons,
// and after it what they expect to be found because a rig shows it on purpose.
func Accepted(w io.Writer, of lint.Outcome, paint page.Paint) error {
	t := text{paint: paint}
	var rig *model.Rig
	for _, a := range of.Acceptances {
		t.rig(&rig, a.Rig, "")
		t.acceptance(a)
	}
	rig = nil
	for _, e := range of.Expectations {
		t.rig(&rig, e.Rig, "expected on purpose in ")
		t.expectation(e)
	}
	return t.write(w)
}

// rig writes the name of a rig where another begins.
func (t *text) rig(last **model.Rig, rig *model.Rig, word string) {
	if *last == rig {
		return
	}
	*last = rig
	var l page.Line
	l.Put(0, word+page.Clean(rig.Name), page.Strong)
	l.Put(l.End()+3, page.Clean(rig.Title), page.Plain)
	fmt.Fprintf(&t.out, "%s\n\n", l.String(t.paint))
}

func (t *text) acceptance(a lint.Acceptance) {
	if a.State != lint.Met {
		t.open(a.State, meant(&a.Rule, a.Accept.At), "accepted", where(a.Place)+": "+quoted(a))
		return
	}
	for _, d := range a.Findings {
		t.finding(d, fmt.Sprintf("%s, accepted in line %d: %s", d.Rule, lineOf(a.Place), quoted(a)))
	}
}

func (t *text) expectation(e lint.Expectation) {
	if e.State != lint.Met {
		t.open(e.State, meant(e.Rule, e.Expect.Of), "expected", where(e.Place))
		return
	}
	for _, d := range e.Findings {
		t.finding(d, fmt.Sprintf("%s, expected in line %d", d.Rule, lineOf(e.Place)))
	}
}

// open writes a claim that meets nothing.
func (t *text) open(state lint.State, claim, how, below string) {
	mark, says := "!!", claim+" is "+how+", but not found"
	switch state {
	case lint.NotAllowed:
		says = claim + " cannot be " + how
	case lint.NotJudged:
		mark, says = "??", claim+" is "+how+", but errors of the rig hide whether it is there"
	}
	t.sentence(mark, page.Alarm, says)
	t.words(below, indent, page.Plain)
	t.out.WriteString("\n")
}

// meant names what a claim names, as it is written: "no-capture at top".
func meant(rule, part *syntax.Word) string {
	if part == nil {
		return lint.Clipped(rule.Text)
	}
	return lint.Clipped(rule.Text) + " at " + lint.Clipped(part.Text)
}

func quoted(a lint.Acceptance) string { return `"` + page.Clean(a.Because.Value) + `"` }

func lineOf(p source.Place) int { return p.File.Line(p.Span.Start) + 1 }

// AcceptedTotal sums claims about findings up in one sentence: "3 findings accepted in
// 14 rigs, 1 acceptance open; 2 findings expected".
func AcceptedTotal(of lint.Outcome, rigs int) string {
	met, open := 0, 0
	for _, a := range of.Acceptances {
		met += len(a.Findings)
		if a.State != lint.Met {
			open++
		}
	}
	total := "nothing accepted"
	if met > 0 {
		total = plural(met, "finding") + " accepted"
	}
	total += " in " + plural(rigs, "rig")
	if open > 0 {
		total += "; " + plural(open, "acceptance") + " without a finding"
	}
	met, open = 0, 0
	for _, e := range of.Expectations {
		met += len(e.Findings)
		if e.State != lint.Met {
			open++
		}
	}
	if met > 0 {
		total += "; " + plural(met, "finding") + " expected"
	}
	if open > 0 {
		total += "; " + plural(open, "expectation") + " without a finding"
	}
	return total
}
