package ide

import (
	"math/rand"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/syntax"
)

// labels completes at a cursor.
func labels(d *Document, offset int) []string {
	var list []string
	for _, i := range d.Complete(offset) {
		list = append(list, i.Label)
	}
	return list
}

// TestCompletionKnowsTheGrammar goes through every word of every right text: wherever a
// word of the notation, a name, a unit or a stroke stands, it is offered.
func TestCompletionKnowsTheGrammar(t *testing.T) {
	checked := map[syntax.TokenKind]int{}
	for _, d := range goodTexts(t) {
		given := map[int]bool{} // where a new name stands, or a word that is anyone's
		for _, m := range d.all() {
			given[m.span.Start] = m.declares || m.vague
		}
		for _, st := range d.Tree.Statements {
			for i, token := range st.Tokens {
				free := i > 0 && st.Tokens[i-1].Text == "material"
				switch token.Kind {
				case syntax.WordToken, syntax.UnitToken, syntax.StrokeToken:
					if given[token.Span.Start] || free || strings.Contains(token.Text, ".") {
						continue
					}
				default:
					if token.Text != "(" && token.Text != ")" {
						continue
					}
				}
				if i > 0 && st.Tokens[i-1].Span.End == token.Span.Start && st.Tokens[i-1].Kind == syntax.WordToken {
					continue // the place is in the word before
				}
				checked[token.Kind]++
				offered := labels(d, token.Span.Start)
				if !slices.Contains(offered, token.Text) {
					line, _ := d.File.UTF16(token.Span.Start)
					t.Errorf("%q is not offered in line %d, but %q\n%s", token.Text, line+1, offered, d.File.Text)
					return
				}
			}
		}
	}
	assert.Greater(t, checked[syntax.WordToken], 1000)
	assert.Greater(t, checked[syntax.StrokeToken], 100)
}

