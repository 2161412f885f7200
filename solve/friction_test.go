package solve_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/solve"
)

// actual gives the haul with friction of a rig that has one.
func actual(t require.TestingT, text string) (*solve.Phase, *solve.Actual) {
	res := solved(t, text)
	ph := res.Main()
	require.NotNil(t, ph, text)
	require.NotNil(t, ph.Actual, text)
	require.True(t, ph.Actual.Known(), "%v\n%s", ph.Actual, text)
	return ph, ph.Actual
}

func carried(a *solve.Actual, name string) float64 {
	for _, p := range a.Parts {
		if p.Part.Name == name {
			return p.Value.Float()
		}
	}
	return math.NaN()
}

// efficient writes an efficiency on every pulley of a text.
func efficient(text, eta string) string {
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, "pulley ") && !strings.Contains(l, "efficiency") {
			lines[i] += " efficiency " + eta
		}
	}
	return strings.Join(lines, "\n")
}

// The actual column of the project's own table of values: with the efficiency η
// of every bend, worked out by hand and here to 1e-9 by the closed form beside it.
func TestTableOfActualValues(t *testing.T) {
	const e = 0.9
	rows := []struct {
		name, text string
		advantage  float64 // by closed form
		printed    float64 // as the table prints it
		carries    map[string]float64
	}{
		{"redirect", parts + `
anchor head
pulley top on head
rope long
reeve long: litter / top \ team
`, e, 0.9, map[string]float64{"head": 2.1111}},
		{"moving pulley", `
anchor head
pulley runner
load litter on runner
hauler team
rope long
reeve long: head \ runner / team
`, 1 + e, 1.9, map[string]float64{"head": 0.4737}},
		{"three to one", threeToOne, 1 + e + e*e, 2.71, map[string]float64{"top": 0.6310}},
		{"five to one", parts + `
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
`, e*e + (1+e)*(1+e), 4.42, map[string]float64{"top": 0.3869, "rear": 0.3869}},
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
`, (1 + e + e*e) * (1 + e), 5.149, map[string]float64{"top": 0.6310, "rear": 0.1748}},
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
`, e*e + (1+e)*(1+e+e*e), 5.959, nil},
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
`, (1 + e + e*e) * (1 + e + e*e), 7.3441, map[string]float64{"top": 0.6310, "q": 0.2328}},
		{"four to one", `
anchor head
pulley upper on head
pulley lower
load litter on lower
hauler team
rope long
reeve long: upper \ lower / upper \ lower / upper \ team
`, e + e*e + e*e*e + e*e*e*e, 3.0951, map[string]float64{"upper": 1.3231}},
		{"three to one with a flying block", parts + `
anchor head
pulley top on head
pulley block
rope long
rope second
reeve long: litter / top \ block
reeve second: litter / block \ team
`, e + e*(1+e), 2.61, map[string]float64{"head": 1.3831}},
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
`, e + e*e + e*(1+e+e*e), 4.149, nil},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			_, a := actual(t, efficient(row.text, "90 %"))
			assert.InDelta(t, row.advantage, a.Advantage.Value.Float(), 1e-9)
			assert.InDelta(t, row.printed, a.Advantage.Value.Float(), 5e-5)
			assert.True(t, a.Pull.Value.IsExact(), "efficiencies at parallel legs are fractions")
			for part, want := range row.carries {
				assert.InDelta(t, want, carried(a, part), 5e-5, part)
			}
		})
	}
}

func TestUnequalPulleys(t *testing.T) {
	for _, row := range []struct {
		top, runner string
		want, load  float64
	}{{"50 %", "60 %", 1.90, 0.4737}, {"50 %", "95 %", 2.425, 0.5876}, {"95 %", "50 %", 1.975, 0.4937}} {
		text := strings.Replace(threeToOne, "on head holds", "on head holds efficiency "+row.top, 1)
		_, a := actual(t, strings.Replace(text, "on grab", "on grab efficiency "+row.runner, 1))
		assert.InDelta(t, row.want, a.Advantage.Value.Float(), 1e-9)
		assert.InDelta(t, row.load, carried(a, "top"), 5e-5)
	}
}

func TestUnknownEfficiencyIsUnknown(t *testing.T) {
	res := solved(t, strings.Replace(threeToOne, "on grab", "on grab efficiency 90 %", 1))
	a := haul(t, res).Actual
	assert.False(t, a.Known())
	require.Len(t, a.Unknown, 1)
	assert.Equal(t, "top", a.Unknown[0].Name)
}

func TestRangesBoundTheTypicalValue(t *testing.T) {
	text := efficient(threeToOne, "0.8 to 0.95")
	_, a := actual(t, text)
	assert.InDelta(t, 1+0.8+0.64, a.Advantage.Low.Float(), 1e-9)
	assert.InDelta(t, 1+0.95+0.95*0.95, a.Advantage.High.Float(), 1e-9)
	assert.InDelta(t, 1+0.875+0.875*0.875, a.Advantage.Value.Float(), 1e-9)
	for _, p := range a.Parts {
		assert.LessOrEqual(t, p.Low.Cmp(*p.Value), 0, p.Part.Name)
		assert.GreaterOrEqual(t, p.High.Cmp(*p.Value), 0, p.Part.Name)
	}
	for _, p := range a.Parts {
		if p.Part.Name == "top" { // two strands: x and x·η with x + … = 1 balanced at the load
			assert.Less(t, p.Low.Float(), p.High.Float())
		}
	}
}

