package ide

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
)

// marked shows the document with brackets round places, those that give a name with «».
func marked(d *Document, refs []Reference) string {
	text := d.File.Text
	slices.SortFunc(refs, func(a, b Reference) int { return b.Place.Span.Start - a.Place.Span.Start })
	for _, r := range refs {
		left, right := "[", "]"
		if r.Declares {
			left, right = "«", "»"
		}
		s := r.Place.Span
		text = text[:s.Start] + left + text[s.Start:s.End] + right + text[s.End:]
	}
	return text
}

func TestReferences(t *testing.T) {
	cases := []struct{ name, text, want string }{
		{"a part", "anchor he‸ad\npulley top on head holds head\nexpect load on head under 1\naccept no-capture at head because \"x\"\nload l\nrope r\nreeve r: l / head (holds head) / head",
			"anchor «head»\npulley top on [head] holds [head]\nexpect load on [head] under 1\naccept no-capture at [head] because \"x\"\nload l\nrope r\nreeve r: l / [head] (holds [head]) / [head]"},
		{"from where it is used", "anchor head\npulley top on he‸ad", "anchor «head»\npulley top on [head]"},
		{"in its own rig only", "rig a\nanchor he‸ad\npulley p on head\nrig b\nanchor head\npulley p on head",
			"rig a\nanchor «head»\npulley p on [head]\nrig b\nanchor head\npulley p on head"},
		{"before the first rig", "anchor head\nrig a\npulley p on he‸ad\nrig b\npulley p on head",
			"anchor «head»\nrig a\npulley p on [head]\nrig b\npulley p on [head]"},
		{"used before the first rig", "expect load on top under 1\nrig a\npulley t‸op\nrig b\npulley top",
			"expect load on [top] under 1\nrig a\npulley «top»\nrig b\npulley «top»"},
		{"a rig", "rig a‸\ninclude a as low", "rig «a»\ninclude [a] as low"},
		{"a copy", "rig a\nanchor head\nhauler team\nrig b\ninclude a as lo‸w with head strength 3 kN\ninclude a as high\njoin low.team to high.head",
			"rig a\nanchor head\nhauler team\nrig b\ninclude a as «low» with head strength 3 kN\ninclude a as high\njoin [low].team to high.head"},
		{"a part of a copy", "rig a\nanchor head\nhauler team\nrig b\ninclude a as low with he‸ad strength 3 kN\ninclude a as high\njoin low.team to high.head",
			"rig a\nanchor «head»\nhauler team\nrig b\ninclude a as low with [head] strength 3 kN\ninclude a as high\njoin low.team to high.[head]"},
		{"a model", "stock pulley twin\nstock hitch twin\npulley a twin\nhitch b tw‸in", "stock pulley twin\nstock hitch «twin»\npulley a twin\nhitch b [twin]"},
		{"a knot", "stock knot bend\nreeve r: a (be‸nd) / b", "stock knot «bend»\nreeve r: a ([bend]) / b"},
		{"a rule", "accept no-cap‸ture because \"x\"\nexpect finding no-capture", "accept [no-capture] because \"x\"\nexpect finding [no-capture]"},
		{"in a statement that cannot be read", "anchor head\npulley p on he‸ad\nreeve long head / top", "anchor «head»\npulley p on [head]\nreeve long [head] / top"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d, places := at(t, c.text)
			assert.Equal(t, c.want, marked(d, d.References(places[0])))
		})
	}
	d, places := at(t, "anchor‸ a # a‸\n‸")
	for _, p := range places {
		assert.Empty(t, d.References(p))
	}
}

func TestDefinition(t *testing.T) {
	d, places := at(t, strings.Replace(shaft, "on grab", "on gr‸ab", 1))
	found := d.Definition(places[0])
	require.Len(t, found, 1)
	assert.Equal(t, strings.Index(shaft, "grab "), found[0].Span.Start)
	d, places = at(t, "pulley a bearing-pul‸ley")
	found = d.Definition(places[0])
	require.Len(t, found, 1)
	assert.Equal(t, "built-in/stock.rig", found[0].File.Name)
	assert.Equal(t, "bearing-pulley", found[0].Text())
	d, places = at(t, "accept no-cap‸ture because \"x\"")
	found = d.Definition(places[0])
	require.Len(t, found, 1)
	assert.Equal(t, "built-in/rules/no-capture.md", found[0].File.Name)
	for _, none := range []string{"anch‸or a", "accept nothing-known‸ because \"x\"", "pulley a unknown-model‸", "expect load on no‸body 1"} {
		d, places = at(t, none)
		assert.Empty(t, d.Definition(places[0]), none)
	}
}

