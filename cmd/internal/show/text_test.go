package show_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/cmd/internal/show"
	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/solve/report/page"
)

const yard = `rig yard "The yard"
reeve long: litter / grab / top \ runner / corner \ team
	pulley top on
reeve  long-line-of-the-old-crane: litter / first / second \ third / fourth \ fifth / sixth \ team
`

// placeOf finds an occurrence of the culprit, counted from 1.
func placeOf(t *testing.T, f *source.File, culprit string, occurrence int) source.Place {
	t.Helper()
	at := 0
	for range occurrence {
		i := strings.Index(f.Text[at:], culprit)
		require.GreaterOrEqual(t, i, 0, culprit)
		at += i + 1
	}
	return f.At(source.Span{Start: at - 1, End: at - 1 + len(culprit)})
}

func render(t *testing.T, list ...diag.Diagnostic) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, show.Text(&b, list, page.Paint{}))
	return b.String()
}

func TestTextMarksTheCulpritInItsLine(t *testing.T) {
	f := source.New("quarry/yard.rig", yard)
	got := render(t,
		diag.Diagnostic{
			Rule: "hitch-on-wrong-strand", Severity: diag.Error, Place: placeOf(t, f, "grab", 1),
			Message: "the haul raises nothing: grab grips the slack side of top",
			Related: []diag.Related{{Place: placeOf(t, f, "top", 1), Message: "top lets this strand go slack"}},
			Fixes: []diag.Fix{
				{Title: "set grab on litter / top", Gives: "it is 3 : 1 there"},
				{Title: "set grab on corner \\ team", Gives: "it is 2 : 1 there, and the team has the longer way to walk"},
			},
		},
		diag.Diagnostic{
			Rule: "redirect-loads-anchor", Severity: diag.Warning, Place: placeOf(t, f, "corner", 1),
			Message: "corner carries 1.31 kN, 2.0 times the pull, and adds no advantage",
		},
		diag.Diagnostic{
			Rule: "syntax", Severity: diag.Advice, Message: "a part's name is missing after on",
			Place: f.At(source.Span{Start: strings.Index(yard, " on\n") + 3, End: strings.Index(yard, " on\n") + 3}),
		},
	)
	assert.Equal(t, `!!  the haul raises nothing: grab grips the slack side of top
    quarry/yard.rig, line 2
      reeve long: litter / [grab] / top \ runner / corner \ team
      top lets this strand go slack
      quarry/yard.rig, line 2
        reeve long: litter / grab / [top] \ runner / corner \ team
    hitch-on-wrong-strand. Fix: set grab on litter / top; it is 3 : 1 there. Or:
    set grab on corner \ team; it is 2 : 1 there, and the team has the longer
    way to walk

!   corner carries 1.31 kN, 2.0 times the pull, and adds no advantage
    quarry/yard.rig, line 2
      reeve long: litter / grab / top \ runner / [corner] \ team
    redirect-loads-anchor

·   a part's name is missing after on
    quarry/yard.rig, line 3
      pulley top on [ ]
    syntax

`, got)
}

func TestTextLeavesOutWhatDoesNotFit(t *testing.T) {
	f := source.New("yard.rig", yard)
	line := func(p source.Place) string {
		text := render(t, diag.Diagnostic{Rule: "r", Message: "m", Place: p})
		return strings.TrimSpace(strings.Split(text, "\n")[2])
	}
	assert.Equal(t, `reeve  long-line-of-the-old-crane: … / fourth \ fifth / sixth \ [team]`, line(placeOf(t, f, "team", 2)))
	assert.Equal(t, `reeve  long-line-of-the-old-crane: [litter] / first / second \ third / …`, line(placeOf(t, f, "litter", 2)))
	whole := placeOf(t, f, strings.TrimSpace(strings.Split(yard, "\n")[3]), 1)
	assert.Equal(t, `[reeve  long-line-of-the-old-crane: litter / … fifth / sixth \ team]`, line(whole))
	assert.Equal(t, `[rig yard "The yard" …]`, line(f.At(source.Span{Start: 0, End: 40})))
}

func TestTextStaysOnThePage(t *testing.T) {
	word := rapid.StringMatching(`[a-zé滑]{1,30}[:/]?`)
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(word, 0, 30).Draw(t, "words"), " ")
		f := source.New("a.rig", text)
		from := rapid.IntRange(0, len(text)).Draw(t, "from")
		to := rapid.IntRange(from, len(text)).Draw(t, "to")
		var b strings.Builder
		d := diag.Diagnostic{Rule: "r", Message: "m", Place: f.At(source.Span{Start: from, End: to})}
		require.NoError(t, show.Text(&b, []diag.Diagnostic{d}, page.Paint{}))
		line := strings.Split(b.String(), "\n")[2]
		assert.LessOrEqual(t, page.Width(line), page.Columns, line)
		assert.Equal(t, 1, strings.Count(line, "["))
		assert.Equal(t, 1, strings.Count(line, "]"))
	})
}

func TestTextTakesNoCommandFromAFile(t *testing.T) {
	f := source.New("\x1b[2J.rig", "anchor \x1b[31mhead")
	got := render(t, diag.Diagnostic{Rule: "r", Message: "odd \x07 bell", Place: f.At(source.Span{Start: 7, End: 8})})
	assert.NotContains(t, got, "\x1b")
	assert.NotContains(t, got, "\x07")
}

func TestTextKeepsColourForTheMarkAndTheAnswer(t *testing.T) {
	f := source.New("yard.rig", yard)
	var b strings.Builder
	require.NoError(t, show.Text(&b, []diag.Diagnostic{{Rule: "r", Severity: diag.Error, Message: "m", Place: placeOf(t, f, "grab", 1)}}, page.Colours()))
	assert.Contains(t, b.String(), "\x1b[1m[grab]\x1b[22m")
}

func TestTotal(t *testing.T) {
	list := []diag.Diagnostic{{Severity: diag.Error}, {Severity: diag.Warning}, {Severity: diag.Error}, {Severity: diag.Advice}}
	for want, got := range map[string]string{
		"2 errors, 1 warning and 1 piece of advice in 14 rigs; 3 can be mended with --fix": show.Total(list, show.Sum{Rigs: 14, Mendable: 3}),
		"1 warning in 1 rig; 1 can be mended with --fix":                                   show.Total(list[1:2], show.Sum{Rigs: 1, Mendable: 1}),
		"1 error in 2 rigs":                                                   show.Total(list[:1], show.Sum{Rigs: 2}),
		"nothing found in 1 rig":                                              show.Total(nil, show.Sum{Rigs: 1}),
		"nothing found in 1 rig but 1 that is accepted":                       show.Total(nil, show.Sum{Rigs: 1, Accepted: 1}),
		"nothing found in 3 rigs but 2 that are accepted":                     show.Total(nil, show.Sum{Rigs: 3, Accepted: 2}),
		"1 warning in 1 rig; 1 can be mended with --fix; 2 more are accepted": show.Total(list[1:2], show.Sum{Rigs: 1, Mendable: 1, Accepted: 2}),
		"1 error in 1 rig; 1 more is accepted":                                show.Total(list[:1], show.Sum{Rigs: 1, Accepted: 1}),
	} {
		assert.Equal(t, want, got)
	}
}
