package lint

import (
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
)

// longestRule is longer than any name that could be meant for a rule's.
const longestRule = 64

// nearest gives the name that was probably meant: at most a third of its letters
// differ. Empty if none is near.
func nearest(word string, names []string) string {
	best, least := "", -1
	if utf8.RuneCountInString(word) > longestRule {
		return ""
	}
	for _, name := range names {
		d := levenshtein.ComputeDistance(word, name)
		if d <= utf8.RuneCountInString(name)/3 && (least < 0 || d < least) {
			best, least = name, d
		}
	}
	return best
}
