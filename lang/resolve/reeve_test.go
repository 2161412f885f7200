package resolve

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/model"
)

var reeveCases = []marked{
	{"a line without a reeving line", basic + line + "cord ⟦tie⟧missing-reeve\n"},
	{"a line that is on a part has none", basic + "sling strap on head\nreeve long: litter / strap \\ team\n"},
	{"a line that should be on a part", basic + "sling ⟦strap⟧missing-reeve\nreeve long: litter / strap \\ team\nreeve b: litter / head\nrope b\n"},
	{"a part on such a line", basic + "sling ⟦strap⟧missing-reeve\npulley top on strap\nreeve long: litter / top \\ team\nreeve b: litter / head\nrope b\n"},
	{"a reeving line without a statement", "anchor head\nload litter\nhauler team\nreeve ⟦long⟧missing-reeve: litter / head \\ team\n"},
	{"a second reeving line", basic + line + "reeve ⟦long⟧duplicate-reeve: litter / head\n"},
	{"two ropes", basic + line + "rope b\nreeve b: litter / head\n"},
	{"a reeving line of a pulley", basic + line + "pulley top on head\nreeve ⟦top⟧wrong-kind: litter / head\nreeve c: litter / top\nrope c\n"},
	{"a reeving line of a sling that is on a part", basic + line + "sling strap on head\nreeve ⟦strap⟧wrong-kind: litter / head\nreeve c: litter / strap\nrope c\n"},
	{"a reeved line is no node", basic + line + "rope b\nreeve b: litter / ⟦long⟧wrong-kind\n"},
	{"nor of itself", basic + line + "rope b\nreeve b: litter / head \\ ⟦b⟧wrong-kind\n"},
	{"a leg is no node", "anchor tree\nfocal hub\nleg l from tree to hub\nload litter\nrope long\nreeve long: litter / ⟦l⟧wrong-kind\n"},
	{"backward", basic + "reeve long: ⟦team⟧reeved-backward / head \\ litter\n"},
	{"haulers at both ends", basic + "hauler crew\nreeve long: team / litter-knot \\ crew\nknot litter-knot on litter\nrope b\nreeve b: litter / head\n"},
	{"a tender first is no hauler", basic + line + "tender guide\nrope b\nreeve b: guide / head \\ litter\n"},
	{"a hauler on the load is one too", basic + line + "hauler self on litter\nrope b\nreeve b: ⟦self⟧reeved-backward / head \\ litter\n"},
}

func TestRopeWithoutStatementIsThere(t *testing.T) {
	text := "anchor head\nload litter\nhauler team\n\n  # the main line\n  reeve long: litter / head \\ team\n"
	file, found := resolved("yard.rig", text)
	rig := file.Rigs[0]
	require.Len(t, rig.Ropes, 1)
	assert.Same(t, rig.Part("long"), rig.Ropes[0].Line)
	assert.Equal(t, model.RopeLine, rig.Part("long").Kind)
	assert.False(t, rig.Incomplete, "it is solved all the same")
	assert.Equal(t, "long has a reeving line but no statement of its own", message(t, found, "missing-reeve"))
	fixed := langtest.Fixed(t, file.Source, found, "add rope long")
	assert.Equal(t, "anchor head\nload litter\nhauler team\n\n  rope long\n  # the main line\n  reeve long: litter / head \\ team\n", fixed)
	_, after := resolved("yard.rig", fixed)
	assert.Empty(t, after)
}

func TestRopeWithoutStatementMayBeMisspelt(t *testing.T) {
	file, found := resolved("yard.rig", strings.Replace(basic+line, "reeve long", "reeve lnog", 1))
	require.Len(t, found, 1, "one typo is one finding")
	assert.Equal(t, diag.Error, found[0].Severity, "a line is not the one that its statement tells of")
	assert.Equal(t, "lnog has a reeving line but no statement of its own, did you mean long?", found[0].Message)
	assert.True(t, file.Rigs[0].Incomplete)
	_, after := resolved("yard.rig", langtest.Fixed(t, file.Source, found, "write long"))
	assert.Empty(t, after)
}

func TestFixKeepsLineEnds(t *testing.T) {
	file, found := resolved("yard.rig", "\ufeffreeve long: litter / head\r\nanchor head\r\nload litter\r\n")
	fixed := langtest.Fixed(t, file.Source, found, "add rope long")
	assert.Equal(t, "\ufeffrope long\r\nreeve long: litter / head\r\nanchor head\r\nload litter\r\n", fixed)
}

func TestTurnedRound(t *testing.T) {
	parts := "anchor head\nload litter\nhauler team\nrope long\nhitch grab\npulley top on head\npulley runner on grab\n"
	cases := []struct{ name, reeve, want string }{
		{"one line", `reeve long: team / runner \ top (holds) / grab / litter (figure-eight)`,
			`reeve long: litter (figure-eight) \ grab \ top (holds) / runner \ team`},
		{"slack stays slack", `reeve long: team / top ~ litter`, `reeve long: litter ~ top \ team`},
		{"several lines with comments",
			"reeve long: team  # four of them\n    / runner \\ top # the head\n    # a line between\n    / grab / litter # the end",
			"reeve long: litter \\ grab\n    \\ top  # the head\n    # a line between\n    / runner\n    \\ team  # four of them # the end"},
		{"the last comment moves to the first line",
			"reeve long: team / runner \\ top  # the head\n  / grab / litter",
			"reeve long: litter \\ grab\n  \\ top  # the head\n  / runner \\ team"},
		{"aligned where no line was broken", "reeve long: team / runner \\ # down\n top / grab / litter",
			"reeve long: litter \\ grab \\ top\n / runner  # down\n \\ team"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			file, found := resolved("yard.rig", parts+c.reeve+"\n")
			fixed := langtest.Fixed(t, file.Source, found, "turn the line of long round")
			assert.Equal(t, parts+c.want+"\n", fixed)
			after, left := resolved("yard.rig", fixed)
			for _, d := range left {
				assert.NotContains(t, []string{"reeved-backward", "syntax"}, d.Rule, d.Message)
			}
			before := file.Rigs[0].Ropes[0]
			turned := after.Rigs[0].Ropes[0]
			n := len(before.Nodes)
			for i := range n {
				assert.Equal(t, before.Nodes[i].Name(), turned.Nodes[n-1-i].Name())
			}
			for i := range n - 1 {
				assert.Equal(t, before.Strokes[i], -turned.Strokes[n-2-i])
			}
		})
	}
}
