package solve_test

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve"
)

func perCent(low, high int64) *quantity.Quantity {
	return &quantity.Quantity{Low: big.NewRat(low, 100), High: big.NewRat(high, 100)}
}

const metal = `anchor head
load litter mass 100 kg
hauler team
carabiner top on head efficiency 50 % holds
hitch grab
pulley runner on grab efficiency 90 %
rope long
reeve long: litter / grab / top \ runner / team
`

// With η of the runner 0.9: 1 + 0.9 + 0.9·η.
func TestAHaulWithOtherHardware(t *testing.T) {
	for _, res := range []*solve.Result{solved(t, metal), solve.Ideal(read(t, metal))} {
		ph, top := res.Main(), res.Rig.Part("top")
		now := res.HaulWith(ph, nil)
		require.True(t, now.Known())
		assert.Equal(t, "47/20", now.Advantage.Value.String())
		assert.Equal(t, "47/60", now.Efficiency.Value.String())
		assert.Nil(t, now.Parts)
		then := res.HaulWith(ph, map[*model.Part]solve.Hardware{top: {Kind: model.Pulley, Efficiency: perCent(80, 90)}})
		require.True(t, then.Known())
		assert.Equal(t, "131/50", then.Advantage.Low.String())
		assert.Equal(t, "271/100", then.Advantage.High.String())
		unknown := res.HaulWith(ph, map[*model.Part]solve.Hardware{top: {Kind: model.Pulley}})
		assert.Equal(t, []*model.Part{top}, unknown.Unknown)
		assert.Nil(t, res.HaulWith(res.Hold(), nil))
	}
}

// A quarter turn over a carabiner leaves √η, over a pulley 1/(1 + (1/η − 1)·cos 45°).
func TestOtherHardwareKeepsTheAngle(t *testing.T) {
	res := solved(t, "anchor head\nload litter\nhauler team\ncarabiner top on head efficiency 49 % holds\nrope long\n"+
		`reeve long: litter / top (angle 90 deg) \ team`)
	ph, top := res.Main(), res.Rig.Part("top")
	assert.InDelta(t, 0.7, res.HaulWith(ph, nil).Advantage.Value.Float(), 1e-9)
	then := res.HaulWith(ph, map[*model.Part]solve.Hardware{top: {Kind: model.Pulley, Efficiency: perCent(80, 80)}})
	assert.InDelta(t, 1/(1+0.25*0.7071067811865476), then.Advantage.Value.Float(), 1e-9)
}

// Whatever the rig: without other hardware the figures are those of the rig, and with
// other hardware those of the rig written with it.
func TestOtherHardwareOnRandomRigs(t *testing.T) {
	dice, known := langtest.Seeded(31), 0
	for range 2000 {
		text := langtest.RandomRig(dice)
		a, b := solved(t, efficient(text, "75 to 85 %")), solved(t, efficient(text, "90 %"))
		instead := map[*model.Part]solve.Hardware{}
		for _, p := range a.Rig.Parts {
			if p.Kind == model.Pulley {
				instead[p] = solve.HardwareOf(b.Rig.Part(p.Name))
			}
		}
		for i, ph := range a.Hauls() {
			same(t, ph.Actual, a.HaulWith(ph, nil))
			same(t, b.Hauls()[i].Actual, a.HaulWith(ph, instead))
			if ph.Actual.Known() {
				known++
			}
		}
	}
	assert.Greater(t, known, 100)
}

// same compares two sets of figures.
func same(t require.TestingT, want, got *solve.Actual) {
	if want == nil {
		require.Nil(t, got)
		return
	}
	require.NotNil(t, got)
	require.Equal(t, want.Stuck, got.Stuck)
	require.Equal(t, want.Known(), got.Known())
	require.Equal(t, want.Pull, got.Pull)
	require.Equal(t, want.Advantage, got.Advantage)
	require.Equal(t, want.Efficiency, got.Efficiency)
}

// For one metre of rope hauled on a three to one, litter, grab and runner rise by a
// third: so much passes the top, and twice that the runner, which comes up itself.
func TestHowMuchRopeRuns(t *testing.T) {
	res := solved(t, threeToOne)
	ph := res.Main()
	r := res.Rig.Ropes[0]
	var passes []string
	for i := range r.Nodes {
		passes = append(passes, ph.Runs(r, i).String())
	}
	assert.Equal(t, []string{"0", "0", "1/3", "2/3", "0"}, passes)
	assert.True(t, res.Hold().Runs(r, 2).IsZero())
}

// At a friction of 0.4 to 0.6 and 60 degrees of wrap the tension grows by
// e^(0.4·π/3) = 1.520 to e^(0.6·π/3) = 1.874, in the middle by 1.688.
func TestGrowthOfTheTensionPastABend(t *testing.T) {
	rig := read(t, "anchor head\nedge lip angle 120 deg friction 0.4 to 0.6\nedge flat angle 120 deg\nload litter\nhauler team\nrope long\n"+
		`reeve long: litter / lip / flat / head \ team`)
	grows := solve.Growth(rig.Ropes[0], 1)
	assert.InDelta(t, 1.5202, grows.Low.Float(), 1e-4)
	assert.InDelta(t, 1.6881, grows.Value.Float(), 1e-4)
	assert.InDelta(t, 1.8745, grows.High.Float(), 1e-4)
	assert.False(t, solve.Growth(rig.Ropes[0], 2).Known())
}
