package solve_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
)

func ratings(res *solve.Result) map[string]solve.Rating {
	byName := map[string]solve.Rating{}
	for _, r := range res.Ratings() {
		byName[r.Part.Name] = r
	}
	return byName
}

const rated = `
anchor head strength 30 kN
load litter mass 100 kg
hauler team people 3 pull 200 N
pulley top on head holds efficiency 90 % strength 20 kN
hitch grab strength 10 kN slips 5 to 8 kN
pulley runner on grab efficiency 90 %
rope long strength 20 kN
reeve long: litter (retains 60 to 70 %) / grab / top \ runner / team
`

func TestRatings(t *testing.T) {
	res := solved(t, rated)
	by := ratings(res)
	const g = 9.80665
	assert.InDelta(t, 100*g, by["head"].Load.Float(), 1e-6, "held it carries the load once")
	assert.Equal(t, "hold", by["head"].Phase.Name)
	assert.InDelta(t, 30000/(100*g), by["head"].Factor.Float(), 1e-6)
	grab := by["grab"]
	assert.Equal(t, solve.Slips, grab.Limit)
	assert.Equal(t, "haul", grab.Phase.Name)
	assert.False(t, grab.Ideal)
	assert.InDelta(t, 5000, grab.Strength.Float(), 1e-9)
	// Pull p = W/2.71; the grip holds W less what passes it, 0.81·p.
	assert.InDelta(t, 100*g*(1-0.81/2.71), grab.Load.Float(), 1e-6)
	long := by["long"]
	assert.InDelta(t, 12000, long.Strength.Float(), 1e-9, "the knot leaves 60 %")
	assert.Nil(t, by["runner"].Strength)
	assert.Nil(t, by["runner"].Factor)
	require.NotNil(t, res.Weakest())
	assert.Equal(t, "grab", res.Weakest().Part.Name)
}

func TestPeopleNeeded(t *testing.T) {
	res := solved(t, rated)
	people, ok := res.PeopleNeeded(haul(t, res))
	require.True(t, ok)
	assert.EqualValues(t, 2, people, "361.9 N at 200 N each")
	_, ok = solved(t, threeToOne).PeopleNeeded(haul(t, solved(t, threeToOne)))
	assert.False(t, ok)
}

func TestMorePeopleThanAnybodyCounts(t *testing.T) {
	res := solved(t, strings.NewReplacer("100 kg", "99999999999999999999 t", "200 N", "1 N").Replace(rated))
	_, ok := res.PeopleNeeded(haul(t, res))
	assert.False(t, ok)
}

func TestNoRatingWithoutMasses(t *testing.T) {
	for _, r := range solved(t, threeToOne).Ratings() {
		assert.Nil(t, r.Load)
		assert.Nil(t, r.Factor)
	}
}

// A bend of 60 degrees with 0.9 kN and 1 kN on its two sides: √(0.81 + 1 + 0.9) kN.
func TestBendForce(t *testing.T) {
	const text = kilo + `
anchor head
anchor house
pulley top on head %ETA%
pulley corner on house %ETA%
rope long
reeve long: litter / top (angle 0 deg) / corner (angle 60 deg) \ team
`
	res := solved(t, filled(text, "ETA", "efficiency 100 %"))
	assert.InDelta(t, math.Sqrt(3), haul(t, res).BendForce(res.Rig.Ropes[0], 2).Float(), 1e-9)
	assert.Nil(t, haul(t, res).BendForce(res.Rig.Ropes[0], 0))
	// The pull with friction: each bend has its efficiency by its angle.
	res = solved(t, filled(text, "ETA", "efficiency 90 %"))
	ph := haul(t, res)
	first := ph.Actual.Strands[1].Value.Float()
	last := ph.Actual.Strands[2].Value.Float()
	assert.Greater(t, last, first)
	assert.InDelta(t, math.Sqrt(first*first+last*last+first*last), ph.BendForce(res.Rig.Ropes[0], 2).Float(), 1e-9)
}

// Two ropes of one team share the load as they like: either may carry all. A share that is
// stated settles it.
func TestOpenShare(t *testing.T) {
	const text = kilo + `
anchor head
pulley left on head holds litter strength 3 kN
pulley right on head holds litter strength 3 kN
rope one strength 3 kN
rope two strength 3 kN
reeve one: litter / left \ team %SHARE%
reeve two: litter / right \ team
`
	by := ratings(solved(t, filled(text, "SHARE", "")))
	left := by["left"]
	require.NotNil(t, left.Open)
	assert.Equal(t, "haul", left.Open.Phase.Name)
	assert.Equal(t, []string{"0", "2000", "0"}, []string{left.Open.Low.String(), left.Open.High.String(), left.Open.Settled.String()})
	require.Len(t, left.Open.Ropes, 2)
	assert.True(t, left.Ranges)
	assert.Nil(t, by["head"].Open, "it carries both, however they share")
	assert.Nil(t, ratings(solved(t, filled(text, "SHARE", "(share 40 to 60 %)")))["left"].Open)
}
