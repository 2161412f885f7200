package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// Caution stands under everything that is computed.
const Caution = "A calculation, not a permission: makers' instructions, local codes and competent " +
	"supervision decide. Static forces only."

// widestLabel is how wide a label may be before its answer is pushed out of the
// column of answers.
const widestLabel = 24

// Text writes rigs as text. origin says that the file of each stands beside its
// name, for rigs of several files.
func Text(w io.Writer, list []*solve.Result, origin bool, paint page.Paint) error {
	var b strings.Builder
	for _, res := range list {
		t := text{res: res, scale: scaleOf(res), paint: paint, out: &b}
		t.title(origin)
		t.hauls()
		t.answers()
		b.WriteString("\n")
	}
	if len(list) > 0 {
		writeCaution(&b, paint)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func writeCaution(b *strings.Builder, paint page.Paint) {
	for _, line := range page.Wrap(Caution, page.Columns) {
		b.WriteString(paint.Set(page.Faint, line) + "\n")
	}
}

// text is one rig being written.
type text struct {
	res   *solve.Result
	scale scale
	paint page.Paint
	out   *strings.Builder
}

func (t *text) line(l page.Line) { fmt.Fprintln(t.out, l.String(t.paint)) }

// title writes the rig's name and title, and its file at the right edge.
func (t *text) title(origin bool) { writeTitle(t.out, t.res, origin, t.paint) }

func writeTitle(b *strings.Builder, res *solve.Result, origin bool, paint page.Paint) {
	var l page.Line
	l.Put(0, page.Clean(res.Rig.Name), page.Strong)
	column := l.End() + 3
	for i, words := range page.Wrap(page.Clean(res.Rig.Title), page.Columns-column) {
		if i > 0 {
			fmt.Fprintln(b, l.String(paint))
			l = page.Line{}
		}
		l.Put(column, words, page.Plain)
	}
	if f := res.Rig.Place.File; origin && f != nil {
		name := page.Clean(f.Name)
		if l.End()+3+page.Width(name) > page.Columns {
			fmt.Fprintln(b, l.String(paint))
			l = page.Line{}
		}
		l.Put(max(l.End(), page.Columns-page.Width(name)), name, page.Faint)
	}
	fmt.Fprintln(b, l.String(paint))
}

// hauls writes the result of each hauler with the figures on the ropes, or why
// there is none.
func (t *text) hauls() {
	res := t.res
	if res.Rig.Incomplete {
		t.sentence(incomplete)
	}
	if s := noHaul(res); s != "" {
		t.sentence(s)
	}
	hauls := res.Hauls()
	if len(hauls) > 1 && len(solvedOf(hauls)) > 0 {
		t.blocks(hauls)
		return
	}
	for _, p := range hauls {
		t.headline(p)
	}
	if res.Status == solve.Unsolved {
		return
	}
	t.ropes(res.Rig.Ropes, t.shown())
}

// shown gives the phase whose forces stand on the ropes: the haul, or where that has
// no balance, hold; nil if that has none either.
func (t *text) shown() *solve.Phase {
	if solved := solvedOf(t.res.Hauls()); len(solved) > 0 {
		return solved[0]
	}
	if hold := t.res.Hold(); hold != nil && hold.Status == solve.OK {
		return hold
	}
	return nil
}

// blocks writes each of several hauls on its own, with the ropes that carry
// something in it; ropes that carry nothing in any stand with the first.
func (t *text) blocks(hauls []*solve.Phase) {
	idle := idleRopes(t.res)
	for _, p := range hauls {
		fmt.Fprintf(t.out, "\n%s hauls:\n", page.Clean(p.Hauler.Name))
		t.headline(p)
		if !p.Solved() {
			continue
		}
		var own []*model.Rope
		for _, r := range t.res.Rig.Ropes {
			if carries(p, r) || idle[r] {
				own = append(own, r)
			}
		}
		t.ropes(own, p)
		idle = nil
	}
}

// solvedOf gives the phases that have tensions.
func solvedOf(phases []*solve.Phase) []*solve.Phase {
	var list []*solve.Phase
	for _, p := range phases {
		if p.Solved() {
			list = append(list, p)
		}
	}
	return list
}

// idleRopes are those that carry nothing in any haul, or that an error left out.
func idleRopes(res *solve.Result) map[*model.Rope]bool {
	idle := map[*model.Rope]bool{}
	for _, r := range res.Rig.Ropes {
		idle[r] = !slices.ContainsFunc(solvedOf(res.Hauls()), func(p *solve.Phase) bool { return carries(p, r) })
	}
	return idle
}

// carries says whether a rope carries something in a phase.
func carries(p *solve.Phase, r *model.Rope) bool {
	return slices.ContainsFunc(p.Strands, func(s solve.Strand) bool { return s.Rope == r && s.Known() && !s.Slack })
}

// sentence writes a result that is no advantage.
func (t *text) sentence(s string) {
	for _, line := range page.Wrap(s, page.Columns) {
		fmt.Fprintln(t.out, t.paint.Set(page.Strong, line))
	}
}

// answers writes the facts that are asked next.
func (t *text) answers() {
	if t.res.Status == solve.Unsolved {
		return
	}
	all := facts(t.res, t.scale)
	if len(all) == 0 {
		return
	}
	fmt.Fprintln(t.out)
	writeFacts(t.out, all, t.paint)
}

// writeFacts writes labels and answers in two columns.
func writeFacts(b *strings.Builder, all []fact, paint page.Paint) {
	widest := 0
	for _, f := range all {
		if w := page.Width(f.label); w <= widestLabel {
			widest = max(widest, w)
		}
	}
	column := margin + widest + 3
	for _, f := range all {
		start := max(column, margin+page.Width(f.label)+3)
		for i, line := range page.Wrap(f.text, page.Columns-start) {
			var l page.Line
			if i == 0 {
				l.Put(margin, f.label, f.style)
			}
			l.Put(start, line, f.style)
			fmt.Fprintln(b, l.String(paint))
		}
	}
}
