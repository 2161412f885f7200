package resolve

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
)

// on puts a rig "both" behind the rig "a", which is a stage.
func on(statements string) string { return "rig a\n" + stage + "rig both\n" + statements }

var includeCases = []marked{
	{"a copy", on("include a as low\n")},
	{"a rig further down", "rig both\ninclude a as low\nrig a\n" + stage},
	{"the rig of a file without rig", "include ⟦yard⟧include-circle as low\n" + stage},
	{"of what is not there", on("include ⟦aa⟧unknown-rig as low\nexpect load on low.head under 1 kN\nreeve r: low.litter / low.team\nrope r\n")},
	{"a misspelt rig", "rig stage-one\n" + stage + "rig both\ninclude ⟦stage-on⟧unknown-rig as low\n"},
	{"one name twice", on("include a as low\ninclude a as ⟦low⟧duplicate-name\n")},
	{"the name of a part", on("include a as ⟦low⟧duplicate-name\nanchor low\nrope r\nload l\nreeve r: l / low\n")},
	{"a part with a name of the copy", on("include a as low\nanchor ⟦low.head⟧duplicate-name\n")},
	{"names of a copy", on("include a as low\nhauler crew\nrope r\nreeve r: low.team / crew\nexpect load on low.head under 1 kN\nknot k on low.litter\n" +
		"reeve r2: k / ⟦mid.litter⟧unknown-part\nrope r2\nreeve r3: ⟦low.liter⟧unknown-part / k\nrope r3\n")},
	{"itself", "rig a\ninclude ⟦a⟧include-circle as b\n" + stage},
	{"a circle of two", "rig a\ninclude b as x\n" + stage + "rig b\ninclude ⟦a⟧include-circle as y\n" + stage},
	{"a circle of three, included from outside", "rig d\ninclude a as x\nrig a\ninclude b as x\nrig b\ninclude c as x\nrig c\ninclude ⟦a⟧include-circle as x\n"},
	{"before the first rig", "include ⟦a⟧include-circle as low\nrig a\n" + stage + "rig b\n"},
	{"before the first rig, from another file", "use \"stages.rig\"\ninclude stage as low\nrig a\njoin low.team to high.litter\ninclude stage as high\nrig b\n"},
	{"faults of the included rig are its own", "rig a\n" + strings.Replace(stage, "on grab", "on ⟦grub⟧unknown-part", 1) + "pulley x ⟦mystery⟧unknown-model on head\nknot n on x\n" +
		"reeve y: n / ⟦runer⟧unknown-part\nrope y\nrig both\ninclude a as low\ninclude a as high without top\nreeve z: low.head / high.head\nrope z\n"},
	{"advice on the included rig is its own", "rig a\n" + stage + "pulley x ⟦mystery⟧unknown-model on head\nreeve ⟦y⟧missing-reeve: x \\ litter\nrig both\ninclude a as low\n"},
	{"what the included rig does not use is its own", "rig a\n" + stage + "ring ⟦spare⟧unused-part on head\nrig both\ninclude a as low\n"},
	{"new in the copy", on("include a as ⟦low⟧mass-missing\nload crate mass 3 kg\nrope r\nreeve r: crate / low.head\n")},
	{"with a clause", on("include a as low with litter mass 90 kg with top efficiency 92 % strength 36 kN\n")},
	{"with a clause that its kind does not take", on("include a as low with litter ⟦strength 5 kN⟧misplaced-clause\n")},
	{"with a clause that cannot be", on("include a as low with top efficiency ⟦0 %⟧bad-value\n")},
	{"with a clause twice", on("include a as low with litter mass 5 kg with litter ⟦mass 6 kg⟧repeated-clause\n")},
	{"with a name of the rig", on("include a as low with top holds ⟦liter⟧unknown-part\n")},
	{"with an end that is none", on("include a as low with top holds ⟦grab⟧hold-ambiguous\n")},
	{"with a part that is not there", on("include a as low with ⟦liter⟧unknown-part mass 90 kg\n")},
	{"with a rope that has no statement", "rig a\n" + basic + line + "reeve ⟦b⟧missing-reeve: litter / head\nrig both\ninclude a as low with ⟦b⟧misplaced-clause length 3 m\n"},
	{"with what is left out", on("include a as low with ⟦grab⟧misplaced-clause cord 8 mm without grab without runner\n")},
	{"a name of a rig that lacks something", "rig a\ninclude ⟦b⟧unknown-rig as x\n" + stage + "rig c\ninclude a as y\nexpect load on y.x.head under 1\nexpect load on y.what under 1\nexpect load on ⟦y.hed⟧unknown-part under 1\n"},
	{"an include that cannot be read", on("include a ⟦low⟧syntax\nreeve r: low.litter / low.team\nrope r\n")},
}