// Friction never helps, efficiency 1 is no friction, and worse bearings never ease
// the pull, on random rigs.
func TestFrictionOnRandomRigs(t *testing.T) {
	dice, seen, partial := langtest.Seeded(11), 0, 0
	for range 4000 {
		text := langtest.RandomRig(dice)
		res := solved(t, efficient(text, "100 %"))
		if res.Status != solve.OK {
			continue
		}
		ph := res.Main()
		if ph.Actual == nil || !ph.Actual.Known() {
			continue
		}
		seen++
		assert.Zero(t, ph.Actual.Pull.Value.Cmp(*ph.Pull), "efficiency 1 is the exact result\n%s", text)
		last := *ph.Pull
		for _, eta := range []string{"90 %", "80 %", "0.5 to 0.9"} {
			lossy := solved(t, efficient(text, eta)).Main()
			if !lossy.Actual.Known() {
				partial++
				continue
			}
			pull := *lossy.Actual.Pull.Value
			assert.GreaterOrEqual(t, pull.Cmp(*ph.Pull), 0, "friction eases the pull\n%s", text)
			if eta == "80 %" {
				assert.GreaterOrEqual(t, pull.Cmp(last), 0, "worse pulleys ease the pull\n%s", text)
			}
			last = pull
			assert.LessOrEqual(t, lossy.Actual.Pull.Low.Cmp(pull), 0, text)
			assert.GreaterOrEqual(t, lossy.Actual.Pull.High.Cmp(pull), 0, text)
		}
	}
	t.Log(seen, "rigs,", partial, "without a mode")
	assert.Greater(t, seen, 100)
}

// The two ways to the pull with friction, in the mode of the exact motion and as
// the largest pull that can be balanced, agree wherever the mode holds.
func TestTheTwoWaysToThePullAgree(t *testing.T) {
	dice, agree, higher, modeless, locked := langtest.Seeded(13), 0, 0, 0, 0
	for range 5000 {
		text := efficient(langtest.RandomRig(dice), "85 %")
		res := solved(t, text)
		if ph := res.Main(); ph == nil || ph.Actual == nil || len(ph.Actual.Unknown) > 0 {
			continue
		}
		mode, largest := solve.TwoPulls(res)
		switch {
		case largest == nil:
			locked++ // friction alone can hold any pull: no figure, and the rig says so
			assert.True(t, res.Main().Actual.Stuck || mode != nil, text)
		case mode == nil:
			modeless++
		case mode.Cmp(*largest) == 0:
			agree++
		default:
			higher++
			t.Log(mode, largest, text)
			assert.Positive(t, largest.Cmp(*mode), "the mode's forces are among those of the other way\n%s", text)
		}
	}
	t.Log(agree, "agree,", higher, "higher,", modeless, "without a mode,", locked, "locked by friction")
	assert.Greater(t, agree, 100)
}

// A simple rig is the easier to haul the better any single one of its bends.
func TestMonotoneInEverySingleEfficiency(t *testing.T) {
	dice, checked := langtest.Seeded(23), 0
	for range 3000 {
		text := efficient(langtest.RandomRig(dice), "80 %")
		res := solved(t, text)
		main := res.Main()
		if main == nil || main.Class != solve.Simple || !main.Actual.Known() {
			continue
		}
		for i := range strings.Count(text, "80 %") {
			better := solved(t, replaceNth(text, "80 %", "95 %", i)).Main()
			if !better.Actual.Known() {
				continue
			}
			checked++
			assert.LessOrEqual(t, better.Actual.Pull.Value.Cmp(*main.Actual.Pull.Value), 0, "%d of %s", i, text)
		}
	}
	assert.Greater(t, checked, 300)
}

func replaceNth(text, old, with string, n int) string {
	parts := strings.SplitN(text, old, n+2)
	return strings.Join(parts[:n+1], old) + with + parts[n+1]
}

// A twin raise over unequal pulleys: with the shares stated the pull is the sum of
// what each end takes; without, all that lies between one rope and the other.
func TestTwinRaiseWithFriction(t *testing.T) {
	const twin = `
anchor head
anchor tree
load crate
hauler team
pulley pa on head efficiency 90 % holds crate
pulley pb on tree efficiency 80 % holds crate
rope ra
rope rb
reeve ra: crate%SHARE% / pa \ team
reeve rb: crate / pb \ team
`
	_, a := actual(t, strings.Replace(twin, "%SHARE%", " (share 50 %)", 1))
	assert.InDelta(t, 0.5/0.9+0.5/0.8, a.Pull.Value.Float(), 1e-9)
	assert.InDelta(t, 0.5+0.5/0.9, carried(a, "head"), 1e-9)
	assert.InDelta(t, 0.5+0.5/0.8, carried(a, "tree"), 1e-9)

	_, a = actual(t, strings.Replace(twin, "%SHARE%", " (share 40 to 60 %)", 1))
	assert.InDelta(t, 0.6/0.9+0.4/0.8, a.Pull.Low.Float(), 1e-9)
	assert.InDelta(t, 0.4/0.9+0.6/0.8, a.Pull.High.Float(), 1e-9)
	for _, p := range a.Parts {
		if p.Part.Name == "head" {
			assert.InDelta(t, 0.6+0.6/0.9, p.High.Float(), 1e-9)
			assert.InDelta(t, 0.4+0.4/0.9, p.Low.Float(), 1e-9)
		}
	}

	_, a = actual(t, strings.Replace(twin, "%SHARE%", "", 1))
	assert.InDelta(t, 1/0.9, a.Pull.Low.Float(), 1e-9)
	assert.InDelta(t, 1/0.8, a.Pull.High.Float(), 1e-9)
	for _, p := range a.Parts {
		if p.Part.Name == "head" {
			assert.InDelta(t, 1+1/0.9, p.High.Float(), 1e-9)
			assert.InDelta(t, 0, p.Low.Float(), 1e-9)
		}
	}
}
