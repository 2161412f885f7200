package resolve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
)

var valueCases = []marked{
	{"good values", "anchor head strength 30 kN friction 0\nload litter mass 180 kg slope 90 deg friction 0.3 people 2 raise 12 m\n" +
		"hauler team people 3 pull 250 N\nrope long diameter 11 mm length 60 m strength 30 kN\n" +
		"pulley top on head efficiency 100 % sheaves 2 set-back 0 m\nreeve long: litter / top (efficiency 0.9) \\ team (share 100 %)\nreeve b: litter / head\nrope b\n"},
	{"not over zero", "anchor head strength ⟦0 kN⟧bad-value\nload litter mass ⟦-1 kg⟧bad-value\nhauler team people ⟦0⟧bad-value pull ⟦-5 N⟧bad-value\n" +
		"rope long diameter ⟦0 mm⟧bad-value length ⟦-2 m⟧bad-value\n" + line},
	{"weight", "load litter weight ⟦0 N⟧bad-value\nanchor head\nrope long\nreeve long: litter / head\n"},
	{"friction under zero", basic + line + "edge lip friction ⟦-0.1⟧bad-value\nrope b\nreeve b: litter / lip / head\n"},
	{"efficiency", basic + line + "pulley a on head efficiency ⟦0 %⟧bad-value\npulley b on head efficiency ⟦101 %⟧bad-value\n" +
		"device c on head efficiency 60 % lowering ⟦140 %⟧bad-value\npulley d on head efficiency ⟦92⟧bad-value\npulley e on head efficiency 1\n" +
		"rope x\nreeve x: litter / a \\ b / c \\ d / e\n"},
	{"counts", basic + line + "pulley a on head sheaves ⟦0⟧bad-value\nhitch h wraps ⟦0⟧bad-value\nrope x\nreeve x: litter / h / a\nload box people ⟦-2⟧bad-value on litter\n"},
	{"ranges backward", basic + line + "pulley a on head efficiency ⟦0.96 to 0.93⟧bad-value strength 30 to 36 kN\nrope x\nreeve x: litter / a (efficiency ⟦95 to 90⟧bad-value %)\n"},
	{"a range of two equal ends", basic + line + "pulley a on head efficiency 0.9 to 0.9\nrope x\nreeve x: litter / a\n"},
	{"one end out of bounds", basic + line + "pulley a on head efficiency ⟦90 to 110 %⟧bad-value\nrope x\nreeve x: litter / a\n"},
	{"mass and weight", "anchor head\nload litter mass 80 kg ⟦weight 800 N⟧bad-value\nhauler team\nrope long\n" + line},
	{"slope", "anchor head\nload litter slope ⟦91 deg⟧bad-value\nhauler team\nrope long\n" + line},
	{"node values", basic + "reeve long: litter (retains ⟦0 %⟧bad-value) / head (friction ⟦-1⟧bad-value) \\ team (share ⟦120 %⟧bad-value)\n"},
	{"a mass is missing", "anchor head\nload ⟦litter⟧mass-missing\nload crate mass 90 kg on litter\nhauler team\nrope long\n" + line},
	{"of a counterweight", "anchor head\nload litter weight 900 N\ncounterweight ⟦sack⟧mass-missing on litter\nhauler team\nrope long\n" + line},
	{"since a pulley has one", "anchor head\nload ⟦litter⟧mass-missing\nhauler team\nrope long\npulley top on head mass 2 kg\nreeve long: litter / top \\ team\nreeve b: litter / head\nrope b\n"},
	{"none has one", "anchor head\nload litter\nload crate on litter\nhauler team\nrope long\n" + line},
	{"a bad one is one", "anchor head\nload litter mass ⟦0 kg⟧bad-value\nload crate mass 90 kg on litter\nhauler team\nrope long\n" + line},
	{"only the hauler is without", "anchor head\nload litter mass 80 kg\nhauler team\nrope long\n" + line},
}

func TestBadValuesAreLeftOut(t *testing.T) {
	rig, found := oneRig(t, "anchor head strength -3 kN\nload litter mass -80 kg\nhauler team\nrope long\n"+line)
	assert.Len(t, found, 2)
	assert.Equal(t, "head has strength -3 kN; it must be more than 0", found[0].Message)
	assert.Nil(t, rig.Part("head").Values.Strength)
	assert.Nil(t, rig.Part("litter").Values.Mass)
	assert.Contains(t, rig.Part("litter").Values.Places, "mass")
	assert.True(t, rig.Incomplete, "without its mass the forces are others")
	rig, _ = oneRig(t, "anchor head strength -3 kN\nload litter\nhauler team\nrope long\n"+line)
	assert.False(t, rig.Incomplete, "a strength changes no force")
}

