package setups

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// notes are a way in which a rig stands in Markdown; the zero value is a rig file.
type notes struct{ what, before, prefix, after string }

var allNotes = []notes{
	{"plain", "# A lesson\n\n```rig\n", "", "```\n\nload text\n"},
	{"tildes", "~~~~ rig wrong=syntax\n", "", "~~~~\n\nload text\n"},
	{"list", "- The rope:\n\n  ```rig\n", "  ", "  ```\n\nload text\n"},
	{"quote", "> As drawn:\n>\n> ```rig\n", "> ", "> ```\n\nload text\n"},
}

// wrap puts a rig into the document.
func (n notes) wrap(rig string) string {
	if n.what == "" {
		return rig
	}
	lines := strings.Split(strings.TrimSuffix(rig, "\n"), "\n")
	return n.before + n.prefix + strings.Join(lines, "\n"+n.prefix) + "\n" + n.after
}

// skip is the number of lines before the rig.
func (n notes) skip() int { return strings.Count(n.before, "\n") }

// manualOnly leaves the blocks of the manual and what has every word.
func manualOnly(list []sample) []sample {
	return slices.DeleteFunc(list, func(s sample) bool { return !s.manual })
}

// eachPlace goes through the characters of the tokens of a sample; column counts bytes.
func eachPlace(s sample, visit func(line, column int, of token)) {
	for n, tokens := range s.lines() {
		for _, t := range tokens {
			for i := range t.text {
				if r, _ := utf8.DecodeRuneInString(t.text[i:]); r != ' ' && r != '\t' {
					visit(n, t.Start+i, t)
				}
			}
		}
	}
}

// compareGroups compares what an editor says of each place of samples with the names that
// it has for the sorts.
func compareGroups(t *testing.T, list []sample, read [][]string, names map[sort][]string) {
	t.Helper()
	for i, s := range list {
		texts := strings.Split(s.text, "\n")
		k := 0
		eachPlace(s, func(line, column int, of token) {
			if got := read[i][k]; !slices.Contains(names[of.sort], got) {
				t.Errorf("%s, line %d: %s at %d of %q is %q, not %q", s.name, line+1, of.text, column, texts[line], got, names[of.sort])
			}
			k++
		})
	}
}