func TestCompletion(t *testing.T) {
	const rig = "anchor head\nload litter\nhauler team\npulley top on head holds litter\nhitch grab\nrope long\nreeve long: litter / top \\ team\n"
	cases := []struct {
		name, text string
		has, not   []string
	}{
		{"an empty line", rig + "‸", []string{"pulley", "reeve", "expect", "rule"}, []string{"strength", "top"}},
		{"a word begun", rig + "pul‸", []string{"pulley"}, nil},
		{"names without a statement", rig + "expect load on corner under 1\npulley ‸", []string{"corner"}, []string{"top"}},
		{"after a name", rig + "pulley low ‸", []string{"bearing-pulley", "on", "efficiency", "at"}, []string{"cord", "top"}},
		{"after a model", rig + "pulley low bearing-pulley ‸", []string{"on", "strength"}, []string{"bearing-pulley"}},
		{"after on", rig + "pulley low on ‸", []string{"head", "litter", "top", "grab"}, []string{"low", "team", "long"}},
		{"not on what hangs on it", rig + "hitch loop on low\npulley low on ‸", []string{"head"}, []string{"loop", "low"}},
		{"clauses that are not there", rig + "pulley low strength 3 kN ‸", []string{"on", "holds", "efficiency"}, []string{"strength", "people"}},
		{"units", rig + "pulley low strength 3 ‸", []string{"kN", "N", "lbf", "to"}, []string{"kg", "holds"}},
		{"units of a range", rig + "pulley low efficiency 80 to 90 ‸", []string{"%", "lowering", "strength"}, []string{"kN", "to"}},
		{"no unit before the number", rig + "pulley low strength ‸", nil, []string{"kN", "holds"}},
		{"the side that is held", rig + "pulley low holds ‸", []string{"litter", "team", "strength"}, []string{"holds"}},
		{"the ends of a leg", rig + "focal master\nleg left from ‸", []string{"head"}, []string{"litter", "master"}},
		{"the focal of a leg", rig + "focal master\nleg left from head to ‸", []string{"master"}, []string{"head"}},
		{"ropes to reeve", rig + "rope short\nreeve ‸", []string{"short", "long"}, []string{"head"}},
		{"the first node", rig + "rope short\nreeve short: ‸", []string{"litter", "head", "tail"}, []string{"long", "loop"}},
		{"after a node", rig + "rope short\nreeve short: litter ‸", []string{"/", `\`, "~", "("}, []string{"head"}},
		{"after a stroke", rig + "rope short\nreeve short: litter / ‸", []string{"grab", "top", "team", "loop"}, []string{"/", "short"}},
		{"on the next line", rig + "rope short\nreeve short: litter /\n  ‸", []string{"grab", "top"}, []string{"expect"}},
		{"in parentheses", rig + "rope short\nreeve short: litter (‸", []string{"figure-eight", "angle", "share"}, []string{"strength", "litter"}},
		{"after a knot", rig + "rope short\nreeve short: litter (figure-eight ‸", []string{"angle", ")"}, []string{"bowline"}},
		{"claims", rig + "expect ‸", []string{"advantage", "held", "not", "lower", "finding", "load"}, []string{"over", "pulley"}},
		{"load on", rig + "expect load ‸", []string{"on"}, []string{"head"}},
		{"a part of a claim", rig + "expect load on ‸", []string{"head", "top"}, []string{"over"}},
		{"a comparison", rig + "expect load on head ‸", []string{"over", "under"}, []string{"by"}},
		{"the unit of a claim", rig + "expect load on head under 3 ‸", []string{"kN", "by"}, []string{"kg"}},
		{"who hauls", rig + "expect advantage 3:1 by ‸", []string{"team"}, []string{"head", "litter"}},
		{"how it is held", rig + "expect held ‸", []string{"when", "without", "while"}, []string{"held"}},
		{"without what", rig + "expect held without ‸", []string{"head", "top", "long"}, []string{"litter", "team"}},
		{"a rule", rig + "accept ‸", []string{"no-capture", "redirect-loads-anchor"}, []string{"acceptance-unused", "head"}},
		{"a rule in a policy", rig + "rule ‸", []string{"no-capture", "acceptance-unused"}, nil},
		{"severities", rig + "rule no-capture ‸", []string{"error", "warning", "advice", "off"}, []string{"kN"}},
		{"because", rig + "accept no-capture at top ‸", []string{"because"}, []string{"at"}},
		{"figures", "require ‸", []string{"factor", "people", "drop", "lower"}, []string{"over"}},
		{"a figure of two words", "require lower ‸", []string{"hand"}, []string{"under"}},
		{"a kind", "require factor 4 for ‸", []string{"hitch"}, []string{"factor"}},
		{"models", "stock ‸", []string{"pulley"}, []string{"stock"}},
		{"units of results", "units ‸", []string{"kN", "m"}, []string{"kg"}},
		{"rigs", "rig low\nanchor a\nrig high\ninclude ‸", []string{"low"}, []string{"a"}},
		{"in a comment", rig + "# pul‸", nil, []string{"pulley"}},
		{"behind a comment sign", rig + "anchor rear #‸", nil, []string{"strength"}},
		{"in a text", rig + `rig x "pul‸"`, nil, []string{"pulley"}},
		{"in a text that is not closed", rig + `accept no-capture because "to‸`, nil, []string{"tail"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d, places := at(t, c.text)
			got := labels(d, places[0])
			for _, w := range c.has {
				assert.Contains(t, got, w)
			}
			for _, w := range c.not {
				assert.NotContains(t, got, w)
			}
		})
	}
}

func TestCompletionReplacesTheWordBegun(t *testing.T) {
	d, places := at(t, shaft+"pulley low on he‸ad2")
	for _, i := range d.Complete(places[0]) {
		assert.Equal(t, "head2", d.File.Slice(i.Span))
	}
	d, places = at(t, shaft+"reeve long: litter /‸")
	items := d.Complete(places[0])
	assert.Equal(t, " ", items[0].Text[:1], "a stroke stands alone")
}

func TestCompletionInNotes(t *testing.T) {
	d, places := named(t, "notes.md", "Pul‸ the rope.\n\n> ```rig\n> anchor head\n> pul‸\n> ```\n\n‸\n")
	assert.Empty(t, d.Complete(places[0]))
	assert.Contains(t, labels(d, places[1]), "pulley")
	assert.Empty(t, d.Complete(places[2]))
}

// TestCompletionOfAnything asks at random places of random texts.
func TestCompletionOfAnything(t *testing.T) {
	dice := rand.New(rand.NewSource(1))
	texts := goodTexts(t)
	for range 300 {
		text := texts[dice.Intn(len(texts))].File.Text
		cut := dice.Intn(len(text) + 1)
		d, _ := at(t, text[:cut]+[]string{"", "\n", " ", "(", `"`, "\x00"}[dice.Intn(6)]+text[min(len(text), cut+dice.Intn(9)):])
		for range 5 {
			offset := dice.Intn(len(d.File.Text) + 1)
			for _, i := range d.Complete(offset) {
				assert.True(t, i.Span.Start <= offset && offset <= i.Span.End)
			}
			d.Hover(offset)
			d.Around(offset)
			d.References(offset)
			d.Definition(offset)
		}
	}
}
