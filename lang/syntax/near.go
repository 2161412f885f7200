package syntax

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// nearest gives the words that were probably meant, all of one distance: at most two
// letters off, or a third of the length; one letter for words of two or three. Capitals count
// for nothing, and two neighbours swapped for one letter. Empty if none is near.
func nearest(word string, among []string) []string {
	const longest = 64 // longer words resemble none of the notation
	length := utf8.RuneCountInString(word)
	if length > longest {
		return nil
	}
	least := max(2, length/3)
	if length <= 3 {
		least = min(length-1, 1)
	}
	small, allowed := strings.ToLower(word), least
	var near []string
	for _, candidate := range among {
		n, letters := utf8.RuneCountInString(candidate), strings.ToLower(candidate)
		if candidate == word || max(n-length, length-n) > allowed || n <= allowed && letters != small {
			continue
		}
		d := Apart(small, letters)
		if d > least || slices.Contains(near, candidate) {
			continue
		}
		if d < least {
			least, near = d, nil
		}
		near = append(near, candidate)
	}
	return near
}

// Apart gives the number of letters by which two words differ; two neighbours swapped
// count as one.
func Apart(a, b string) int {
	d := levenshtein.ComputeDistance(a, b)
	if d == 2 && swapped([]rune(a), []rune(b)) {
		return 1
	}
	return d
}

func swapped(a, b []rune) bool {
	if len(a) != len(b) {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && string(a[i+2:]) == string(b[i+2:])
}

// hint is the end of a message that offers the near words; empty without any.
func hint(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return ", did you mean " + list(near[:min(len(near), 3)], "or") + "?"
}

// hintOr is hint, with another end where no word is near.
func hintOr(near []string, end string) string {
	if len(near) == 0 {
		return end
	}
	return hint(near)
}

// offer adds the fix that writes the near word, where there is exactly one.
func (r *reporter) offer(d *diag.Diagnostic, at source.Span, near []string) {
	if len(near) == 1 {
		edit := diag.Edit{Place: r.file.At(at), NewText: near[0]}
		d.Fixes = append(d.Fixes, diag.Fix{Title: "write " + near[0], Edits: []diag.Edit{edit}})
	}
}
