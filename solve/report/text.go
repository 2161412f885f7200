package report

import (
	"fmt"
	"io"
	"strings"

	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// Caution stands under everything that is computed.
const Caution = "A calculation, not a permission: makers' instructions, local codes and competent " +
	"supervision decide. Static forces only."

// resultColumn is where the pull stands beside the advantage.
const resultColumn = 24

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
		t.results()
		t.body()
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

// results writes one line for each hauler, or why there is none.
func (t *text) results() {
	res := t.res
	if res.Rig.Incomplete {
		t.sentence(incomplete)
	}
	if s := noHaul(res); s != "" {
		t.sentence(s)
	}
	column := t.pullColumn()
	for _, p := range res.Hauls() {
		if p.Status == solve.OK {
			t.advantage(p, column)
		} else {
			t.sentence(outcome(p))
		}
	}
}

// pullColumn gives the column of what must be pulled: the usual one if every
// line then fits, else right after the widest advantage.
func (t *text) pullColumn() int {
	widest, fits := 0, true
	for _, p := range t.res.Hauls() {
		if p.Status == solve.OK {
			widest = max(widest, page.Width(head(p)))
			fits = fits && resultColumn+page.Width(t.pull(p)) <= page.Columns
		}
	}
	if fits {
		return max(resultColumn, widest+3)
	}
	return widest + 3
}

// sentence writes a result that is no advantage.
func (t *text) sentence(s string) {
	for _, line := range page.Wrap(s, page.Columns) {
		fmt.Fprintln(t.out, t.paint.Set(page.Strong, line))
	}
}

// head gives the advantage of a haul and how it is made: "3 : 1 simple".
func head(p *solve.Phase) string {
	if p.Ideal == nil {
		return "raises; no single ratio"
	}
	return strings.TrimSpace(ratio(*p.Ideal) + " " + string(p.Class))
}

// advantage writes "3 : 1 simple   pull 1/3 of the load".
func (t *text) advantage(p *solve.Phase, column int) {
	for i, line := range page.Wrap(t.pull(p), page.Columns-column) {
		var l page.Line
		if i == 0 {
			l.Put(0, head(p), page.Strong)
		}
		l.Put(column, line, page.Plain)
		t.line(l)
	}
}

// pull says what the haulers must pull in a phase.
func (t *text) pull(p *solve.Phase) string {
	verb := "pull "
	if len(t.res.Hauls()) > 1 {
		verb = page.Clean(p.Hauler.Name) + " pulls "
	}
	if p.Pull == nil {
		return verb + "unknown"
	}
	s := verb + t.scale.share(*p.Pull)
	if t.scale.weighs() && !p.Pull.IsZero() {
		s += ", " + t.scale.say(*p.Pull)
		s += t.each(p)
	}
	return s
}

// each says each person's part of the pull where their number is one number.
func (t *text) each(p *solve.Phase) string {
	people := p.Hauler.Values.People
	if people == nil || people.IsRange() || !people.Low.IsInt() || people.Low.Num().Int64() < 2 {
		return ""
	}
	n := lp.FromRat(people.Low)
	return ", " + t.scale.say(p.Pull.Quo(n)) + " for each of " + number(n)
}

// body writes the ropes with their figures, then the facts.
func (t *text) body() {
	if t.res.Status == solve.Unsolved {
		return
	}
	t.ropes()
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
		style := page.Plain
		if f.faint {
			style = page.Faint
		}
		start := max(column, margin+page.Width(f.label)+3)
		for i, line := range page.Wrap(f.text, page.Columns-start) {
			var l page.Line
			if i == 0 {
				l.Put(margin, f.label, style)
			}
			l.Put(start, line, style)
			fmt.Fprintln(b, l.String(paint))
		}
	}
}
