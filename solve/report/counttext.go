package report

import (
	"fmt"
	"io"
	"strings"

	"fairlead/solve"
	"fairlead/solve/count"
	"fairlead/solve/report/page"
)

// Counted is a rig with the counts of its hauls that raise something.
type Counted struct {
	*solve.Result
	Counts []*count.Count
}

// CountOf counts every haul of a rig.
func CountOf(res *solve.Result) Counted {
	c := Counted{Result: res}
	for _, p := range res.Hauls() {
		if counted := count.Of(res, p); counted != nil {
			c.Counts = append(c.Counts, counted)
		}
	}
	return c
}

// sayingWidth is how wide the sentences of a count are at the least; a piece of
// reeving line that leaves less stands below its sentence.
const sayingWidth = 44

// stepIndent is where the sentence of a step begins.
const stepIndent = 4

// CountText writes the counts of rigs as numbered sentences, each with the piece
// of reeving line that it is about and the figures known so far on it.
func CountText(w io.Writer, list []Counted, origin bool, paint page.Paint) error {
	var b strings.Builder
	for _, rig := range list {
		writeTitle(&b, rig.Result, origin, paint)
		if rig.Rig.Incomplete {
			fmt.Fprintln(&b, paint.Set(page.Strong, incomplete))
		}
		writeUncounted(&b, rig, paint)
		for _, c := range rig.Counts {
			writeCount(&b, rig.Result, c, paint)
		}
		b.WriteString("\n")
	}
	if len(list) > 0 {
		writeCaution(&b, paint)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// writeUncounted says why a haul has no count.
func writeUncounted(b *strings.Builder, rig Counted, paint page.Paint) {
	say := func(s string) {
		for _, line := range page.Wrap(s, page.Columns) {
			fmt.Fprintln(b, paint.Set(page.Strong, line))
		}
	}
	if s := noHaul(rig.Result); s != "" {
		say(s)
	}
	for _, p := range rig.Hauls() {
		switch {
		case p.Status != solve.OK:
			say(outcome(p))
		case p.Pull.IsZero():
			say("nothing to count: " + page.Clean(p.Hauler.Name) + " needs no pull")
		}
	}
}

func writeCount(b *strings.Builder, res *solve.Result, c *count.Count, paint page.Paint) {
	fmt.Fprintln(b)
	v := voiceOf(res, c)
	if len(res.Hauls()) > 1 {
		fmt.Fprintln(b, page.Clean(c.Phase.Hauler.Name)+" hauls:")
	}
	width := fragmentWidth(c)
	sentences := make([]string, len(c.Steps))
	for i, s := range c.Steps {
		sentences[i] = v.sentence(s)
	}
	for i := 0; i < len(c.Steps); i++ {
		s := c.Steps[i]
		writeStep(b, fmt.Sprint(i+1), sentences[i], v.fragment(s.Line), width, paint)
		for _, line := range v.equations(s) {
			var l page.Line
			l.Put(stepIndent+2, line, page.Plain)
			fmt.Fprintln(b, l.String(paint))
		}
		if again := againAfter(c.Steps, sentences, i); again.times > 0 {
			i += again.steps()
			writeStep(b, "…", again.sentence(i+1), "", 0, paint)
		}
	}
	for i, line := range v.closing(c) {
		style := page.Plain
		if i == 0 {
			style = page.Strong
		}
		for _, part := range page.Wrap(line, page.Columns) {
			fmt.Fprintln(b, paint.Set(style, part))
		}
	}
}

// fragmentWidth gives the width of the widest piece of reeving line that stands
// beside its sentence.
func fragmentWidth(c *count.Count) int {
	width := 0
	for _, s := range c.Steps {
		if w := page.Width(voice{}.fragment(s.Line)); w <= page.Columns-stepIndent-sayingWidth-3 {
			width = max(width, w)
		}
	}
	return width
}

// writeStep writes one step: its number, its sentence, and at the right the piece
// of reeving line, or below where it is too wide.
func writeStep(b *strings.Builder, number, sentence, fragment string, width int, paint page.Paint) {
	column := page.Columns - width
	beside := page.Width(fragment) <= width
	for i, line := range page.Wrap(sentence, column-3-stepIndent) {
		var l page.Line
		if i == 0 {
			l.PutEnding(stepIndent-3, number, page.Plain)
		}
		l.Put(stepIndent, line, page.Plain)
		if i == 0 && beside {
			l.Put(column, fragment, page.Strong)
		}
		fmt.Fprintln(b, l.String(paint))
	}
	if beside {
		return
	}
	for _, line := range page.Wrap(fragment, page.Columns-stepIndent-2) {
		var l page.Line
		l.Put(stepIndent+2, line, page.Strong)
		fmt.Fprintln(b, l.String(paint))
	}
}
