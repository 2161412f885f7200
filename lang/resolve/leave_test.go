package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
)

var leaveCases = []marked{
	{"a hitch and what is on it", on("include a as low without grab without runner\n")},
	{"what hangs on it", on("include a as low without ⟦grab⟧left-out-needed\n")},
	{"the end that is held", on("include a as low without ⟦litter⟧left-out-needed\n")},
	{"the end that is held, held otherwise", on("include a as low without litter with top holds team\n")},
	{"a bend that turns, beside one", "rig a\n" + basic + "anchor rear\npulley low on litter\npulley top on head\npulley up on rear\nreeve long: head \\ low / top \\ low / up \\ team\n" +
		"rig both\ninclude a as x without ⟦top⟧left-out-needed\n"},
	{"the bend before the hauler", "rig a\n" + basic + "pulley low on litter\npulley top on head\nreeve long: head \\ low / top \\ team\nrig both\ninclude a as x without top\n"},
	{"a tie in mid rope beside slack", "rig a\n" + basic + "anchor rear\npulley low on litter\nknot k on rear\nreeve long: litter / head \\ team ~ k \\ low / head\nrig both\ninclude a as x without ⟦k⟧left-out-needed\n"},
	{"a leg's anchor", "rig a\nanchor tree\nanchor rock\nfocal hub\nleg l from tree to hub\nleg r from rock to hub\nload litter\nrope long\nreeve long: litter / hub\n" +
		"rig both\ninclude a as x without ⟦tree⟧left-out-needed\ninclude a as y without tree without l\n"},
	{"what is not there", on("include a as low without ⟦gab⟧unknown-part without runner without ⟦runner⟧repeated-clause\n")},
	{"naming what is left out", on("include a as low without runner\nexpect load on ⟦low.runner⟧unknown-part under 1\n")},
	{"what is idle then", on("include a as ⟦low⟧unused-part,unused-part,unused-part without long\nhauler h on low.litter\nrope r\nreeve r: low.litter / low.head \\ h\n")},
	{"all of a rope", on("include a as ⟦low⟧unused-part without litter without grab without top without runner without team\n")},
}

// left gives the strokes and nodes of a rope of a copy without some parts.
func left(t *testing.T, rig, rope, without string) string {
	t.Helper()
	file, _ := resolved("yard.rig", "rig a\n"+rig+"rig both\ninclude a as x"+without+"\n")
	for _, r := range file.Rigs[1].Ropes {
		if r.Line.Name != "x."+rope {
			continue
		}
		text := ""
		for i, n := range r.Nodes {
			text += n.Name()
			if i < len(r.Strokes) {
				text += " " + r.Strokes[i].String() + " "
			}
		}
		return text
	}
	return ""
}

func TestWhatIsLeftOfARope(t *testing.T) {
	const more = "anchor head\nanchor rear\nload litter\nhauler team\nhitch grab\nknot k on rear\nknot stop\npulley top on head\npulley low on litter\ntender guide\nrope r\n"
	for _, c := range []struct{ reeve, without, want string }{
		{`litter / grab / top \ low / team`, " without grab", `x.litter / x.top \ x.low / x.team`},
		{`litter / grab / top \ team`, " without litter", `tail / x.grab / x.top \ x.team`},
		{`litter / grab / top \ team`, " without team", `x.litter / x.grab / x.top \ tail`},
		{`litter / grab / top \ team`, " without top", `x.litter / x.grab / x.team`},
		{`litter / grab / top \ guide`, " without top", `x.litter / x.grab / x.guide`},
		{`team \ top / grab / rear`, " without top", `x.team / x.grab / x.rear`},
		{`litter / top \ grab \ k`, " without top", `x.litter ~ x.grab \ x.k`},
		{`litter / k ~ head`, " without k", `x.litter ~ x.head`},
		{`litter / head \ team ~ stop`, " without stop", `x.litter / x.head \ x.team ~ tail`},
		{`litter / head \ team ~ stop`, " without head without team", `x.litter ~ x.stop`},
		{`litter / grab / k / head`, " without grab without k", `x.litter / x.head`},
		{`litter / grab / k / head`, " without grab without k without head", ``},
		{`litter / grab / k / head`, " without r", ``},
		{`low / top \ k / head \ loop`, " without low", `x.top \ x.k / x.head ~ `},
		{`low / top \ k / head \ loop`, " without top", `x.low ~ x.k / x.head \ `},
		{`litter / tail`, " without litter", ``},
	} {
		assert.Equal(t, c.want, left(t, more+"reeve r: "+c.reeve+"\n", "r", c.without), c.reeve+c.without)
	}
}

func TestRolesAfterLeavingOut(t *testing.T) {
	file, found := resolved("yard.rig", "rig a\n"+basic+"knot k on head\nhitch grab\nanchor rear\nreeve long: litter / grab / k / rear\nrig both\ninclude a as x without k\n")
	require.Len(t, found, 2) // an idle hauler, in both rigs
	rope := file.Rigs[1].Ropes[0]
	assert.Equal(t, []model.Role{model.Tied, model.Grip, model.Tied}, []model.Role{rope.Nodes[0].Role, rope.Nodes[1].Role, rope.Nodes[2].Role})
}
