package ide

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/fmt"
	"fairlead/lang/diag"
	"fairlead/lang/source"
)

func tree(list []Symbol, indent string) string {
	var b strings.Builder
	for _, s := range list {
		fmt.Fprintf(&b, "%s%s %s (%s)\n%s", indent, s.Kind, s.Name, s.Detail, tree(s.Children, indent+"  "))
	}
	return b.String()
}

func TestSymbols(t *testing.T) {
	d, _ := at(t, "policy yard \"Ours\"\nrequire factor 4\nstock pulley twin strength 3 kN\nanchor common\nrig low \"The low one\"\nload box\n"+
		"stock hitch twist\npulley top twin on common\nreeve long:   box / top\nexpect held\nrig high\ninclude low as a\npuley x\n")
	assert.Equal(t, `policy yard (Ours)
stock twin (stock pulley)
anchor common (anchor)
rig low (The low one)
  load box (load)
  pulley top (pulley on common)
  reeve long (box / top)
stock twist (stock hitch)
rig high ()
  include a (a copy of low)
`, tree(d.Symbols(), ""))
	for _, s := range d.Symbols() {
		assert.True(t, s.Whole.Contains(s.Own), s.Name)
		for _, c := range s.Children {
			assert.True(t, s.Whole.Contains(c.Whole) && c.Whole.Contains(c.Own), c.Name)
		}
	}
	low := d.Symbols()[3]
	assert.True(t, strings.HasSuffix(d.File.Slice(low.Whole), "expect held"))
}

func TestFolds(t *testing.T) {
	d, _ := at(t, "# one\n# two\n\n# alone\nanchor a\nrig low\n# x\n# y\nload b\nreeve r: a\n  / b\n  / c\n\nrig high\nload c\n")
	var shown []string
	for _, f := range d.Folds() {
		shown = append(shown, fmt.Sprintf("%d %d-%d", f.Sort, f.First, f.Last))
	}
	assert.Equal(t, []string{"1 0-1", "0 5-11", "1 6-7", "2 9-11", "0 13-14"}, shown)
}

// coloured shows each piece of text as sort:text.
func coloured(d *Document, within source.Span) string {
	var list []string
	for _, token := range d.Tokens(within) {
		mark := ""
		if token.Declares {
			mark = "!"
		}
		list = append(list, TokenSorts[token.Sort]+mark+":"+d.File.Slice(token.Span))
	}
	return strings.Join(list, " ")
}

func TestTokens(t *testing.T) {
	whole := func(text string) string {
		d, _ := at(t, text)
		return coloured(d, span(0, len(d.File.Text)))
	}
	assert.Equal(t, `keyword:pulley variable!:top type:twin keyword:on variable:head property:strength number:30 number:kN property:holds variable:litter comment:# x`,
		whole("pulley top twin on head strength 30 kN holds litter # x"))
	assert.Equal(t, `keyword:rig namespace!:low string:"A" keyword:reeve variable:r variable:a type:bowline property:angle number:90 number:deg operator:/ variable:b operator:~ keyword:tail`,
		whole("rig low \"A\"\nreeve r: a (bowline angle 90 deg) / b ~ tail"))
	assert.Equal(t, `keyword:expect keyword:load keyword:on variable:head keyword:under number:3 number:kN keyword:expect keyword:class enumMember:simple keyword:by variable:team`,
		whole("expect load on head under 3 kN\nexpect class simple by team"))
	assert.Equal(t, `keyword:accept function:no-capture keyword:at variable:top keyword:because string:"x"`, whole(`accept no-capture at top because "x"`))
	assert.Equal(t, `keyword:stock keyword:rope type!:thin property:material enumMember:hemp property:diameter number:9 number:mm`,
		whole("stock rope thin material hemp diameter 9 mm"))
	assert.Equal(t, `keyword:require property:lower property:hand keyword:under number:200 number:N keyword:rule function:no-capture enumMember:off keyword:units number:kN number:m`,
		whole("require lower hand under 200 N\nrule no-capture off\nunits kN m"))
	assert.Equal(t, `keyword:include namespace:a keyword:as namespace!:b keyword:with variable:c property:mass number:9 number:kg keyword:join namespace:b variable:c keyword:to variable:d`,
		whole("include a as b with c mass 9 kg\njoin b.c to d"))
	d, _ := at(t, "anchor a\nanchor b\nanchor c\n")
	assert.Equal(t, "keyword:anchor variable!:b", coloured(d, span(9, 12)), "whole lines of the span")
}

func TestTokensAreInOrderAndApart(t *testing.T) {
	for _, d := range goodTexts(t) {
		at := 0
		for _, token := range d.Tokens(span(0, len(d.File.Text))) {
			require.True(t, at <= token.Span.Start && token.Span.Start < token.Span.End)
			require.NotContains(t, d.File.Slice(token.Span), "\n")
			at = token.Span.End
		}
	}
}

