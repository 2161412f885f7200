package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
)

const line = "reeve long: litter / head \\ team\n"

var nameCases = []marked{
	{"all names known", basic + line},
	{"on", basic + line + "pulley top on ⟦hed⟧unknown-part\nreeve other: litter / top \\ team\nrope other\n"},
	{"a clause of an unknown node", basic + "pulley low on litter\nreeve long: litter / ⟦hxad⟧unknown-part (holds sideways angle 300 deg) \\ low / team\nreeve b: litter / head\nrope b\n"},
	{"node", basic + "reeve long: litter / ⟦haed⟧unknown-part \\ team\nexpect load on head under 1 kN\nedge lip\nanchor rear\nreeve b: litter / head\nrope b\nreeve c: rear / litter\nrope c\n"},
	{"holds", basic + "pulley top on head holds ⟦liter⟧unknown-part\nreeve long: litter / top \\ team\n"},
	{"holds at a node", basic + "pulley top on head\nreeve long: litter / top (holds ⟦liter⟧unknown-part) \\ team\n"},
	{"legs", basic + "anchor tree\nfocal hub\nleg l from ⟦tre⟧unknown-part to ⟦hubb⟧unknown-part\nleg r from tree to hub\n" +
		"reeve long: litter / hub\nreeve b: litter / head \\ team\nrope b\n"},
	{"claims", basic + line + "expect load on ⟦heap⟧unknown-part under 1 kN\nexpect factor of ⟦teem⟧unknown-part over 4\n" +
		"expect held without ⟦x⟧unknown-part\nexpect advantage 1:1 by ⟦taem⟧unknown-part\n" +
		"expect finding no-capture at ⟦q⟧unknown-part\naccept no-capture at ⟦z⟧unknown-part because \"trial\"\n"},
	{"the loss of what cannot fail", basic + line + "counterweight sack on head\ntender guide\nrope b\nreeve b: litter \\ guide\n" +
		"expect held without ⟦litter⟧wrong-kind\nexpect not held without ⟦sack⟧wrong-kind\n" +
		"expect held without ⟦team⟧wrong-kind while hauling\nexpect held without ⟦guide⟧wrong-kind\nexpect not held without head\n" +
		"expect load on litter under 2\n"},
	{"units twice", basic + line + "units kN\n⟦units m⟧duplicate-units\n⟦units ft⟧duplicate-units\n"},
	{"units twice before the rigs", "units kN m\n⟦units N⟧duplicate-units\n" + basic + "rig a\n" + line + "units ft\nrig b\n" + line},
	{"units of the file and of its rigs", "units kN m\n" + basic + "rig a\n" + line + "units N ft\nrig b\n" + line + "units lbf\n⟦units ft⟧duplicate-units\n"},
	{"claims about ropes", basic + line + "expect held without long\nexpect factor of long over 4\n"},
	{"case counts", basic + "reeve long: litter / ⟦Head⟧unknown-part \\ team\nreeve b: litter / head\nrope b\n"},
	{"second part of a name", basic + line + "pulley ⟦head⟧duplicate-name on litter\n"},
	{"the second is judged too", basic + line + "pulley ⟦head⟧duplicate-name on ⟦nowhere⟧unknown-part efficiency ⟦0 %⟧bad-value\n"},
	{"a rope has no name of its own kind", basic + line + "knot ⟦long⟧duplicate-name on litter\n"},
	{"one name in two rigs", "rig a\n" + basic + line + "rig b\n" + basic + line},
	{"one rig twice", "rig a\n" + basic + line + "rig ⟦a⟧duplicate-name\n" + basic + line},
	{"by names a hauler", basic + line + "expect advantage 1:1 by ⟦head⟧wrong-kind\n"},
	{"unused", basic + line + "pulley ⟦spare⟧unused-part on head\nload ⟦box⟧unused-part\n"},
	{"nobody knows what a misspelt node would use", basic + "pulley runner on litter\npulley spare on head\nreeve long: litter / ⟦runer⟧unknown-part \\ team\n"},
	{"nor what a clip would", basic + line + "pulley low on ⟦liter⟧unknown-part\nring eye on head\n"},
	{"nor what a leg would", basic + line + "anchor tree\nfocal hub\nleg l from ⟦tre⟧unknown-part to hub\nleg m from head to hub\n"},
	{"nor what a line without its reeving line would", basic + "cord ⟦tie⟧missing-reeve\nring eye on head\n" + line},
	{"nor what a bad node would", basic + "ring eye on litter\nedge lip\nreeve long: litter / head \\ ⟦lip⟧bend-cannot-tie\nreeve b: litter / head \\ team\nrope b\n"},
	{"nor what a stroke the wrong way would", basic + "ring eye on litter\nanchor high at 9 m\nanchor low at 2 m\nreeve long: litter / high ⟦/⟧stroke-against-position low \\ team\nreeve b: litter / head\nrope b\n"},
	{"nor what a statement that cannot be read would", basic + line + "ring eye on head\n⟦rng⟧unknown-statement other on eye\n"},
	{"a rope without a statement hides no unused part", basic + line + "ring ⟦eye⟧unused-part on head\nreeve ⟦b⟧missing-reeve: litter / head\n"},
	{"nor does a bad value", basic + line + "ring ⟦eye⟧unused-part on head strength ⟦0 kN⟧bad-value\n"},
	{"nor a name in a claim", basic + line + "ring ⟦eye⟧unused-part on head\nexpect load on ⟦hed⟧unknown-part under 1 kN\n"},
	{"used by what is on it", basic + "pulley top on head\ncarabiner link on top\nknot eye on link\nreeve long: litter / eye\n" +
		"reeve b: litter / head \\ team\nrope b\n"},
	{"a second load hangs on the first", basic + line + "load guide on litter\n"},
	{"a heavy part hangs on another", "anchor head\nload litter mass 80 kg\nhauler team\nrope long\n" + line + "ring plate on litter mass 4 kg\n"},
	{"a leg uses its ends", "anchor tree\nfocal hub\nleg l from tree to hub\nload litter\nrope long\nreeve long: litter / hub\n"},
	{"nothing at all", "# only a comment\n"},
}

