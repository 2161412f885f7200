package rigfmt

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

var (
	blanks   = rapid.SampledFrom([]string{" ", "  ", "\t", " \t "})
	comment  = rapid.SampledFrom([]string{"# one", "#two", "#   three  ", "# reeve a: b / c", "#\tü \"x"})
	lineFeed = rapid.SampledFrom([]string{"\n", "\n", "\r\n"})
	name     = rapid.StringMatching(`[a-cü]([a-z0-9_]{0,8}[a-z0-9])?`)
)

// freeName gives a name that is no word of the notation.
func freeName(t *rapid.T) string {
	return name.Filter(func(s string) bool { return !syntax.Reserved(s) }).Draw(t, "name")
}

// randomPart writes a part statement with clauses of its kind in any order.
func randomPart(t *rapid.T) []string {
	kind := rapid.SampledFrom(syntax.Kinds()).Draw(t, "kind")
	words := []string{kind.Word, freeName(t)}
	if rapid.Bool().Draw(t, "model") {
		words = append(words, freeName(t))
	}
	clauses := rapid.Permutation(syntax.ClausesOf(kind.Word)).Draw(t, "clauses")
	clauses = clauses[:rapid.IntRange(0, len(clauses)).Draw(t, "number of clauses")]
	on := rapid.IntRange(0, 2*len(clauses)+1).Draw(t, "on")
	for i, word := range clauses {
		if i == on {
			words = append(words, "on", freeName(t))
		}
		c, _ := syntax.ClauseNamed(word)
		words = append(words, strings.Fields(c.Example)...)
	}
	return words
}

// randomReeve writes a reeving line; a "\n" among the words is a line end.
func randomReeve(t *rapid.T) []string {
	words := []string{"reeve", freeName(t), ":", freeName(t)}
	for range rapid.IntRange(1, 30).Draw(t, "strokes") {
		words = append(words, randomBreak(t)...)
		words = append(words, rapid.SampledFrom([]string{"/", `\`, "~"}).Draw(t, "stroke"))
		words = append(words, randomBreak(t)...)
		words = append(words, freeName(t))
		if rapid.IntRange(0, 4).Draw(t, "clauses") == 0 {
			words = append(words, "(", "figure-eight", "angle", "90", "deg", "holds", ")")
		}
	}
	return words
}

func randomBreak(t *rapid.T) []string {
	switch rapid.IntRange(0, 8).Draw(t, "break") {
	case 0:
		return []string{"\n"}
	case 1:
		return []string{comment.Draw(t, "comment"), "\n"}
	case 2:
		return []string{"\n", comment.Draw(t, "comment"), "\n"}
	}
	return nil
}

// randomFile writes statements with any layout that the grammar allows.
func randomFile(t *rapid.T) string {
	var b strings.Builder
	for range rapid.IntRange(1, 8).Draw(t, "statements") {
		var words []string
		switch rapid.IntRange(0, 3).Draw(t, "class") {
		case 0:
			words = randomReeve(t)
		case 1:
			words = []string{"expect", "advantage", "3", ":", "1", "by", freeName(t)}
		default:
			words = randomPart(t)
		}
		for _, word := range words {
			if word == "\n" {
				word = lineFeed.Draw(t, "line end")
			}
			b.WriteString(word + blanks.Draw(t, "blank"))
		}
		if rapid.Bool().Draw(t, "commented") {
			b.WriteString(comment.Draw(t, "comment"))
		}
		for range rapid.IntRange(1, 4).Draw(t, "line ends") {
			b.WriteString(lineFeed.Draw(t, "line end"))
		}
		if rapid.IntRange(0, 3).Draw(t, "comment line") == 0 {
			b.WriteString(comment.Draw(t, "comment") + lineFeed.Draw(t, "line end"))
		}
	}
	return b.String()
}

func TestAnyLayoutIsBroughtIntoStyle(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text := randomFile(r)
		require.False(r, hasErrors(syntax.Parse(source.New("random.rig", text))), "the file is good: %q", text)
		formatted(&quiet{TB: t, r: r}, text)
	})
}

// quiet reports failures to rapid, so that it can shrink the file.
type quiet struct {
	testing.TB
	r *rapid.T
}

func (q *quiet) Errorf(format string, args ...any) { q.r.Errorf(format, args...) }
func (q *quiet) FailNow()                          { q.r.FailNow() }
func (q *quiet) Helper()                           {}
