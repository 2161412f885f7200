package syntax

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// hostileTexts are texts that nobody writes, of a size given by n: each must be
// read in a time that grows no faster than its length.
func hostileTexts(n int) map[string]string {
	repeat := strings.Repeat
	return map[string]string{
		"strokes":          "reeve a: x" + repeat(" / x", n),
		"strokes on lines": "reeve a: x" + repeat("\n/ x", n),
		"glued strokes":    "reeve a: x" + repeat("/x", n),
		"no strokes":       "reeve a: x" + repeat(" x", n),
		"no nodes":         "reeve a: x" + repeat(" /", n),
		"deep parentheses": "reeve a: x " + repeat("(", n) + repeat(")", n),
		"open parentheses": "reeve a: x " + repeat("(", n),
		"many parentheses": "reeve a: x " + repeat("(holds)", n),
		"long node":        "reeve a: x (" + repeat("angle 1 deg ", n) + ")",
		"clauses":          "pulley a " + repeat("strength 5 kN ", n),
		"stray words":      "pulley a " + repeat("foo ", n),
		"misspelt clauses": "pulley a " + repeat("foo 5 ", n),
		"ons":              "pulley a " + repeat("on b ", n),
		"bad claims":       repeat("expect pull foo\n", n/10),
		"long claim":       "expect held " + repeat("when released ", n) + "x",
		"changes":          "include a as b " + repeat("with c mass 5 kg ", n),
		"bytes":            repeat("\x00a", n),
		"broken UTF-8":     repeat("\xff ", n),
		"long word":        "pulley " + repeat("a", 50*n),
		"long dotted name": "pulley " + repeat("a.", 50*n) + "a",
		"huge number":      "load a mass " + repeat("1", 50*n) + " kg",
		"huge exponent":    "load a mass 1e" + repeat("9", 50*n) + " kg",
		"long unit":        "load a mass 1" + repeat("k", 50*n),
		"bad lines":        repeat("foo bar\n", n),
		"dangling strokes": repeat("reeve a: x /\n# c\n", n),
		"comment lines":    repeat("# x\n", n) + "rig a",
		"blank lines":      repeat("\n", n),
		"carriage returns": repeat("\r", n) + "x" + repeat("\rx", n),
		"open quotes":      repeat("rig a \"\\a\n", n),
		"long text":        "rig a \"" + repeat(`\"`, 50*n) + `"`,
	}
}

func TestHostileTexts(t *testing.T) {
	small := hostileTexts(300)
	for name, text := range hostileTexts(10_000) {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			Parse(source.New("hostile.rig", text))
			// Well over ten times what it takes, yet far below what a quadratic step costs.
			require.Less(t, time.Since(start), 20*time.Second)
			parse(t, small[name])
		})
	}
}

// A text in another encoding: the first places are reported, the rest is counted, and
// faults of other kinds stay.
func TestBadCharactersAreCounted(t *testing.T) {
	for places, says := range map[int]string{
		mostBadPlaces:      "this is not UTF-8 text",
		mostBadPlaces + 1:  "this is not UTF-8 text, and there is 1 more such place",
		3 * mostBadPlaces:  "this is not UTF-8 text, and there are 40 more such places",
		30 * mostBadPlaces: "this is not UTF-8 text, and there are 580 more such places",
	} {
		tree := parse(t, strings.Repeat("# f\xfcr\n", places)+"pulley top strenght 3 kN\n")
		require.Len(t, tree.Problems, mostBadPlaces+1)
		require.Equal(t, "this is not UTF-8 text", tree.Problems[mostBadPlaces-2].Message)
		require.Equal(t, says, tree.Problems[mostBadPlaces-1].Message)
		require.Equal(t, RuleUnknownClause, tree.Problems[mostBadPlaces].Rule)
	}
}

// Of what is no text the first faults are reported, of whatever kind.
func TestWhatIsNoTextHasFewFaults(t *testing.T) {
	tree := parse(t, strings.Repeat("\x00 \"a \x01\x02\n", 300))
	require.Len(t, tree.Problems, mostBadPlaces)
	for i, p := range tree.Problems {
		require.Equal(t, i == mostBadPlaces-1, strings.Contains(p.Message, "this is probably no rig file"), p.Message)
	}
	require.Contains(t, tree.Problems[mostBadPlaces-1].Message, ", and 1180 more faults follow;")
	require.Len(t, parse(t, "anchor \x00a\nfoo\n").Problems, 2, "a stray byte is no reason to say less")
}

// A text saved in another form has one fault, and it says how to save it.
func TestAnotherEncodingIsOneFault(t *testing.T) {
	text := "anchor head\nload litter mass 5 kg\npulley top on head holds litter\n"
	little, big := "\xff\xfe", "\xfe\xff"
	for _, c := range text {
		little += string(c) + "\x00"
		big += "\x00" + string(c)
	}
	for _, one := range []string{little, big} {
		tree := parse(t, one)
		require.Len(t, tree.Problems, 1)
		require.Equal(t, "this is UTF-16 text; save the file as UTF-8", tree.Problems[0].Message)
	}
	tree := parse(t, strings.ReplaceAll(text, "\n", "\r"))
	require.Len(t, tree.Problems, 1)
	require.Equal(t, "the lines of this file end in a carriage return alone; save it with line feeds", tree.Problems[0].Message)
	require.Equal(t, source.Span{Start: 11, End: 12}, tree.Problems[0].Place.Span)
	require.Len(t, parse(t, strings.Replace(text, "head\n", "head\r", 1)).Problems, 1, "one alone among line feeds is told where it is")
}

// checkIndependent asserts that what stands before a text, ended by a blank line,
// changes nothing in what is said of it.
func checkIndependent(t testing.TB, tree *Tree) {
	t.Helper()
	const before = "pulley x strength 3\n\n"
	noText := strings.Contains(tree.File.Text, "\x00") && len(tree.Problems) >= mostBadPlaces-1
	if _, other := otherText(tree.File.Text); strings.HasPrefix(tree.File.Text, byteOrderMark) || noText || other != "" {
		return
	}
	other := Parse(source.New("case.rig", before+tree.File.Text))
	require.Len(t, other.Problems, len(tree.Problems)+1)
	for i, p := range tree.Problems {
		q := other.Problems[i+1]
		require.Equal(t, fmt.Sprint(p.Rule, p.Place.Span.Start+len(before), p.Place.Span.End+len(before), p.Message),
			fmt.Sprint(q.Rule, q.Place.Span.Start, q.Place.Span.End, q.Message))
	}
	require.Equal(t, dumpTree(tree), strings.TrimPrefix(strings.TrimPrefix(dumpTree(other), "pulley x"), "\n"))
}

func TestStatementsAreIndependent(t *testing.T) {
	for _, text := range append(faultTexts(t), goodTexts()...) {
		checkIndependent(t, parse(t, text))
	}
}

func goodTexts() []string {
	var texts []string
	for _, c := range goodCases {
		texts = append(texts, c.text)
	}
	return texts
}

func FuzzParse(f *testing.F) {
	for _, text := range append(faultTexts(f), goodTexts()...) {
		f.Add(text)
	}
	for _, text := range hostileTexts(20) {
		f.Add(text)
	}
	f.Add(sheavesRig(5))
	f.Fuzz(func(t *testing.T, text string) {
		checkIndependent(t, parse(t, text))
	})
}
