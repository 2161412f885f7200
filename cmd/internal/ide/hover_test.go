package ide

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/lint/rules"
)

// hover gives what is said at a cursor.
func hover(t *testing.T, marked string) string {
	t.Helper()
	d, places := at(t, marked)
	h, _ := d.Hover(places[0])
	return h.Text
}

func TestHover(t *testing.T) {
	cases := []struct{ name, text, want string }{
		{"a part", strings.Replace(shaft, "pulley  top ", "pulley  to‸p ", 1),
			"`top` carries 1.13 kN hauling, 1.77 kN held: 20 times under its strength; if it fails: falls\n\n" +
				"`pulley top on head efficiency 92 % strength 36 kN holds litter`: a rope on a turning sheave\n\n" +
				"The team's own wheel."},
		{"a part where it is used", strings.Replace(shaft, "/ grab", "/ grab‸", 1),
			"`grab` grips 1.23 kN hauling: 5.7 times under its slip; if it fails: held\n\n`hitch grab slips 7 kN`: a friction hitch"},
		{"people", strings.Replace(shaft, "/ team", "/ t‸eam", 1), "`team` pulls 0.638 kN hauling\n\n`hauler team people 3`: people pulling"},
		{"a stroke", strings.Replace(shaft, "grab / top", "grab ‸/ top", 1), "`grab / top`: 0.540 kN (count 1) hauling, 1.77 kN held"},
		{"a rig", strings.Replace(shaft, "rig shaft", "rig sh‸aft", 1),
			"`shaft`: 3:1 simple, 2.77 with friction, pull 0.638 kN, 0.213 kN for each of 3; hands off: held by top\n\nThree to one"},
		{"a unit", "anchor head strength 30 k‸N", "1 kN = 1000 N"},
		{"a glued unit", "anchor head strength 30k‸N", "1 kN = 1000 N"},
		{"a clause", "anchor head stren‸gth 30 kN", "`strength 30 kN`\n\nwhat a part bears, where a hitch or clamp begins to slip or harms its rope, what a knot leaves of its rope's strength."},
		{"a statement", "jo‸in a to b", "`join NAME to NAME`\n\nmakes two ends one body, so that one rig hauls another."},
		{"on", "pulley a o‸n b", "`on`\n\nclips the part to another one; the two move as one body."},
		{"a kind", "lo‸ad litter", "`load`: what is moved\n\nIt takes `mass`, `weight`, `slope`, `friction`, `people`, `raise`, `at`, `length`."},
		{"a comment", "anchor a # strength‸", ""},
		{"white space", "anchor a \n‸\nanchor b", ""},
		{"a number", "anchor a strength 3‸0 kN", ""},
		{"what cannot be read", "anchor a strength ‸?", ""},
		{"a model of the file", "# From its sheet.\nstock pulley twin strength 30 kN\nanchor a\npulley p tw‸in on a",
			"`twin`, a model of pulley: strength 30 kN\n\nSource: From its sheet."},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, hover(t, c.text)) })
	}
}

func TestHoverOfARule(t *testing.T) {
	page, _ := rules.Page("no-capture")
	assert.Equal(t, page, hover(t, shaft+"accept no-cap‸ture because \"x\""))
	assert.Equal(t, page, hover(t, "rule no-cap‸ture off"))
	assert.Equal(t, page, hover(t, shaft+"expect finding no-cap‸ture"))
}

func TestHoverOfClaimsAndFigures(t *testing.T) {
	assert.Contains(t, hover(t, shaft+"expect lo‸ad on head under 3 kN"), "what the part carries in the worst phase")
	assert.Contains(t, hover(t, shaft+"expect actual advan‸tage over 2"), "the advantage with friction")
	text := hover(t, "require fac‸tor 12 for hitch # our own\n")
	assert.Contains(t, text, "strength over load of each part")
	assert.Contains(t, text, "in force: `require factor 12 for hitch`")
	assert.Contains(t, text, "our own")
}

// TestEveryWordOfTheNotationHasAHover points at every word of the manual's blocks.
func TestEveryWordOfTheNotationHasAHover(t *testing.T) {
	n := 0
	for _, d := range goodTexts(t) {
		for _, st := range d.Tree.Statements {
			for _, token := range st.Tokens {
				m, named := d.mentionAt(token.Span.Start)
				silent := named && (m.sort == policyName || m.sort == copyName || m.rig == elsewhere)
				if token.Kind != syntax.WordToken || silent || st.Keyword.Text == "include" || st.Keyword.Text == "join" {
					continue
				}
				_, said := d.Hover(token.Span.Start + 1)
				free := !named && !said && d.wordHover(st, token) == "" && isFree(st, token)
				assert.True(t, said || free, "%q in %q", token.Text, d.File.Slice(st.Span))
				n++
			}
		}
	}
	assert.Greater(t, n, 1000)
}

