package solve_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/solve"
)

func lower(t *testing.T, text string) *solve.Phase {
	res := solved(t, text)
	require.Len(t, res.Lowers, 1)
	return res.Lowers[0]
}

func TestLoweringThroughAnOpenedDevice(t *testing.T) {
	ph := lower(t, parts+`
anchor head
device brake on head efficiency 50 % lowering 20 % holds releasable
rope long
reeve long: litter / brake \ team
`)
	assert.Equal(t, solve.Lowers, ph.Status)
	assert.Equal(t, "1", ph.Pull.String(), "without friction the hand holds it all")
	require.True(t, ph.Actual.Known())
	assert.Equal(t, "1/5", ph.Actual.Pull.Value.String(), "the lowering efficiency counts")
	for _, m := range ph.Motion {
		assert.Equal(t, "-1", m.Rise.String())
	}
}

func TestNothingComesDownPastAClosedCapture(t *testing.T) {
	ph := lower(t, threeToOne)
	assert.Equal(t, solve.StaysUp, ph.Status)
	require.Len(t, ph.Holding, 1)
	assert.Equal(t, "top", ph.Holding[0].Name)
	assert.True(t, ph.Pull.IsZero())
}

// Wraps on a tree: μ 0.3, two and a half turns, 50 N held against 5565 N (open
// statics course notes, read): 50·e^(0.3·5π).
func TestPublishedCapstan(t *testing.T) {
	ph := lower(t, `
anchor tree friction 0.3 turns 2
load block weight 5565 N
hauler hand
rope line
reeve line: block / tree \ hand
`)
	// Two whole turns and the half turn of the strokes.
	require.True(t, ph.Actual.Known())
	assert.InDelta(t, 50, 5565*ph.Actual.Pull.Value.Float(), 0.05)
}

// μ 0.3: T₂/T₁ is 6.6 after one turn and about 43 after two (openknowledgegraph,
// belt drives, read).
func TestPublishedBelt(t *testing.T) {
	for turns, want := range map[string]float64{"1": 6.6, "2": 43} {
		ph := lower(t, `
anchor tree friction 0.3 turns `+turns+`
load block
hauler hand
rope line
reeve line: block / tree (angle 180 deg) / hand
`)
		require.True(t, ph.Actual.Known())
		assert.InDelta(t, want, 1/ph.Actual.Pull.Value.Float(), 0.6)
		assert.InDelta(t, math.Exp(0.3*2*math.Pi*map[string]float64{"1": 1, "2": 2}[turns]), 1/ph.Actual.Pull.Value.Float(), 1e-9)
	}
}

// Three to one lowered through an opened brake beside an opened belay that nobody
// holds: past the brake 15 %, past the pulley 92 % of what comes.
func TestLoweringThroughATractorWithFriction(t *testing.T) {
	ph := lower(t, `
anchor head
anchor tree
load litter
hauler team
tender belayer
device brake on head efficiency 60 % lowering 15 % holds releasable
hitch grab
pulley runner on grab efficiency 92 %
device plate on tree holds releasable
rope main
rope belay
reeve main: litter / grab / brake \ runner / team
reeve belay: litter / plate \ belayer
`)
	require.Equal(t, solve.Lowers, ph.Status)
	assert.Equal(t, "1/3", ph.Pull.String())
	require.True(t, ph.Actual.Known())
	past := 1 / (1 + 0.15 + 0.15*0.92) // the tension between hitch and brake
	assert.InDelta(t, 0.15*0.92*past, ph.Actual.Pull.Value.Float(), 1e-9)
	assert.InDelta(t, 0, carried(ph.Actual, "tree"), 1e-9)
}

// Both ways to the hand force agree on random rigs whose captures can be opened,
// but for the few in which friction changes the mode.
func TestTheTwoWaysToTheHandForceAgree(t *testing.T) {
	dice, agree, other := langtest.Seeded(17), 0, 0
	for range 4000 {
		text := efficient(langtest.RandomRig(dice), "85 % releasable")
		res := solved(t, text)
		for _, ph := range res.Lowers {
			if ph.Status != solve.Lowers || !ph.Actual.Known() {
				continue
			}
			mode, largest := solve.TwoForces(res, ph)
			require.NotNil(t, largest, text)
			if mode != nil && mode.Cmp(*largest) == 0 {
				agree++
			} else {
				other++ // friction changes the mode: a strand slackens or a hitch lets go
				assert.True(t, mode == nil || mode.Cmp(*largest) < 0, text)
			}
			assert.Zero(t, ph.Actual.Pull.Value.Cmp(largest.Abs()), text)
			assert.LessOrEqual(t, ph.Actual.Pull.Value.Cmp(*ph.Pull), 0, "friction helps the hand\n%s", text)
		}
	}
	t.Log(agree, "agree,", other, "in another mode")
	assert.Greater(t, agree, 50*max(1, other/3))
}
