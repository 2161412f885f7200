package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// badCases are faults of the text, which must not draw faults of names after them.
var badCases = []marked{
	{"a misspelt keyword", basic + "⟦puley⟧unknown-statement top on head\nreeve long: litter / top \\ team\n"},
	{"a misspelt clause", basic + "pulley top on head ⟦efficency⟧unknown-clause 92 %\nreeve long: litter / top \\ team\n"},
	{"a bad unit", "anchor head strength 30 ⟦kM⟧bad-unit\nload litter mass 80 ⟦kq⟧bad-unit\nload crate mass 10 kg on litter\nhauler team\nrope long\n" + line},
	{"a reeving line that breaks off", basic + "reeve long: litter / head \\⟦⟧syntax\nanchor rear\nreeve b: litter / rear \\ team\nrope b\n"},
	{"a reeving line without a name", "anchor head\nload litter\nhauler team\nrope long\nreeve ⟦:⟧syntax litter / head \\ team\n"},
	{"on without a part", basic + "sling strap on⟦⟧syntax\npulley p on strap\nreeve long: litter / p \\ strap / team\nreeve b: litter / head\nrope b\n"},
	{"a leg without a name after from", "anchor tree\nfocal hub\nleg l from⟦⟧syntax to hub\nleg m from tree to hub\nload litter\nrope long\nreeve long: litter / hub\n"},
	{"a rig without a name", "rig a\n" + basic + line + "rig⟦⟧syntax\n" + basic + line},
	{"a part without a name", basic + "hitch⟦⟧syntax\npulley runner on grab\nreeve long: litter / grab / head \\ runner / team\n"},
	{"a part without a name, and a misspelt one", basic + "hitch⟦⟧syntax\npulley runner on grab\nreeve long: ⟦liter⟧unknown-part / grab / ⟦peg⟧unknown-part \\ runner / team\n"},
	{"two parts without a name", basic + "hitch⟦⟧syntax\npulley ⟦\"q\"⟧syntax\nreeve long: litter / grab / peg \\ team\n"},
	{"a part whose name is torn", basic + "hitch gra⟦\xff⟧bad-character\npulley runner on grab\nreeve long: litter / grab / head \\ runner / team\n"},
	{"a part whose name is torn in its middle", basic + "pulley t⟦\x01⟧bad-characterOp on head\nreeve long: litter / top \\ team\n"},
	{"a part whose name lacks before on", basic + "pulley ⟦on⟧syntax head\nreeve long: litter / top \\ team\n"},
	{"a part for a model", basic + "hitch grab\npulley runner ⟦grab⟧wrong-kind\nreeve long: litter / grab / head \\ runner / team\n"},
	{"on, misspelt", basic + "hitch grab\npulley runner ⟦no⟧unknown-clause grab\nreeve long: litter / grab / head \\ runner / team\n"},
	{"a part for a model, and a stock of that name", "stock pulley grab sheaves 2\n" + basic + "hitch grab on litter\nring eye on head\n" +
		"pulley runner grab\nreeve long: litter / grab / eye \\ runner / team\n"},
	{"a rope's name misspelt in its reeving line", basic + "reeve ⟦lon⟧missing-reeve: litter / head \\ team\n"},
	{"a part misspelt in its own statement", basic + "pulley tob on head\nring eye on litter\nreeve long: litter / ⟦top⟧unknown-part \\ eye / team\n"},
	{"a part misspelt in its own statement and used twice", basic + "hitch grap\npulley runner on ⟦grab⟧unknown-part\n" +
		"reeve long: litter / grab / head \\ runner / team\nexpect load on grab under 3\n"},
	{"an empty reeving line", basic + "pulley top on head\nhitch grab\npulley runner on grab\nreeve long:⟦⟧syntax\n"},
	{"an empty reeving line of one of two rigs", basic + "pulley top on head\nhitch grab\nrig a\nreeve long:⟦⟧syntax\nrig b\nreeve long: litter / grab / top \\ team\n"},
	{"a bad claim", basic + line + "expect advantage ⟦x⟧syntax\n"},
}

func TestBadStatementsMakeTheRigIncomplete(t *testing.T) {
	for text, want := range map[string]bool{
		"puley top on head\n":                          true,
		"pulley\n":                                     true,
		"reeve b: litter /\n":                          true,
		"expect advantage x\n":                         false,
		"units parsec\n":                               false,
		"stock hammer a\n":                             false,
		"knot k on litter retains 70 kN\n":             false,
		"pulley q on litter efficency 92 %\n":          true,
		"load crate on litter mass 80 kq\n":            true,
		"pulley q on litter mass 80 kq\n":              true,
		"pulley q on litter efficiency 80 kN\n":        false,
		"knot k on\n":                                  true,
		"rope b\nreeve b: litter (angle 3 m) / head\n": true,
	} {
		rig, found := oneRig(t, basic+line+text)
		require.NotEmpty(t, found, text)
		assert.Equal(t, want, rig.Incomplete, text)
	}
}

func TestBadRigStatementStillBeginsARig(t *testing.T) {
	file, _ := resolved("yard.rig", "rig a\n"+basic+line+"rig b b b\n"+basic+line+"rig\n"+basic+line)
	require.Len(t, file.Rigs, 3)
	assert.Equal(t, "b", file.Rigs[1].Name)
	assert.Equal(t, "yard", file.Rigs[2].Name)
}