// isFree says whether a word is anyone's choice: of a material, of units.
func isFree(st *syntax.Statement, token syntax.Token) bool {
	for i, t := range st.Tokens {
		if t.Span == token.Span && i > 0 {
			before := st.Tokens[i-1].Text
			return before == "material" || st.Keyword.Text == "units" || st.Keyword.Text == "rule"
		}
	}
	return false
}

func TestHoverOfAPartThatRigsShare(t *testing.T) {
	const two = "anchor he‸ad strength 30 kN\nload litter mass 100 kg\nhauler team\nrope long\nrig one\npulley a on head holds\nreeve long: litter / a \\ team\n" +
		"rig two\npulley a on litter holds head\nreeve long: head \\ a / team\n"
	text := hover(t, two)
	assert.Contains(t, text, "in `one` `head` carries 1.96 kN hauling")
	assert.Contains(t, text, "in `two` `head` carries 0.490 kN hauling")
}

func TestHoverOfARigWithAnError(t *testing.T) {
	text := hover(t, strings.Replace(shaft, "pulley  top ", "pulley  to‸p ", 1)+"puley extra\n")
	assert.Contains(t, text, "(not the whole rig: an error left something out)")
}

func TestAuthorsTextIsNoMarkup(t *testing.T) {
	text := hover(t, "# <b>*bold*</b> [x](y)\nanchor he‸ad\nload l\nrope r\nreeve r: l / head\n")
	assert.Contains(t, text, `&lt;b&gt;\*bold\*&lt;/b&gt; \[x\](y)`)
}

func TestLensesAndHints(t *testing.T) {
	d, _ := at(t, shaft)
	require.Len(t, d.Lenses(), 1)
	lens := d.Lenses()[0]
	assert.Equal(t, "shaft", d.File.Slice(lens.Span))
	assert.Equal(t, "3:1 simple, 2.77 with friction, pull 0.638 kN, 0.213 kN for each of 3; hands off: held by top", lens.Title)
	assert.Equal(t, `rig shaft "Three to one"⟨3:1⟩|reeve long: litter /⟨1.77 kN⟩ grab /⟨0.540 kN⟩ top \⟨0.587 kN⟩ runner /⟨0.638 kN⟩ team`, hinted(d, 0, len(d.File.Text)))
	line := strings.Index(shaft, "reeve")
	assert.Equal(t, `reeve long: litter /⟨1.77 kN⟩ grab / top \ runner / team`, hinted(d, line, line+len("reeve long: litter / g")))
	d, _ = at(t, strings.Replace(shaft, "rig shaft \"Three to one\"\n", "", 1))
	assert.Contains(t, hinted(d, 0, len(d.File.Text)), "team⟨3:1⟩")
	d, _ = at(t, shaft+"puley x\n")
	assert.Empty(t, hinted(d, 0, len(d.File.Text)), "no figures of a rig that nobody drew")
}

// hinted shows the lines of a document that have hints, with these in them.
func hinted(d *Document, start, end int) string {
	text, lines := d.File.Text, map[int]bool{}
	hints := d.Hints(span(start, end))
	for i := len(hints) - 1; i >= 0; i-- {
		for k := 0; k < i; k++ {
			if hints[k].Offset > hints[i].Offset {
				hints[k], hints[i] = hints[i], hints[k]
			}
		}
		lines[d.File.Line(hints[i].Offset)] = true
		text = text[:hints[i].Offset] + "⟨" + hints[i].Label + "⟩" + text[hints[i].Offset:]
	}
	var shown []string
	for i, line := range strings.Split(text, "\n") {
		if lines[i] {
			shown = append(shown, line)
		}
	}
	return strings.Join(shown, "|")
}

func TestFindingsAreThoseOfTheLinter(t *testing.T) {
	for _, d := range goodTexts(t)[:20] {
		d = changed(t, d, d.File.Text+"\npuley x\n")
		got, ok := d.Findings(nil)
		require.True(t, ok)
		assert.Equal(t, lint.Examine(loadedList(d), rules.All()), got)
	}
}
