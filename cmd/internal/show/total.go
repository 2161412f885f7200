package show

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/solve/report/page"
)

// Total sums findings up in one sentence: "2 errors and 1 warning in 14 rigs; 1
// has a fix".
func Total(list []diag.Diagnostic, rigs int) string {
	counts := map[diag.Severity]int{}
	mended := 0
	for _, d := range list {
		counts[d.Severity]++
		if len(d.Fixes) > 0 {
			mended++
		}
	}
	var parts []string
	for s := diag.Error; s >= diag.Advice; s-- {
		if n := counts[s]; n > 0 {
			parts = append(parts, quantity(n, s))
		}
	}
	if len(parts) == 0 {
		return "nothing found in " + plural(rigs, "rig")
	}
	total := page.List(parts) + " in " + plural(rigs, "rig")
	switch mended {
	case 0:
		return total
	case 1:
		return total + "; 1 has a fix"
	}
	return fmt.Sprintf("%s; %d have a fix", total, mended)
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