func TestCopy(t *testing.T) {
	text := on("include a as low with litter mass 90 kg at 2 m\n")
	text = strings.Replace(text, "pulley top", "# the block\npulley top prusik", 1)
	file, _ := resolved("yard.rig", text)
	base, rig := file.Rigs[0], file.Rigs[1]
	require.Len(t, rig.Parts, len(base.Parts))
	for i, p := range rig.Parts {
		of := base.Parts[i]
		assert.Equal(t, "low."+of.Name, p.Name)
		assert.Equal(t, of.Kind, p.Kind)
		assert.Equal(t, of.Model, p.Model)
		assert.Equal(t, of.Doc, p.Doc)
		assert.Equal(t, of.NamePlace, p.NamePlace.Original())
		assert.Equal(t, of.Place, p.Place.Original())
		assert.Equal(t, "low", p.Place.Home().Text())
		if of.On != nil {
			assert.Equal(t, "low."+of.On.Name, p.On.Name)
		}
	}
	assert.Equal(t, []string{"the block"}, rig.Part("low.top").Doc)
	assert.Same(t, rig.Part("low.litter"), rig.Part("low.top").Values.HoldsEnd)
	mass := rig.Part("low.litter").Values
	assert.Equal(t, "90", mass.Mass.Low.RatString())
	assert.Equal(t, "mass 90 kg", mass.Places["mass"].Text())
	assert.Same(t, file.Source, mass.Places["mass"].File, "what with says stands in the rig")
	assert.Nil(t, base.Part("litter").Values.Mass)
	rope, of := rig.Ropes[0], base.Ropes[0]
	assert.Equal(t, of.Strokes, rope.Strokes)
	for i, n := range rope.Nodes {
		assert.Equal(t, "low."+of.Nodes[i].Name(), n.Name())
		assert.Equal(t, of.Nodes[i].Role, n.Role)
		assert.Equal(t, of.Nodes[i].Holds, n.Holds)
		assert.Equal(t, of.Nodes[i].Place, n.Place.Original())
	}
	require.Len(t, rig.Includes, 1)
	assert.Same(t, base, rig.Includes[0].Of)
}

func TestCopiesOfCopies(t *testing.T) {
	file, found := resolved("yard.rig", on("include a as low with litter mass 90 kg\ninclude a as high with litter weight 800 N\n")+
		"rig all\ninclude both as x with low.litter weight 5 N with high.litter mass 4 kg\ninclude both as y\n")
	require.Empty(t, found)
	all := file.Rigs[2]
	x, y := all.Part("x.low.litter"), all.Part("y.low.litter")
	assert.Equal(t, "5", x.Values.Weight.Low.RatString())
	assert.Nil(t, x.Values.Mass, "a weight stands in place of a mass")
	assert.Nil(t, all.Part("x.high.litter").Values.Weight)
	assert.Equal(t, "90", y.Values.Mass.Low.RatString())
	assert.Equal(t, "x", x.Place.Home().Text())
	assert.Equal(t, "y", y.Values.Places["mass"].Home().Text())
	assert.Equal(t, "mass 90 kg", y.Values.Places["mass"].Text())
	assert.NotSame(t, x.Place.File, y.Place.File)
	assert.Same(t, file.Source, y.Place.Original().File)
}