func TestRename(t *testing.T) {
	cases := []struct{ name, text, to, want string }{
		{"a part", "anchor he‸ad\npulley top on head", "roof-bolt", "anchor roof-bolt\npulley top on roof-bolt"},
		{"in one rig of two", "rig a\nanchor he‸ad\nrig b\nanchor head", "bolt", "rig a\nanchor bolt\nrig b\nanchor head"},
		{"what rigs share", "anchor head\nrig a\npulley p on he‸ad\nrig b\npulley p on head", "bolt", "anchor bolt\nrig a\npulley p on bolt\nrig b\npulley p on bolt"},
		{"the name of another rig's part", "rig a\nanchor he‸ad\nrig b\nanchor bolt", "bolt", "rig a\nanchor bolt\nrig b\nanchor bolt"},
		{"a part in copies", "rig a\nanchor he‸ad\nrig b\ninclude a as low\nexpect load on low.head under 1", "bolt",
			"rig a\nanchor bolt\nrig b\ninclude a as low\nexpect load on low.bolt under 1"},
		{"to another script", "anchor he‸ad", "Größe", "anchor Größe"},
		{"a model", "stock pulley tw‸in\npulley a twin", "single", "stock pulley single\npulley a single"},
		{"house rules", "policy te‸am", "crew", "policy crew"},
		{"the same name", "anchor he‸ad", "head", "anchor head"},
		{"with a word that cannot be read", "anchor he‸ad\npuley x on head", "bolt", "anchor bolt\npuley x on bolt"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d, places := at(t, c.text)
			name, place, err := d.Renamable(places[0])
			require.NoError(t, err)
			assert.Equal(t, name, d.File.Slice(place))
			edits, err := d.Rename(places[0], c.to)
			require.NoError(t, err)
			assert.Equal(t, c.want, diag.Apply(d.File, edits))
		})
	}
}

func TestWhatCannotBeRenamed(t *testing.T) {
	cases := []struct{ text, to, why string }{
		{"anch‸or a", "b", "there is no name here"},
		{"anchor he‸ad", "pulley", "pulley is a word of the notation, which cannot be a name"},
		{"anchor he‸ad", "2nd", `"2nd" is no name`},
		{"anchor he‸ad", "a b", `"a b" is no name`},
		{"anchor he‸ad", "", `"" is no name`},
		{"anchor he‸ad", "top-", `"top-" is no name`},
		{"anchor he‸ad", "a.b", `"a.b" is no name`},
		{"anchor he‸ad\npulley top", "top", "top is taken: it is the name of a part already"},
		{"anchor top\nrig a\npulley p‸", "top", "top is taken: it is the name of a part already"},
		{"anchor he‸ad\nrig a\npulley top", "top", "top is taken: it is the name of a part already"},
		{"rig a\nrig b\ninclude a as low\nanchor he‸ad", "low", "low is taken: it is the name of a copy already"},
		{"rig a‸\nrig b", "b", "b is taken: it is the name of a rig already"},
		{"pulley a bearing-pul‸ley", "b", "bearing-pulley is not defined in this file"},
		{"rule no-cap‸ture off", "b", "no-capture is the name of a rule, which cannot be changed"},
	}
	for _, c := range cases {
		d, places := at(t, c.text)
		_, err := d.Rename(places[0], c.to)
		assert.ErrorContains(t, err, c.why, c.text)
	}
}

// TestRenameKeepsTheMeaning renames what right texts name: they mean the same after it,
// but under another name.
func TestRenameKeepsTheMeaning(t *testing.T) {
	for _, d := range goodTexts(t) {
		before := meaning(d)
		for i, m := range d.all() {
			if !m.declares || i%3 > 0 {
				continue
			}
			const other = "another-name-than-any"
			edits, err := d.Rename(m.span.Start, other)
			require.NoError(t, err)
			after := meaning(changed(t, d, diag.Apply(d.File, edits)))
			for k := range after {
				after[k] = strings.ReplaceAll(after[k], other, m.name)
			}
			assert.Equal(t, before, after, "%s in\n%s", m.name, d.File.Text)
		}
	}
}

// meaning says what a document means, in short.
func meaning(d *Document) []string {
	var lines []string
	for _, r := range d.Model.Rigs {
		for _, p := range r.Parts {
			line := fmt.Sprint(p.Kind, " ", p.Name, " ", p.Stock != nil)
			if p.On != nil {
				line += " on " + p.On.Name
			}
			lines = append(lines, line)
		}
		for _, rope := range r.Ropes {
			for _, n := range rope.Nodes {
				lines = append(lines, fmt.Sprint(n.Name(), " ", n.Role))
			}
		}
	}
	for _, p := range d.Problems {
		lines = append(lines, p.Rule)
	}
	return lines
}