func TestHints(t *testing.T) {
	cases := []struct{ text, want, fix string }{
		{"pulley runner on head\nreeve long: litter / runer", "runer is not a part of this rig, did you mean runner?", "write runner"},
		{"reeve long: litter / haed", "haed is not a part of this rig, did you mean head?", "write head"},
		{"reeve long: litter / HEAD", "HEAD is not a part of this rig, did you mean head?", "write head"},
		{"reeve long: litter / wagon", "wagon is not a part of this rig", ""},
		{"pulley block1 on head\npulley block2 on head\nreeve long: litter / block3",
			"block3 is not a part of this rig, did you mean block1 or block2?", ""},
		{"pulley q1 on head\nreeve long: litter / q2", "q2 is not a part of this rig", ""},
	}
	for _, c := range cases {
		rig := "anchor head\nload litter\nrope long\n" + c.text + "\n"
		file, found := resolved("yard.rig", rig)
		assert.Equal(t, c.want, message(t, found, "unknown-part"))
		if c.fix != "" {
			fixed := langtest.Fixed(t, file.Source, found, c.fix)
			_, after := resolved("yard.rig", fixed)
			for _, d := range after {
				assert.NotEqual(t, "unknown-part", d.Rule)
			}
			continue
		}
		for _, d := range found {
			assert.Empty(t, d.Fixes, d.Message)
		}
	}
}

// A name that no part has is reported once, with its other places; the fix mends all.
func TestUnknownNameIsOneFinding(t *testing.T) {
	text := basic + "hitch grap\npulley runner on grab\nreeve long: litter / grab / head \\ runner / team\nexpect load on grab under 3\n"
	file, found := resolved("yard.rig", text)
	require.Len(t, found, 1)
	require.Len(t, found[0].Related, 2)
	assert.Equal(t, "grab is named here too", found[0].Related[1].Message)
	fixed := langtest.Fixed(t, file.Source, found, "write grap")
	assert.NotContains(t, fixed, "grab")
	_, after := resolved("yard.rig", fixed)
	assert.Empty(t, after)
	_, found = resolved("yard.rig", "pulley runner on grub\npulley low on grub\n"+basic+"rig a\nreeve long: litter / grub / grub / head\nrig b\nreeve long: litter / head \\ grub\n")
	require.Len(t, found, 3, "one before the rigs, one in each of them")
	assert.Len(t, found[0].Related, 1)
	assert.Len(t, found[1].Related, 1)
	assert.Empty(t, found[2].Related)
}

func TestDuplicateNamesTheFirst(t *testing.T) {
	rig, found := oneRig(t, basic+line+"pulley head on litter\n")
	assert.Len(t, found, 1)
	assert.Equal(t, rig.Part("head").NamePlace, found[0].Related[0].Place)
	assert.Equal(t, "head", found[0].Subject)
	assert.True(t, rig.Incomplete)
}
