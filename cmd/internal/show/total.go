package show

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/solve/report/page"
)

// Total sums findings up in one sentence, with how many more were accepted: "2 errors
// and 1 warning in 14 rigs; 1 has a fix; 3 more are accepted".
func Total(list []diag.Diagnostic, accepted, rigs int) string {
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
	total := page.List(parts)
	if len(parts) == 0 {
		total = "nothing found"
	}
	total += " in " + plural(rigs, "rig")
	switch {
	case mended == 1:
		total += "; 1 has a fix"
	case mended > 1:
		total += fmt.Sprintf("; %d have a fix", mended)
	}
	switch {
	case accepted == 0:
		return total
	case len(parts) == 0 && accepted == 1:
		return total + " but 1 that is accepted"
	case len(parts) == 0:
		return fmt.Sprintf("%s but %d that are accepted", total, accepted)
	case accepted == 1:
		return total + "; 1 more is accepted"
	}
	return fmt.Sprintf("%s; %d more are accepted", total, accepted)
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
