package solve_test

import (
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// kilo is a load of 1 kN, so that fractions of the load are kilonewtons.
const kilo = `
load litter weight 1 kN
hauler team
`

// stuckAt gives what parts carry in kilonewtons when the team pulls with so many.
func stuckAt(t *testing.T, text, pull string) *solve.Stuck {
	res := solved(t, text)
	return res.Stuck(haul(t, res), rational(t, pull).Mul(lp.Int(1000)))
}

// filled puts words in the places of a text: a name stands there as %NAME%.
func filled(text string, words ...string) string {
	for i := 0; i < len(words); i += 2 {
		text = strings.ReplaceAll(text, "%"+words[i]+"%", words[i+1])
	}
	return text
}

func rational(t *testing.T, text string) lp.Num {
	n, ok := new(big.Rat).SetString(text)
	require.True(t, ok)
	return lp.FromRat(n)
}

func carries(t *testing.T, list []solve.PartLoad, part string) string {
	for _, p := range list {
		if p.Part.Name == part {
			require.True(t, p.Known())
			return p.Most().String()
		}
	}
	require.Fail(t, "no such part", part)
	return ""
}

const haulOfThree = kilo + `
anchor head
pulley top on head holds %ETA%
hitch grab %HITCH%
pulley runner on grab %ETA%
rope long
reeve long: litter / grab / top \ runner / team
`

// With the load stuck, three to one puts three times the pull on the rope, twice on the
// hitch, the runner and the head.
func TestStuckLoadThreeToOne(t *testing.T) {
	s := stuckAt(t, filled(haulOfThree, "ETA", "", "HITCH", ""), "1")
	require.NotNil(t, s)
	assert.True(t, s.Ideal)
	for part, want := range map[string]string{"long": "3", "top": "2", "head": "2", "grab": "2", "runner": "2", "team": "1", "litter": "3"} {
		assert.Equal(t, want, carries(t, s.Parts, part), part)
	}
	assert.Empty(t, s.Fuses)
	assert.Equal(t, s.Parts, s.Until)
}

// With 90 % at each bend the load gets 2.71 of the pull: 1 + 0.9 on the runner, 0.81 past
// the hitch. The head gets 0.9 + 0.81.
func TestStuckLoadWithFriction(t *testing.T) {
	s := stuckAt(t, filled(haulOfThree, "ETA", "efficiency 90 %", "HITCH", ""), "1")
	require.NotNil(t, s)
	assert.False(t, s.Ideal)
	for part, want := range map[string]string{"long": "271/100", "top": "171/100", "grab": "19/10", "runner": "19/10"} {
		assert.Equal(t, want, carries(t, s.Parts, part), part)
	}
	// Of a range the better end counts.
	s = stuckAt(t, filled(haulOfThree, "ETA", "efficiency 70 to 90 %", "HITCH", ""), "1")
	require.NotNil(t, s)
	assert.Equal(t, "271/100", carries(t, s.Parts, "long"))
}

// A pull that does not raise the load is none that could overload it.
func TestStuckNeedsMoreThanThePull(t *testing.T) {
	text := filled(haulOfThree, "ETA", "", "HITCH", "")
	assert.Nil(t, stuckAt(t, text, "1/4"))
	require.NotNil(t, stuckAt(t, text, "1/3"))
	assert.Equal(t, "1", carries(t, stuckAt(t, text, "1/3").Parts, "long"))
}

// The hitch grips twice the pull: one that slips by 1.2 kN gives way at 0.6 kN.
func TestStuckLoadSlipsAtTheHitch(t *testing.T) {
	s := stuckAt(t, filled(haulOfThree, "ETA", "", "HITCH", "slips 1 to 1.2 kN"), "1")
	require.NotNil(t, s)
	require.Len(t, s.Fuses, 1)
	assert.Equal(t, "grab", s.Fuses[0].Name)
	assert.Equal(t, "600", s.SlipsAt.String())
	assert.Equal(t, "3", carries(t, s.Parts, "long"))
	assert.Equal(t, "9/5", carries(t, s.Until, "long"))
	assert.Equal(t, "6/5", carries(t, s.Until, "grab"))
	// It holds what the pull puts on it.
	s = stuckAt(t, filled(haulOfThree, "ETA", "", "HITCH", "slips 2 kN"), "1")
	assert.Empty(t, s.Fuses)
	assert.Equal(t, "3", carries(t, s.Until, "long"))
	// One that slips when the load is merely raised is no fuse.
	s = stuckAt(t, filled(haulOfThree, "ETA", "", "HITCH", "slips 0.5 kN"), "1")
	require.NotNil(t, s)
	assert.Empty(t, s.Fuses)
}

// Two hitches one behind the other slip together, at the sum of both.
func TestStuckLoadTwoHitchesInARow(t *testing.T) {
	s := stuckAt(t, kilo+`
anchor head
pulley top on head holds
ring plate
hitch lower on plate slips 1 kN
hitch upper on plate slips 0.5 kN
pulley runner on plate
rope long
reeve long: litter / lower / upper / top \ runner / team
`, "1")
	require.NotNil(t, s)
	require.Len(t, s.Fuses, 2)
	assert.Equal(t, "750", s.SlipsAt.String())
}

// A clamp that harms its rope before it slips is no fuse.
func TestStuckLoadAtAClampThatDamages(t *testing.T) {
	jaws := strings.ReplaceAll(haulOfThree, "hitch grab", "clamp grab")
	text := filled(jaws, "ETA", "", "HITCH", "slips 1.2 kN damages 1.2 kN")
	assert.Empty(t, stuckAt(t, text, "1").Fuses)
	text = filled(jaws, "ETA", "", "HITCH", "slips 1.2 kN damages 1.3 kN")
	assert.Len(t, stuckAt(t, text, "1").Fuses, 1)
}

// A counterweight of half the load pulls on its own: of 1 kN at the hand the load gets
// that and the half, not twice what it gets while it rises.
func TestStuckLoadWithACounterweight(t *testing.T) {
	s := stuckAt(t, `
anchor head
load tub weight 1 kN
counterweight box weight 500 N
hauler team
pulley wheel on head holds tub
rope main
rope hand-line
reeve main: tub / wheel \ box
reeve hand-line: box \ team
`, "1")
	require.NotNil(t, s)
	assert.Equal(t, "3/2", carries(t, s.Parts, "main"))
	assert.Equal(t, "3", carries(t, s.Parts, "wheel"))
}

// A heavy moving block takes its own weight off what the pull gives to the load.
func TestStuckLoadUnderAHeavyBlock(t *testing.T) {
	s := stuckAt(t, `
anchor head
anchor beam
load stone weight 1 kN
hauler team
pulley low on stone
pulley high holds mass 10 kg
rope first
rope second
reeve first: head \ low / high
reeve second: beam \ high / team
`, "1")
	require.NotNil(t, s)
	// 2 · (2·1 − 0.0980665)
	assert.Equal(t, rational(t, "3.803867").String(), carries(t, s.Parts, "low"))
}

// Nothing but the loads of the haul is stuck, and every part of a rig with a single weight
// carries in proportion to the pull.
func TestStuckLoadIsTheHaulOfAHeavierOne(t *testing.T) {
	random, seen := langtest.Seeded(5), 0
	for range 2000 {
		text := langtest.RandomRig(random)
		res := solved(t, text)
		main := res.Main()
		if main == nil || main.Status != solve.OK || main.Ideal == nil || res.WeightNewtons == nil || main.Pull.Sign() <= 0 {
			continue
		}
		twice := main.Pull.Mul(*res.WeightNewtons).Mul(lp.Int(2))
		s := res.Stuck(main, twice)
		if s == nil {
			continue
		}
		if !single(res) || !s.Ideal {
			continue
		}
		seen++
		for i, now := range main.Parts {
			if now.Ranges() || now.AtMost {
				continue
			}
			assert.Equal(t, now.Value.Mul(lp.Int(2)).String(), s.Parts[i].Value.String(), "%s in\n%s", now.Part.Name, text)
		}
	}
	assert.Greater(t, seen, 30)
}

// single says whether one load is all that has a weight.
func single(res *solve.Result) bool {
	heavy := 0
	for _, p := range res.Rig.Parts {
		if res.WeightOf(p, true).Sign() > 0 {
			heavy++
		}
	}
	return heavy == 1
}
