package show

import (
	"fmt"
	"io"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve/report/page"
)

// Mended writes what was mended in files and what is left in them. What could have
// been mended and was not says why.
func Mended(w io.Writer, files []*lint.Mending, paint page.Paint) error {
	t := text{paint: paint}
	for _, m := range files {
		for _, s := range m.Steps {
			t.step(s)
		}
	}
	for _, m := range files {
		for _, d := range m.Left.Findings {
			t.finding(d, append([]string{remedy(d)}, refused(m, d)...)...)
		}
	}
	return t.write(w)
}

// step writes one fix that was made, with the line as it was and as it is.
func (t *text) step(s lint.Step) {
	t.sentence("ok", page.Plain, s.Finding.Message)
	p := s.Finding.Place
	t.words(where(p), indent, page.Faint)
	t.line(p, indent+2, "was  ")
	if s.Now.File != nil {
		t.line(s.Now, indent+2, "now  ")
	}
	t.words(s.Finding.Rule+". Mended: "+told(s.Fix), indent, page.Plain)
	t.out.WriteString("\n")
}

// refused says why the fix of a finding was not made; empty if there was no reason.
func refused(m *lint.Mending, d diag.Diagnostic) []string {
	i := slices.IndexFunc(m.Refused, func(r lint.Refusal) bool {
		return r.Finding.Place == d.Place && r.Finding.Rule == d.Rule && r.Finding.Message == d.Message
	})
	if i < 0 {
		return nil
	}
	return []string{"Not mended: " + page.Clean(m.Refused[i].Why)}
}

// MendedTotal sums up what was mended in files and what is left, in one sentence: "2
// fixes made; still 1 warning in 14 rigs".
func MendedTotal(files []*lint.Mending) string {
	steps, rigs, accepted, stopped := 0, 0, 0, false
	var left []diag.Diagnostic
	for _, m := range files {
		steps += len(m.Steps)
		rigs += len(m.File.Model.Rigs)
		accepted += m.Left.Accepted
		left = append(left, m.Left.Findings...)
		stopped = stopped || m.Stopped
	}
	total := "no fix made; "
	if steps > 0 {
		total = fixes(steps) + " made; "
	}
	if len(left) > 0 {
		total += "still "
	}
	total += Total(left, Sum{Rigs: rigs, Accepted: accepted})
	if stopped {
		total += "; there may be more to mend"
	}
	return total
}

func fixes(n int) string {
	if n == 1 {
		return "1 fix"
	}
	return fmt.Sprintf("%d fixes", n)
}
