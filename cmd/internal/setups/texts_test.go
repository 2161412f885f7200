package setups

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fairlead/lang/markdown"
	"fairlead/lang/reference"
	"fairlead/lang/syntax"
)

// sample is a text that highlighting is tried on.
type sample struct {
	name, text string
	tokens     []token
	// manual says that it is from the manual, or has everything that the manual may have.
	manual bool
}

// samples are every block of the manual and of the pages of the rules, every example,
// the built-in stock, and a line for everything that the vocabulary allows.
func samples(t *testing.T) []sample {
	t.Helper()
	var list []sample
	add := func(name, text string) {
		list = append(list, sample{name: name, text: text, tokens: tokensOf(text)})
	}
	for _, page := range reference.Pages() {
		for i, block := range blocks(page.Text) {
			add(fmt.Sprintf("%s, block %d", page.Name, i+1), block)
			list[len(list)-1].manual = true
		}
	}
	require.Greater(t, len(list), 20, "the blocks of the manual were not found")
	for _, pattern := range []string{"lint/rules/*.md", "examples/*.rig", "examples/house-rules/*.rig", "lang/stock/*.rig"} {
		paths, err := filepath.Glob(filepath.Join(root, pattern))
		require.NoError(t, err)
		require.NotEmpty(t, paths, pattern)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			if !markdown.Is(path) {
				add(filepath.Base(path), string(text))
				continue
			}
			for i, block := range blocks(string(text)) {
				add(fmt.Sprintf("%s, block %d", filepath.Base(path), i+1), block)
			}
		}
	}
	add("everything", everything())
	list[len(list)-1].manual = true
	add("trouble", trouble)
	return list
}

// blocks gives the inside of the fenced blocks whose info string begins with "rig".
func blocks(text string) []string {
	var list []string
	open, fenced := -1, false
	for _, line := range strings.SplitAfter(text, "\n") {
		info, fence := strings.CutPrefix(line, "```")
		switch {
		case fence && fenced:
			open, fenced = -1, false
		case fence:
			fenced = true
			if words := strings.Fields(info); len(words) > 0 && words[0] == "rig" {
				open = len(list)
				list = append(list, "")
			}
		case open >= 0:
			list[open] += line
		}
	}
	return list
}

// everything has each clause on each kind that takes it, as written in the messages, in
// a part and in a model, each unit, each figure of house rules and each form of a claim.
func everything() string {
	var b strings.Builder
	for _, k := range syntax.Kinds() {
		var clauses []string
		for _, w := range syntax.ClausesOf(k.Word) {
			c, _ := syntax.ClauseNamed(w)
			clauses = append(clauses, c.Example)
			if c.Second != "" {
				clauses = append(clauses, c.Second+" 40 to 60%")
			}
		}
		all := strings.Join(clauses, " ")
		fmt.Fprintf(&b, "%s der-teil2 model-x on zug.fuß %s # of %s\n", k.Word, all, k.Word)
		fmt.Fprintf(&b, "\t%s %s%s m \t%s\n", k.Word, k.Word, k.Word, all)
		fmt.Fprintf(&b, "stock %s twin.two %s\n", k.Word, all)
		fmt.Fprintf(&b, "include low as high with %s-part %s without mass-1\n", k.Word, all)
	}
	for _, w := range syntax.NodeClauses() {
		c, _ := syntax.ClauseNamed(w)
		fmt.Fprintf(&b, "reeve long: load-a / der.teil (%s figure-eight) \\ mm ~ tail\n\n", c.Example)
	}
	for _, u := range unitWords() {
		fmt.Fprintf(&b, "anchor %[1]sx strength 3%[1]s\nanchor a mass -1.5 to 2.25 %[1]s # %[1]s\n", strings.ReplaceAll(u, "%", "p"))
	}
	b.WriteString("units kN m\nunits lbf # ft\n")
	for _, f := range syntax.Figures() {
		b.WriteString(f.Example + "\n")
	}
	for _, w := range syntax.ClassWords() {
		b.WriteString("expect class " + w + " by person\n")
	}
	for _, w := range syntax.SettingWords() {
		b.WriteString("rule no-capture " + w + "\n")
	}
	b.WriteString(forms)
	return b.String()
}

// forms has claims and statements with names that are words of claims or units.
const forms = `rig over "Über \"drei\" zu eins \\"
rig plain-name
use "stock.rig"
policy hand "House rules" # of "hands"
join low.hand to high.over
expect advantage 3:1
expect advantage over 5:2 by hand
expect actual advantage under 2.4
expect pull under 300 N per person by over
expect load on of under 6 kN
expect load on head 2 : 3
expect factor of over over 4
expect travel 3 m per 1 m
expect held when released
expect not held when released without m
expect held without released while hauling
expect stroke over 2 m
expect lower hand under 200 N
expect finding redirect-loads-anchor at corner
accept redirect-loads-anchor at hand because "Bolted ring, 40 kN; # no room above."
accept no-capture because "at the end"
require factor 4.5 for cord # for cord
reeve hand: litter (figure-eight) / released/tail
reeve t: over (holds) \
  # between
  by (holds hand angle 90 deg) ~
  m / loop
pulley for not on by holds of
rope m of material on-hand diameter 11 mm
sling deg
cord cord-1 prusik-5mm cord 5 mm
`

// trouble has what is not notation; what can be told there must still be told.
const trouble = `puley top on head  # a comment
pulley top on head strength "not closed
anchor head strength = 30 kN; "text" # all
pulley “top” on {head} * strength 30° ! → 𝕏 [x] «y» a’b
load
reeve long: a / \ b
reeve
expect advantage
pulley wheel strenght 30 kN
# ends without a line end "x" / 3`

// lines gives the tokens of a sample for each of its lines, with columns in bytes.
func (s sample) lines() [][]token {
	starts := lineStarts(s.text)
	lines := make([][]token, len(starts))
	for _, t := range s.tokens {
		n, _ := slices.BinarySearch(starts, t.Start+1)
		n--
		t.Start, t.End = t.Start-starts[n], t.End-starts[n]
		lines[n] = append(lines[n], t)
	}
	return lines
}

func lineStarts(text string) []int {
	starts := []int{0}
	for i, c := range text {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}
