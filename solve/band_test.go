package solve_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
)

// A load on two strands round a pulley at rest: with η = 0.8 one side carries x, the
// other between 0.8·x and x/0.8, and both add up to the load.
func TestBandOfABendAtRest(t *testing.T) {
	res := solved(t, `
anchor left
anchor right
pulley low efficiency 80 %
load crate on low
rope strop
reeve strop: left \ low / right
`)
	b := res.Band(res.Hold())
	require.True(t, b.Known())
	assert.Equal(t, [3]string{"1/2", "4/9", "5/9"}, bounds(b.Strands[0].Force))
	assert.Equal(t, [3]string{"1/2", "4/9", "5/9"}, bounds(b.Strands[1].Force))
}

func TestBandIsUnknownWithoutEfficiency(t *testing.T) {
	res := solved(t, `
anchor left
pulley low
load crate on low
rope strop
reeve strop: left \ low / left
`)
	b := res.Band(res.Hold())
	require.NotNil(t, b)
	assert.False(t, b.Known())
	assert.Equal(t, "low", b.Unknown[0].Name)
	straight := solved(t, "anchor a\nload l\nrope r\nreeve r: l / a\n")
	assert.Nil(t, straight.Band(straight.Hold()), "nothing bends")
}

// The band holds the figures shown, on random rigs.
func TestBandContainsTheFigures(t *testing.T) {
	dice, bands := langtest.Seeded(19), 0
	for range 2000 {
		text := efficient(langtest.RandomRig(dice), "80 %")
		res := solved(t, text)
		for _, ph := range res.Every() {
			b := res.Band(ph)
			if !b.Known() {
				continue
			}
			bands++
			shown := ph.Strands
			if ph.Actual.Known() {
				shown = ph.Actual.Strands
			}
			for i, s := range b.Strands {
				if !s.Known() {
					continue
				}
				assert.Zero(t, s.Value.Cmp(*shown[i].Value), text)
				assert.LessOrEqual(t, s.Low.Cmp(*s.Value), 0, "%s\n%s", ph.Name, text)
				if s.High != nil {
					assert.GreaterOrEqual(t, s.High.Cmp(*s.Value), 0, "%s\n%s", ph.Name, text)
				}
			}
		}
	}
	assert.Greater(t, bands, 50)
	t.Log(bands, "bands")
}
