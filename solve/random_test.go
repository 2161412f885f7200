package solve_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

type rapidDice struct{ t *rapid.T }

func (d rapidDice) UpTo(n int) int { return rapid.IntRange(0, n-1).Draw(d.t, "") }

func TestRandomRigsKeepTheIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := langtest.RandomRig(rapidDice{t})
		checkIdentities(t, text)
	})
}

// The same over a fixed row of rigs, with a census: the identities are worth
// little if the rigs are all of one sort.
func TestSeededRigsOfEverySort(t *testing.T) {
	statuses, answers := map[solve.Status]int{}, map[solve.Answer]int{}
	ranges := 0
	random := langtest.Seeded(1)
	for range 4000 {
		res := checkIdentities(t, langtest.RandomRig(random))
		statuses[res.Status]++
		answers[res.Released.Answer]++
		for _, ph := range res.Phases {
			for _, s := range ph.Strands {
				if s.Ranges() {
					ranges++
				}
			}
		}
	}
	t.Log(statuses, answers, "strands with a range:", ranges)
	for _, s := range []solve.Status{solve.OK, solve.Falls, solve.RunsUp, solve.Unbalanced, solve.Jammed, solve.RaisesNothing, solve.NoHaul} {
		assert.Greater(t, statuses[s], 2, string(s))
	}
	for _, a := range []solve.Answer{solve.Held, solve.Jams, solve.Down} {
		assert.Greater(t, answers[a], 40, string(a))
	}
	assert.Greater(t, ranges, 100)
}

func checkIdentities(t require.TestingT, text string) *solve.Result {
	res := solved(t, text)
	for _, ph := range res.Phases {
		if !ph.Solved() {
			continue
		}
		checkBalance(t, res, ph, text)
		checkLengths(t, ph, text)
		checkWork(t, res, ph, text)
		checkRanges(t, ph, text)
	}
	if res.Hold() != nil {
		held := res.Hold().Status == solve.OK && len(res.Hold().Sagging) == 0
		assert.Equal(t, held, res.Released.Answer == solve.Held, "held exactly when hold has an optimum: %s", text)
		if res.Released.Answer == solve.Down {
			assert.False(t, held, text)
			assert.NotEmpty(t, res.Released.Sinking, text)
		}
	}
	return res
}

// checkBalance adds up the shown tensions on every moving body, strand by strand:
// a strand pulls each of its ends toward the other.
func checkBalance(t require.TestingT, res *solve.Result, ph *solve.Phase, text string) {
	sum := map[*model.Part]lp.Num{}
	pull := func(part *model.Part, force lp.Num) {
		if part != nil && part.Moves() {
			sum[part.Root()] = sum[part.Root()].Add(force)
		}
	}
	for _, s := range ph.Strands {
		up := lp.Int(int64(s.Rope.Strokes[s.Index])).Mul(*s.Value)
		pull(s.Rope.Nodes[s.Index].Part, up)
		pull(s.Rope.Nodes[s.Rope.After(s.Index)].Part, up.Neg())
	}
	for _, b := range res.Bodies {
		weight := lp.Num{}
		for _, p := range b.Parts {
			if !slices.Contains(ph.Sagging, b) {
				weight = weight.Add(res.WeightOf(p, ph.Hauler != nil))
			}
		}
		assert.Zero(t, sum[b.Parts[0].Root()].Cmp(weight), "balance of %s in %s: %v, weight %v\n%s",
			b.Parts[0].Name, ph.Name, sum[b.Parts[0].Root()], weight, text)
	}
}

// checkLengths: a piece between ends that pass no rope keeps its length if it is
// taut, and never grows.
func checkLengths(t require.TestingT, ph *solve.Phase, text string) {
	grips := ph.Grips()
	passes := func(grip int) bool { return grip >= 0 && grips[grip].Force.Sign() == 0 }
	for _, p := range ph.Pieces() {
		if passes(p.StartGrip) || passes(p.EndGrip) || touchesFree(ph, p) || p.Tension.Sign() == 0 && endsLoose(ph, p) {
			continue
		}
		growth := lp.Int(int64(p.Pulled))
		for _, touch := range p.Touches {
			if touch.Body != nil {
				growth = growth.Sub(touch.Factor.Mul(ph.Motion[touch.Body.Index].Rise))
			}
		}
		if p.Tension.Sign() > 0 {
			assert.Zero(t, growth.Sign(), "taut rope %s changes its length by %v\n%s", p.Rope.Line.Name, growth, text)
		}
		assert.LessOrEqual(t, growth.Sign(), 0, "rope %s grows\n%s", p.Rope.Line.Name, text)
	}
}

func touchesFree(ph *solve.Phase, p solve.Piece) bool {
	for _, touch := range p.Touches {
		if touch.Body != nil && ph.Motion[touch.Body.Index].Free {
			return true
		}
	}
	return false
}

// endsLoose says whether hands are off an end of the piece.
func endsLoose(ph *solve.Phase, p solve.Piece) bool {
	return ph.Hauler == nil && (p.Rope.Nodes[p.Touches[0].Node].Role == model.Hauled ||
		p.Rope.Nodes[p.Touches[len(p.Touches)-1].Node].Role == model.Hauled)
}

// checkWork: the pull times one unit of rope is the weight raised.
func checkWork(t require.TestingT, res *solve.Result, ph *solve.Phase, text string) {
	work := lp.Num{}
	for _, m := range ph.Motion {
		if m.Free {
			return
		}
		for _, p := range m.Body.Parts {
			work = work.Add(res.WeightOf(p, ph.Hauler != nil).Mul(m.Rise))
		}
	}
	in := *ph.Pull
	if ph.Hauler == nil {
		in = lp.Num{}
	}
	assert.Zero(t, work.Cmp(in), "work in %v, work out %v\n%s", in, work, text)
}

func checkRanges(t require.TestingT, ph *solve.Phase, text string) {
	check := func(name string, f solve.Force) {
		require.NotNil(t, f.Value, "%s\n%s", name, text)
		assert.GreaterOrEqual(t, f.Low.Sign(), 0, "%s\n%s", name, text)
		assert.LessOrEqual(t, f.Low.Cmp(*f.Value), 0, "%s: value %v under low %v\n%s", name, f.Value, f.Low, text)
		if f.High != nil {
			assert.LessOrEqual(t, f.Value.Cmp(*f.High), 0, "%s: value %v over high %v\n%s", name, f.Value, f.High, text)
		}
	}
	for _, s := range ph.Strands {
		check(s.Rope.Line.Name, s.Force)
	}
	for _, p := range ph.Parts {
		check(p.Part.Name, p.Force)
	}
}