func TestValueFixes(t *testing.T) {
	cases := []struct{ clause, title, want string }{
		{"efficiency 92", "write 92 %", "efficiency 92 %"},
		{"efficiency 90 to 95", "write 90 to 95 %", "efficiency 90 to 95 %"},
		{"efficiency 95 to 90 %", "write the smaller end first", "efficiency 90 to 95 %"},
		{"strength 36 to 22 kN", "write the smaller end first", "strength 22 to 36 kN"},
	}
	for _, c := range cases {
		rig := basic + line + "rope x\nreeve x: litter / a\npulley a on head "
		file, found := resolved("yard.rig", rig+c.clause)
		require.Len(t, found, 1, c.clause)
		fixed := langtest.Fixed(t, file.Source, found, c.title)
		assert.Equal(t, rig+c.want, fixed)
		_, after := resolved("yard.rig", fixed)
		assert.Empty(t, after)
	}
	_, found := resolved("yard.rig", basic+line+"rope x\nreeve x: litter / a\npulley a on head efficiency 120")
	require.Len(t, found, 1)
	assert.Empty(t, found[0].Fixes, "120 % would be wrong too")
}

func TestRangeWrittenBackwardIsTurned(t *testing.T) {
	rig, _ := oneRig(t, "pulley a efficiency 0.96 to 0.93\n")
	v := rig.Part("a").Values.Efficiency
	assert.Equal(t, "93/100", v.Low.RatString())
	assert.Equal(t, "24/25", v.High.RatString())
}

func TestEveryClauseReachesItsValue(t *testing.T) {
	rig, found := oneRig(t, `device d efficiency 60 % lowering 40 % strength 15 kN holds takes 9 to 11 mm turns 2 set-back 10 cm releasable at 3.5 m length 20 cm mass 1 kg
hitch h cord 8 mm wraps 3 slips 7 kN
clamp c damages 4 kN
knot k retains 70 %
rope r material polyamide friction 0.2
edge e padded angle 90 deg
carabiner x locking sideways
carabiner y plain
hauler team people 3 pull 250 N
load l mass 80 kg slope 30 deg raise 12 m
`)
	for _, d := range found {
		assert.NotEqual(t, "bad-value", d.Rule, d.Message)
	}
	d := rig.Part("d").Values
	assert.Equal(t, "3/5", d.Efficiency.Low.RatString())
	assert.Equal(t, "2/5", d.Lowering.Low.RatString())
	assert.Equal(t, "15000", d.Strength.Low.RatString())
	assert.True(t, d.Holds)
	assert.True(t, d.Releasable)
	assert.Equal(t, "9/1000", d.Takes.Low.RatString())
	assert.Equal(t, "11/1000", d.Takes.High.RatString())
	assert.Equal(t, "2", d.Turns.Low.RatString())
	assert.Equal(t, "1/10", d.SetBack.Low.RatString())
	assert.Equal(t, "7/2", d.At.Low.RatString())
	assert.Equal(t, "1/5", d.Length.Low.RatString())
	assert.Equal(t, "1", d.Mass.Low.RatString())
	assert.Equal(t, "40 %", d.Places["lowering"].Text())
	h := rig.Part("h").Values
	assert.Equal(t, "1/125", h.Cord.Low.RatString())
	assert.Equal(t, "3", h.Wraps.Low.RatString())
	assert.Equal(t, "7000", h.Slips.Low.RatString())
	assert.Equal(t, "4000", rig.Part("c").Values.Damages.Low.RatString())
	assert.Equal(t, "7/10", rig.Part("k").Values.Retains.Low.RatString())
	assert.Equal(t, "polyamide", rig.Part("r").Values.Material)
	assert.True(t, rig.Part("e").Values.Padded)
	assert.True(t, rig.Part("x").Values.Locking)
	assert.True(t, rig.Part("x").Values.Sideways)
	assert.True(t, rig.Part("y").Values.Plain)
	assert.Equal(t, "3", rig.Part("team").Values.People.Low.RatString())
	assert.Equal(t, "250", rig.Part("team").Values.Pull.Low.RatString())
	assert.Equal(t, "30", rig.Part("l").Values.Slope.Low.RatString())
	assert.Equal(t, "12", rig.Part("l").Values.Raise.Low.RatString())
}