func TestWithBeatsTheModel(t *testing.T) {
	file, found := resolved("yard.rig", "use \"stages.rig\"\ninclude double as d with low strength 5 kN\n")
	require.Empty(t, found)
	v := file.Rigs[0].Part("d.low").Values
	assert.Equal(t, "5000", v.Strength.Low.RatString())
	assert.Equal(t, "2", v.Sheaves.Low.RatString())
}

func TestClaimsAreNotCopied(t *testing.T) {
	file, found := resolved("yard.rig", "rig a\n"+stage+"units lbf ft\nexpect advantage 4:1\naccept no-capture because \"x\"\nrig both\ninclude a as low\n")
	require.Empty(t, found)
	assert.Empty(t, file.Rigs[1].Claims)
	assert.Empty(t, file.Rigs[1].Accepted)
	assert.Empty(t, file.Rigs[1].Units)
}

func TestFindingsInACopyStandAtItsName(t *testing.T) {
	_, found := resolved("yard.rig", on("include a as low\nload crate mass 3 kg\nrope r\nreeve r: crate / low.head\n"))
	require.Len(t, found, 1)
	assert.Equal(t, "low.litter needs a mass, since crate has one", found[0].Message)
	require.Len(t, found[0].Related, 2)
	assert.Equal(t, "written here", found[0].Related[0].Message)
	assert.Equal(t, "litter", found[0].Related[0].Place.Text())
	assert.Empty(t, found[0].Fixes)
}

// What stands before the first rig and has nothing to do in a rig is none of its parts:
// a load that no rope holds would fall.
func TestIdlePartsAreNoneOfTheRig(t *testing.T) {
	file, found := resolved("yard.rig", "anchor head\nload litter\nhauler team\npulley top on head\nrope long\nrope other\n"+
		"rig a\nreeve long: litter / top \\ team\nrig b\ninclude a as low\nanchor rear\nring eye on rear\nload box\nreeve other: box / eye\nexpect load on head under 1\n")
	require.Empty(t, found)
	var names []string
	for _, p := range file.Rigs[1].Parts {
		names = append(names, p.Name)
	}
	assert.Equal(t, []string{"head", "other", "low.head", "low.litter", "low.team", "low.top", "low.long", "rear", "eye", "box"}, names,
		"what a claim names stays")
	for i, p := range file.Rigs[1].Parts {
		assert.Equal(t, i, p.Index)
	}
}

func TestManyCopiesAreBounded(t *testing.T) {
	var b strings.Builder
	b.WriteString("rig r0\n" + stage)
	for i := range 40 {
		fmt.Fprintf(&b, "rig r%d\ninclude r%d as a\ninclude r%d as b\n", i+1, i, i)
	}
	file, found := resolved("yard.rig", b.String())
	for _, d := range found {
		assert.Equal(t, "too-large", d.Rule)
	}
	assert.Contains(t, found[0].Message, "b is left out, and what comes after it: the copies in r7 would have more than 4000 words")
	assert.Less(t, len(found), 10)
	total := 0
	for _, rig := range file.Rigs {
		total += len(rig.Parts)
	}
	assert.Less(t, total, 20_000)
	last := file.Rigs[len(file.Rigs)-1]
	assert.True(t, last.Incomplete)
}

func TestDeepCopiesAreBounded(t *testing.T) {
	var b strings.Builder
	b.WriteString("rig r0\n" + stage)
	for i := range 20_000 {
		fmt.Fprintf(&b, "rig r%d\ninclude r%d as a\n", 20_000-i, 20_000-i-1)
	}
	_, found := resolved("yard.rig", b.String())
	require.NotEmpty(t, found)
	assert.Equal(t, "too-large", found[0].Rule)
	assert.Equal(t, "a is left out: it is a copy of a copy and so on, 64 deep, and no more are made", found[0].Message)
}

func partNames(rig *model.Rig) []string {
	var names []string
	for _, p := range rig.Parts {
		names = append(names, p.Name)
	}
	return names
}
