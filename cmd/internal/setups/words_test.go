package setups

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/lang/syntax"
)

// root is the top of the tree, seen from this package.
const root = "../../.."

// editors is the folder of the set-ups of editors.
const editors = root + "/examples/editors"

// wordLists are the lists that highlighting needs, each by its name in the markers.
func wordLists() map[string][]string {
	lists := map[string][]string{
		"statements": syntax.Statements(),
		"structure":  syntax.Structure(),
		"claims":     syntax.ClaimWords(),
		"classes":    syntax.ClassWords(),
		"settings":   syntax.SettingWords(),
		"units":      unitWords(),
	}
	add := func(list, word string) {
		if !slices.Contains(lists[list], word) {
			lists[list] = append(lists[list], word)
		}
	}
	for _, k := range syntax.Kinds() {
		add("kinds", k.Word)
	}
	for _, c := range syntax.Clauses() {
		add("clauses", c.Word)
		if c.Second != "" {
			add("clauses", c.Second)
		}
		switch c.Shape {
		case syntax.Name, syntax.MaybeName:
			add("naming", c.Word)
		case syntax.FreeWord:
			add("free", c.Word)
		}
	}
	for _, f := range syntax.Figures() {
		for _, w := range strings.Fields(f.Name) {
			add("figures", w)
		}
	}
	for _, list := range []string{"statements", "kinds", "clauses", "structure"} {
		for _, w := range lists[list] {
			add("reserved", w)
		}
	}
	return lists
}

// marked are the files with word lists: how a list is marked in each, and written. The
// first group of the mark is what stays before the list, the second its name, the third
// what stays after it.
var marked = []struct {
	file  string
	mark  *regexp.Regexp
	write func(list string, words []string) string
}{
	{
		"vscode/syntaxes/rig.tmLanguage.json",
		regexp.MustCompile(`(\(\?#([a-z]+)\))[^#]*(\(\?#end\))`),
		func(_ string, words []string) string {
			return "(?:" + strings.Join(longestFirst(words), "|") + ")"
		},
	},
	{
		"vim/autoload/fairlead/words.vim",
		regexp.MustCompile(`(?s)(" generated: ([a-z]+)\n).*?(" end\n)`),
		func(list string, words []string) string {
			return "let fairlead#words#" + list + " = split(\n      \\ '" + folded("\n      \\ .' ", words, "'") + ")\n"
		},
	},
	{
		"emacs/rig-mode.el",
		regexp.MustCompile(`(?s)(;; generated: ([a-z]+)\n).*?(;; end\n)`),
		func(list string, words []string) string {
			return "(defconst rig--" + list + "\n  '(" + folded("\n    ", quotedWords(words), "") + "))\n"
		},
	},
}

// TestWordLists compares the word lists of the highlighting with the vocabulary, and
// writes them with -update.
func TestWordLists(t *testing.T) {
	for _, m := range marked {
		t.Run(m.file, func(t *testing.T) {
			lists := wordLists()
			path := filepath.Join(editors, m.file)
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			used := map[string]bool{}
			now := m.mark.ReplaceAllStringFunc(string(text), func(list string) string {
				parts := m.mark.FindStringSubmatch(list)
				used[parts[2]] = true
				if !assert.NotEmpty(t, lists[parts[2]], "there is no list %s", parts[2]) {
					return list
				}
				return parts[1] + m.write(parts[2], lists[parts[2]]) + parts[3]
			})
			if now != string(text) {
				langtest.Golden(t, path, now)
			}
			for list := range lists {
				assert.True(t, used[list], "the list %s is not used", list)
			}
		})
	}
}

// longestFirst sorts words so that none hides a longer one that begins with it.
func longestFirst(words []string) []string {
	sorted := slices.Clone(words)
	slices.SortStableFunc(sorted, func(a, b string) int { return len(b) - len(a) })
	return sorted
}

func quotedWords(words []string) []string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = `"` + w + `"`
	}
	return list
}

// folded writes words on lines of moderate length; begin stands before each line but
// the first, end after each but the last.
func folded(begin string, words []string, end string) string {
	const longest = 60
	var lines []string
	line := ""
	for _, w := range words {
		if line != "" && len(line)+len(w) > longest {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	return strings.Join(append(lines, line), end+begin) + end
}
