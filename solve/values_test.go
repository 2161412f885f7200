package solve_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
)

// parts is what most rigs of these tests share.
const parts = `
load litter
hauler team
`

// The ideal column, the class and the load on fixed parts of the project's own
// table of values. Loads are those of the frictionless rig, worked out by hand:
// with the pull P = W / advantage, a bend with both legs parallel carries 2·T.
func TestTableOfValues(t *testing.T) {
	rows := []struct {
		name, text, ideal string
		class             solve.Class
		carries           map[string]string
	}{
		{"redirect", parts + `
anchor head
rope long
reeve long: litter / head \ team
`, "1", solve.Simple, map[string]string{"head": "2"}},
		{"moving pulley", `
anchor head
pulley runner
load litter on runner
hauler team
rope long
reeve long: head \ runner / team
`, "2", solve.Simple, map[string]string{"head": "1/2", "runner": "1", "litter": "1"}},
		{"three to one", parts + `
anchor head
pulley top on head holds
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team
`, "3", solve.Simple, map[string]string{"top": "2/3", "head": "2/3", "grab": "2/3", "runner": "2/3", "long": "1"}},
		{"five to one with a second line", parts + `
anchor head
anchor rear
pulley top on head holds
hitch grab
pulley runner on grab
pulley block
rope long
rope second
reeve long: litter / grab / top \ block / team
reeve second: rear \ runner / block
`, "5", solve.Complex, map[string]string{"top": "2/5", "rear": "2/5", "block": "2/5"}},
		{"six to one", parts + `
anchor head
anchor rear
pulley top on head holds
hitch grab
pulley runner on grab
pulley block
rope long
rope second
reeve long: litter / grab / top \ runner / block
reeve second: rear \ block / team
`, "6", solve.Compound, map[string]string{"top": "2/3", "rear": "1/6"}},
		{"seven to one", parts + `
anchor head
pulley top on head holds
pulley q on head
hitch grab
pulley runner on grab
pulley block
rope long
rope second
reeve long: litter / grab / top \ block / team
reeve second: grab / q \ runner / block
`, "7", solve.Complex, nil},
		{"nine to one", parts + `
anchor head
pulley top on head holds
pulley q on head holds
hitch grab
pulley runner on grab
hitch grab2
pulley runner2 on grab2
rope long
reeve long: litter / grab / top \ runner / grab2 / q \ runner2 / team
`, "9", solve.Compound, map[string]string{"top": "2/3", "q": "2/9"}},
		{"four to one", `
anchor head
pulley upper on head
pulley lower
load litter on lower
hauler team
rope long
reeve long: upper \ lower / upper \ lower / upper \ team
`, "4", solve.Simple, map[string]string{"upper": "5/4", "lower": "1"}},
		{"three to one with a flying block", parts + `
anchor head
pulley block
rope long
rope second
reeve long: litter / head \ block
reeve second: litter / block \ team
`, "3", solve.Complex, map[string]string{"head": "4/3"}},
		{"burton", `
anchor beam
pulley top on beam
pulley fly
ring hook
load crate on hook
pulley low on hook
hauler team
rope long
rope whip
reeve long: hook / top \ fly
reeve whip: fly \ low / fly \ team
`, "5", solve.Complex, nil},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			res := solved(t, row.text)
			require.Equal(t, solve.OK, res.Status)
			ph := haul(t, res)
			require.NotNil(t, ph.Ideal)
			assert.Equal(t, row.ideal, ph.Ideal.String())
			assert.Equal(t, row.class, ph.Class)
			for part, want := range row.carries {
				assert.Equal(t, want, load(ph, part), part)
			}
		})
	}
}

const threeToOne = parts + `
anchor head
pulley top on head holds
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team
`

func TestHitchOnTheSlackSideRaisesNothing(t *testing.T) {
	const text = parts + `
anchor head
pulley top on head holds
hitch grab
pulley runner on grab
rope long
reeve long: litter / top \ grab \ runner / team
`
	res := solved(t, text)
	assert.Equal(t, solve.RaisesNothing, res.Status)
	ph := haul(t, res)
	assert.Nil(t, ph.Ideal)
	for _, m := range ph.Motion {
		switch m.Body.Parts[0].Name {
		case "litter":
			assert.Equal(t, "0", m.Rise.String())
		case "grab":
			assert.Equal(t, "1/2", m.Rise.String(), "the tractor climbs the slack, at least half of what is hauled")
		}
	}
}