func TestAround(t *testing.T) {
	d, places := at(t, "rig a\npulley top on head strength 30 k‸N holds\nreeve r: x (angle 9‸0 deg) / y\n‸\n")
	var shown []string
	for _, p := range places {
		var pieces []string
		for _, s := range d.Around(p) {
			pieces = append(pieces, strings.ReplaceAll(d.File.Slice(s), "\n", "⏎"))
		}
		shown = append(shown, strings.Join(pieces[:len(pieces)-1], " < "))
	}
	const rig = "rig a⏎pulley top on head strength 30 kN holds⏎reeve r: x (angle 90 deg) / y"
	assert.Equal(t, []string{
		"kN < strength 30 kN < pulley top on head strength 30 kN holds < " + rig,
		"90 < angle 90 deg < x (angle 90 deg) < reeve r: x (angle 90 deg) / y < " + rig,
		"",
	}, shown)
}

func TestFormat(t *testing.T) {
	d, _ := at(t, "anchor a strength 3kN\n\nload   box\n# note\nhauler  team people 3\n")
	edits, ok := d.Format()
	require.True(t, ok)
	want, _ := rigfmt.Format(d.File)
	assert.Equal(t, want, diag.Apply(d.File, edits))
	for _, e := range edits {
		assert.Less(t, e.Place.Span.Len()+len(e.NewText), 8, "the smallest edits, not whole lines")
	}
	d, _ = at(t, want)
	edits, ok = d.Format()
	assert.True(t, ok)
	assert.Empty(t, edits)
	d, _ = at(t, "anchor   a\npuley b\n")
	_, ok = d.Format()
	assert.False(t, ok)
}

func TestFormatRange(t *testing.T) {
	const text = "anchor   first strength 3kN\nload   box   # x\nhauler   team\n\nreeve r:box/team\n\nreeve s:box/team\n"
	d, _ := at(t, text)
	line := func(n int) source.Span { return d.File.LineSpan(n) }
	cases := []struct {
		name   string
		within source.Span
		want   string
	}{
		{"one statement of a group", line(1), "anchor   first strength 3kN\nload    box  # x\nhauler   team\n\nreeve r:box/team\n\nreeve s:box/team\n"},
		{"to the start of the next", line(0).To(span(0, line(1).Start)), "anchor  first  strength 3 kN\nload   box   # x\nhauler   team\n\nreeve r:box/team\n\nreeve s:box/team\n"},
		{"two groups", line(2).To(line(4)), "anchor   first strength 3kN\nload   box   # x\nhauler  team\n\nreeve r: box / team\n\nreeve s:box/team\n"},
		{"a blank line", line(3), text},
		{"everything", span(0, len(text)), "anchor  first  strength 3 kN\nload    box  # x\nhauler  team\n\nreeve r: box / team\n\nreeve s: box / team\n"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			edits, ok := d.FormatRange(c.within)
			require.True(t, ok)
			assert.Equal(t, c.want, diag.Apply(d.File, edits))
		})
	}
}

func TestFormatNotes(t *testing.T) {
	d, _ := named(t, "notes.md", "Größe *here*\n\n> ```rig\n> anchor   a\n> load  b\n> ```\n\nText  stays.\n\n```rig\nhauler  c\n```\n")
	edits, ok := d.Format()
	require.True(t, ok)
	assert.Equal(t, "Größe *here*\n\n> ```rig\n> anchor  a\n> load    b\n> ```\n\nText  stays.\n\n```rig\nhauler  c\n```\n", diag.Apply(d.File, edits))
	edits, ok = d.FormatRange(d.File.LineSpan(3))
	require.True(t, ok)
	assert.Equal(t, "Größe *here*\n\n> ```rig\n> anchor  a\n> load  b\n> ```\n\nText  stays.\n\n```rig\nhauler  c\n```\n", diag.Apply(d.File, edits))
}

// TestFormatOfRightTexts formats each text at a random statement, and then the rest.
func TestFormatOfRightTexts(t *testing.T) {
	for _, good := range goodTexts(t) {
		squeezed := strings.ReplaceAll(good.File.Text, "  ", " ")
		d, _ := at(t, squeezed)
		edits, ok := d.Format()
		require.True(t, ok)
		want, _ := rigfmt.Format(d.File)
		require.Equal(t, want, diag.Apply(d.File, edits))
		now := squeezed
		for i := range d.Tree.Statements {
			step, _ := at(t, now)
			edits, ok := step.FormatRange(step.Tree.Statements[i].Span)
			require.True(t, ok)
			now = diag.Apply(step.File, edits)
		}
		require.Equal(t, words(want), words(now))
	}
}

// words are the lines of a text that are no comments and not blank.
func words(text string) []string {
	return slices.DeleteFunc(strings.Split(text, "\n"), func(l string) bool { return l == "" || strings.HasPrefix(l, "#") })
}
