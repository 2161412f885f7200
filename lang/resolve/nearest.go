package resolve

import (
	"strings"
	"unicode/utf8"

	"fairlead/lang/diag"
	"fairlead/lang/syntax"
)

const (
	// hintBudget bounds how many names are looked at for hints in one file, so that
	// one of nothing but unknown names still resolves at once.
	hintBudget = 200_000
	// hintLength is the longest name, in code points, for which a near one is sought.
	hintLength = 64
)

// hinter finds names that an author may have meant.
type hinter struct{ left int }

// afford says whether there is still budget to look through n names, and takes it.
func (h *hinter) afford(n int) bool {
	h.left -= n
	return h.left >= 0
}

// near gives the names nearest to a word that is none of them, all of one
// distance, in the order given. A third of the letters may differ; a change of
// case only, or two neighbours swapped, is nearer than that.
func (h *hinter) near(word string, names []string) []string {
	length := utf8.RuneCountInString(word)
	if length > hintLength || !h.afford(len(names)) {
		return nil
	}
	var found []string
	best := -1
	lower := strings.ToLower(word)
	for _, name := range names {
		longer := max(length, utf8.RuneCountInString(name))
		if longer > hintLength || longer-min(length, utf8.RuneCountInString(name)) > longer/3 {
			continue
		}
		distance := syntax.Apart(lower, strings.ToLower(name))
		if distance > longer/3 || best >= 0 && distance > best {
			continue
		}
		if distance != best {
			best, found = distance, nil
		}
		found = append(found, name)
	}
	return found
}

// offerName offers to write the near name over a word, where there is exactly one.
func (f *findings) offerName(d *diag.Diagnostic, word syntax.Word, near []string) {
	if len(near) == 1 {
		offer(d, "write "+near[0], f.replace(word.Span, near[0]))
	}
}

// didYouMean gives the clause that a message ends with; empty without near names.
func didYouMean(near []string) phrase {
	if len(near) == 0 {
		return ""
	}
	return ", did you mean " + either(near[:min(len(near), 3)]) + "?"
}

// either joins names as one says them: "a, b or c".
func either(names []string) phrase { return phrase(joined(names, " or ")) }

// both joins names as one says them: "a, b and c".
func both(names []string) phrase { return phrase(joined(names, " and ")) }

func joined(names []string, word string) string {
	last := len(names) - 1
	if last < 1 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:last], ", ") + word + names[last]
}
