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
