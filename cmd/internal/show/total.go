package show

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/solve/report/page"
)

// Sum is what Total says beyond the findings.
type Sum struct {
	// Rigs is how many rigs were looked at.
	Rigs int
	// Mendable is how many of the findings would be gone if the files were mended.
	Mendable int
	// Accepted is how many more there are that are accepted.
	Accepted int
}

// Total sums findings up in one sentence: "2 errors and 1 warning in 14 rigs; 1 can
// be mended with --fix; 3 more are accepted".
func Total(list []diag.Diagnostic, of Sum) string {
	counts := map[diag.Severity]int{}
	for _, d := range list {
		counts[d.Severity]++
	}
	var parts []string
	for s := diag.Error; s >= diag.Advice; s-- {
		if n := counts[s]; n > 0 {
			parts = append(parts, quantity(n, s))
		}
	}
	total := page.List(parts)
	if len(parts) == 0 {
		total = "nothing found"
	}
	total += " in " + plural(of.Rigs, "rig")
	if of.Mendable > 0 {
		total += fmt.Sprintf("; %d can be mended with --fix", of.Mendable)
	}
	switch {
	case of.Accepted == 0:
		return total
	case len(parts) == 0 && of.Accepted == 1:
		return total + " but 1 that is accepted"
	case len(parts) == 0:
		return fmt.Sprintf("%s but %d that are accepted", total, of.Accepted)
	case of.Accepted == 1:
		return total + "; 1 more is accepted"
	}
	return fmt.Sprintf("%s; %d more are accepted", total, of.Accepted)
}

func quantity(n int, s diag.Severity) string {
	if s == diag.Advice {
		return plural(n, "piece") + " of advice"
	}
	return plural(n, s.String())
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
