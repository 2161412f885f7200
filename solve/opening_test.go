package solve_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
)

const legged = kilo + `
anchor a
anchor b
anchor c
focal master
leg la from a to master angle %LEFT% deg
leg lb from b to master angle %RIGHT% deg
%THIRD%
pulley top on master holds
rope long
reeve long: litter / top \ team
`

func opening(t *testing.T, left, right, third string) solve.Opening {
	list := solved(t, filled(legged, "LEFT", left, "RIGHT", right, "THIRD", third)).Openings()
	require.Len(t, list, 1)
	return list[0]
}

// Leg loads of a symmetric two-leg anchor under 100 lb at 30, 60, 90, 120 and 150 degrees
// (Gaines, Rappelling, p. 61): 52, 58, 71, 100, 193 lb.
func TestOpeningOfEvenLegs(t *testing.T) {
	for angle, percent := range map[int]float64{30: 52, 60: 58, 90: 71, 120: 100, 150: 193} {
		o := opening(t, fmt.Sprint(-float64(angle)/2), fmt.Sprint(float64(angle)/2), "")
		assert.Equal(t, fmt.Sprint(angle), o.Angle.String())
		assert.Equal(t, "haul", o.Phase.Name, "the redirect doubles the load while hauling")
		assert.InDelta(t, percent, 100*o.OnLeft.Value.Float()/o.Load.Value.Float(), 0.5)
		assert.Equal(t, o.OnLeft.Value.String(), o.OnRight.Value.String())
	}
	even := opening(t, "-60", "60", "")
	assert.Zero(t, even.Angle.Cmp(solve.EvenAngle))
	assert.Equal(t, even.Load.Value.String(), even.OnLeft.Value.String(), "there each leg carries the whole load")
}

func TestOpeningOfOtherLegs(t *testing.T) {
	o := opening(t, "-20", "80", "")
	assert.Equal(t, "100", o.Angle.String())
	assert.InDelta(t, 2*math.Sin(80*math.Pi/180)/math.Sin(100*math.Pi/180), o.OnLeft.Value.Float(), 1e-9)
	o = opening(t, "-20", "10", "leg lc from c to master angle -60 deg")
	assert.Equal(t, []string{"lc", "lb", "70"}, []string{o.Left.Name, o.Right.Name, o.Angle.String()})
	// One that may push holds up those that pull.
	o = opening(t, "-20", "10", "leg lc from c to master angle 80 deg strut")
	assert.Equal(t, "30", o.Angle.String())
	// Two that push open as two that pull do.
	shears := solved(t, filled(strings.NewReplacer("%LEFT% deg", "-50 deg strut", "%RIGHT% deg", "50 deg strut").Replace(legged), "THIRD", "")).Openings()
	require.Len(t, shears, 1)
	assert.Equal(t, "100", shears[0].Angle.String())
	assert.InDelta(t, 2/(2*math.Cos(50*math.Pi/180)), shears[0].OnLeft.Value.Float(), 1e-9)
	assert.Empty(t, solved(t, `
anchor a
focal master
leg la from a to master
load litter
pulley top on master
hauler team
rope long
reeve long: litter / top \ team
`).Openings())
}