func TestHitchOnTheSlackSideWithoutCaptureFalls(t *testing.T) {
	res := solved(t, parts+`
anchor head
pulley top on head
hitch grab
pulley runner on grab
rope long
reeve long: litter / top \ grab \ runner / team
`)
	assert.Equal(t, solve.Falls, res.Status)
	require.Len(t, haul(t, res).Unpinned, 1)
	assert.Equal(t, "grab", haul(t, res).Unpinned[0].Parts[0].Name)
}

func TestSelfHaul(t *testing.T) {
	res := solved(t, `
anchor head
load litter
hauler self on litter
rope long
reeve long: litter / head \ self
`)
	ph := haul(t, res)
	require.NotNil(t, ph.Ideal)
	assert.Equal(t, "2", ph.Ideal.String())
	assert.Equal(t, "1/2", ph.Pull.String())
	assert.Equal(t, "1", load(ph, "head"))
	assert.Equal(t, "1", load(ph, "litter"))
}

func TestCounterweight(t *testing.T) {
	res := solved(t, `
anchor head
load litter mass 2 kg
counterweight stone mass 1 kg
hauler team
rope long
rope tag
reeve long: litter / head \ stone
reeve tag: stone \ team
`)
	ph := haul(t, res)
	require.Equal(t, solve.OK, ph.Status)
	assert.Equal(t, "1", ph.Ideal.String(), "travel 1:1")
	assert.Equal(t, "1/2", ph.Pull.String(), "pull 1 of load 2")
}

func TestHandsOff(t *testing.T) {
	res := solved(t, threeToOne)
	assert.Equal(t, solve.Held, res.Released.Answer)
	for part, want := range map[string]solve.Answer{
		"head": solve.Down, "top": solve.Down, "long": solve.Down,
		"grab": solve.Held, "runner": solve.Held,
	} {
		assert.Equal(t, want, res.Without(res.Rig.Part(part)).Answer, "without %s", part)
	}
}

func TestMainAndBelayHasNoSingleLossThatFalls(t *testing.T) {
	res := solved(t, parts+`
anchor head
anchor tree
pulley top on head holds
hitch grab
pulley runner on grab
device plate on tree holds
tender minder
rope long
rope safety
reeve long: litter / grab / top \ runner / team
reeve safety: litter / plate \ minder
`)
	assert.Equal(t, solve.Held, res.Released.Answer)
	for _, p := range res.Rig.Parts {
		if p.Kind.IsWeight() || p.Kind.IsPerson() {
			continue
		}
		assert.Equal(t, solve.Held, res.Without(p).Answer, "without %s", p.Name)
	}
}

func TestTwoOnTwoWithoutCaptureJams(t *testing.T) {
	res := solved(t, `
anchor head
anchor rear
pulley runner
load litter on runner
pulley block
hauler team
rope long
rope second
reeve long: head \ runner / block
reeve second: rear \ block / team
`)
	assert.Equal(t, "4", haul(t, res).Ideal.String())
	assert.Equal(t, solve.Falls, res.Hold().Status)
	assert.Equal(t, solve.Jams, res.Released.Answer)
	assert.NotEmpty(t, res.Released.Meeting)
}

func TestSlackBackTieCatches(t *testing.T) {
	res := solved(t, `
anchor head
anchor tree
device plate on head holds
load litter
tender minder
rope long
rope back
reeve long: litter / plate \ minder
reeve back: tree ~ plate
`)
	assert.Equal(t, solve.Held, res.Released.Answer)
	stay := res.Without(res.Rig.Part("head"))
	assert.Equal(t, solve.Caught, stay.Answer)
	require.Len(t, stay.Catching, 1)
	assert.Equal(t, "back", stay.Catching[0].Rope.Line.Name)
}

func TestOneRopeTwoJobs(t *testing.T) {
	res := solved(t, parts+`
anchor head
pulley top on head holds
hitch grab
pulley runner on grab
pulley block
knot tie-off on head
rope long
reeve long: litter / grab / top \ block / team ~ tie-off \ runner / block
`)
	ph := haul(t, res)
	require.Equal(t, solve.OK, ph.Status)
	assert.Equal(t, "5", ph.Ideal.String())
	assert.Equal(t, solve.Complex, ph.Class)
	assert.Equal(t, solve.Held, res.Released.Answer)
}
