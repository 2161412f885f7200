package report

import (
	"bytes"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// shown solves the one rig of a text and gives what is printed of it, its lines
// joined so that breaks do not matter.
func shown(t *testing.T, text string) (*solve.Result, string) {
	t.Helper()
	loaded := load.Text("test.rig", text)
	require.Empty(t, loaded.Problems)
	res := solve.Rig(loaded.Model.Rigs[0])
	var out bytes.Buffer
	require.NoError(t, Text(&out, []*solve.Result{res}, false, page.Paint{}))
	return res, strings.Join(strings.Fields(out.String()), " ")
}

const threeToOne = `
anchor  head    strength 30 kN
load    litter  mass 180 kg
hauler  team
pulley  top     on head  holds litter
hitch   grab
pulley  runner  on grab
rope    long
reeve long: litter / grab / top \ runner / team
`

// with gives the rig with words added to the statement of a part.
func with(statements ...string) string {
	text := threeToOne
	for _, s := range statements {
		part, words, _ := strings.Cut(s, ": ")
		lines := strings.Split(text, "\n")
		for i, line := range lines {
			if fields := strings.Fields(line); len(fields) > 1 && fields[1] == part {
				lines[i] = line + " " + words
			}
		}
		text = strings.Join(lines, "\n")
	}
	return text
}

func TestFactorsAreRoundedDown(t *testing.T) {
	for want, n := range map[string]lp.Num{
		"5.7": lp.Frac(579, 100), "9.9": lp.Frac(9999, 1000), "10": lp.Int(10), "17": lp.Approx(17.99),
		"3": lp.Approx(2.9999999999999996), "0.9": lp.Frac(99, 100), "1": lp.Frac(109, 100), "1000": lp.Int(1000),
	} {
		assert.Equal(t, want, times(n), n.String())
	}
}

func TestFactorsAreSaidInWords(t *testing.T) {
	// Held, the head carries 1765.197 N.
	for strength, want := range map[string]string{
		"30 kN":  "head carries 1.18 kN hauling (ideal), 1.77 kN held: 16 times under its strength",
		"5 kN":   "1.77 kN held: 2.8 times under its strength",
		"1800 N": "1.77 kN held: just under its strength",
		"1.5 kN": "1.77 kN held: 1.18 times its strength: 1.5 kN",
		"1765 N": "1.77 kN held: just over its strength: 1.77 kN",
	} {
		_, text := shown(t, strings.Replace(threeToOne, "30 kN", strength, 1))
		assert.Contains(t, text, want)
	}
	_, text := shown(t, with("grab: slips 900 N"))
	assert.Contains(t, text, "overloaded grab 1.31 times its slip: 0.9 kN (ideal)", "hauling, 1177 N without friction")
	_, text = shown(t, strings.Replace(with("grab: strength 1 kN", "top: strength 20 kN"), "hitch ", "clamp ", 1))
	assert.Contains(t, text, "overloaded grab 1.18 times its strength: 1 kN (ideal)")
	_, text = shown(t, strings.Replace(with("grab: slips 900 N", "long: strength 1 kN"), "30 kN", "1.5 kN", 1))
	assert.Contains(t, text, "overloaded long 1.77 times its strength: 1 kN; grab 1.31 times its slip: 0.9 kN (ideal); head 1.18 times its strength: 1.5 kN", "the worst first")
	assert.NotContains(t, text, "weakest")
}

func TestWeakestSaysWhatItRestsOn(t *testing.T) {
	_, text := shown(t, threeToOne)
	assert.NotContains(t, text, "weakest", "the only part with a strength says it itself")
	_, text = shown(t, with("long: strength 20 kN"))
	assert.Contains(t, text, "weakest known long, 11 times under its strength", "others have none")
	_, text = shown(t, with("long: strength 20 kN", "top: strength 36 kN", "runner: strength 36 kN", "grab: slips 7 kN"))
	assert.Contains(t, text, "weakest grab, 5.9 times under its slip (ideal)")
}

func TestPeopleAreThoseThePullTakes(t *testing.T) {
	const known = "efficiency 92 %"
	rubbing := func(team string) string { return with("top: "+known, "runner: "+known, "team: "+team) }
	for team, want := range map[string]string{
		"pull 250 N":           "pull 0.638 kN, 3 people",
		"people 2  pull 250 N": "pull 0.638 kN, 3 people; team has 2",
		"people 4  pull 250 N": "pull 0.638 kN, 3 people ",
		"pull 700 N":           "pull 0.638 kN, 1 person",
		"people 3":             "pull 0.638 kN, 0.213 kN for each of 3",
		"people 1":             "pull 0.638 kN ",
	} {
		_, text := shown(t, rubbing(team))
		assert.Contains(t, text, "2.77 with friction "+want)
	}
	_, text := shown(t, with("team: pull 250 N"))
	assert.Contains(t, text, "pull 0.588 kN (ideal), at least 3 people")
}

// The figure with friction is that of the law: 1 + 1/η + 1/η² parts of the pull.
func TestHeadlineSaysWhatFrictionLeaves(t *testing.T) {
	_, text := shown(t, with("top: efficiency 90 %", "runner: efficiency 90 %"))
	assert.Contains(t, text, "3 : 1 simple 2.71 with friction pull 0.651 kN")
	_, text = shown(t, with("top: efficiency 100 %", "runner: efficiency 1"))
	assert.Contains(t, text, "3 : 1 simple no friction pull 0.588 kN")
	_, text = shown(t, with("top: efficiency 90 %"))
	assert.Contains(t, text, "friction unknown: no efficiency for runner pull 0.588 kN (ideal)")
	_, text = shown(t, with("top: efficiency 85 to 95 %", "runner: efficiency 85 to 95 %", "team: people 2"))
	assert.Contains(t, text, "2.71 (2.57 to 2.85) with friction pull 0.651 (0.619 to 0.686) kN, up to 0.343 kN for each of 2")
}

func TestManyPartsAreNotAllNamed(t *testing.T) {
	parts := func(n int) (list []*model.Part) {
		for range n {
			list = append(list, &model.Part{Name: string(rune('a' + len(list)))})
		}
		return list
	}
	assert.Equal(t, "a", some(parts(1)))
	assert.Equal(t, "a, b, c and d", some(parts(4)))
	assert.Equal(t, "a, b, c and 2 more", some(parts(5)))
}

func TestLengthsAreInTheRigsUnit(t *testing.T) {
	res, _ := shown(t, threeToOne)
	assert.Equal(t, "12.5 m", scaleOf(res).metres(lp.Frac(25, 2)))
	res, text := shown(t, "units lbf ft\n"+threeToOne)
	assert.Equal(t, "40 ft", scaleOf(res).metres(lp.FromRat(feet(t, "40"))))
	assert.Contains(t, text, "pull 132 lbf")
}

func feet(t *testing.T, n string) *big.Rat {
	t.Helper()
	q, ok := quantity.New(n, "", "ft")
	require.True(t, ok)
	return q.Low
}

// A tie, clip or hold is named only where losing the part or line itself is not
// as bad.
func TestLossesAreToldOnce(t *testing.T) {
	res, text := shown(t, threeToOne)
	assert.Contains(t, text, "one part lost falls without head, top or long lowering")
	kinds := map[solve.LostKind]bool{}
	losses, _ := res.TellingLosses(nil)
	for _, l := range losses {
		kinds[l.Kind] = true
	}
	assert.NotContains(t, kinds, solve.LostTie)
	assert.NotContains(t, kinds, solve.LostHold)
}

func TestPreloadIsNotCounted(t *testing.T) {
	_, text := shown(t, `
anchor head
anchor floor
load   litter  mass 100 kg
rope   long
rope   tag
reeve long: litter / head
reeve tag: litter \ floor
`)
	assert.Contains(t, text, "head carries 0.981 kN held, not counting preload")
	assert.Contains(t, text, "floor carries nothing held, not counting preload")
}

func TestPullOfManyLoadsIsSaidAsTimes(t *testing.T) {
	_, text := shown(t, `
anchor  beam
load    crate  mass 10 kg
load    chest  mass 20 kg
hauler  team
pulley  top    on beam  holds crate
rope    long
rope    tie
reeve long: crate / top \ team
reeve tie:  chest / crate
`)
	assert.Contains(t, text, "pull 3 times crate, 0.294 kN (ideal)")
}
