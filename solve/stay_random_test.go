package solve_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/solve"
)

// lossCensus counts what was compared with the simulation.
type lossCensus struct {
	answers   map[solve.Answer]int
	kinds     map[solve.LostKind]int
	undecided int
	// drawn says that the rigs have positions, so that drops are known.
	drawn  bool
	drops  int
	atKnot int
}

func (c *lossCensus) String() string {
	return fmt.Sprint(c.answers, c.kinds, " undecided:", c.undecided, " at a knot:", c.atKnot, " drops:", c.drops)
}

// compare asks both ways what comes of every single loss in a rig.
func (c *lossCensus) compare(t *testing.T, text string) {
	res := solved(t, text)
	if res.Status == solve.Unsolved {
		return
	}
	weight := func(p *model.Part) float64 { return res.WeightOf(p, false).Float() }
	for _, hauling := range []bool{false, true} {
		losses, now := res.Losses(), res.Released
		if hauling {
			losses, now = res.LossesWhileHauling(), res.AfterWhileHauling(solve.Lost{})
		}
		for _, loss := range append([]solve.Loss{{Stay: now}}, losses...) {
			s := newSimulation(res.Rig, loss.Lost, hauling, weight)
			answer, atKnot, decided := s.answer()
			if !decided {
				c.undecided++
				continue
			}
			what := fmt.Sprintf("%v, hauling %v in\n%s", described(loss.Lost), hauling, text)
			require.Equal(t, answer, loss.Answer, what)
			require.Equal(t, atKnot, loss.AtKnot, what)
			c.answers[answer]++
			if atKnot {
				c.atKnot++
			}
			c.kinds[loss.Kind]++
			require.Equal(t, answer == solve.Held, len(loss.Sinking) == 0, what)
			require.Equal(t, answer == solve.Caught, len(loss.Catching) > 0, what)
			require.Equal(t, answer == solve.Caught || answer == solve.Jams, loss.Drop != nil, what)
			if c.drawn && loss.Drop != nil {
				c.compareDrop(t, s, loss.Drop, what)
			}
		}
	}
}

// compareDrop asks both ways how far each load goes down.
func (c *lossCensus) compareDrop(t *testing.T, s *simulation, drop *solve.Drop, what string) {
	require.True(t, drop.Known(), what)
	require.False(t, drop.AtMost, what)
	told := map[*model.Part]float64{}
	for _, l := range drop.Loads {
		told[l.Load] = l.Metres.Float()
	}
	for _, p := range s.rig.Parts {
		b, moves := s.bodyOf[p]
		if !p.Kind.IsWeight() || !moves || b < 0 || s.weight[b] == 0 {
			continue
		}
		_, places, bottomless, ok := s.lowest(noGhosts, b)
		require.True(t, ok && !bottomless, what)
		require.InDelta(t, max(0, -places[b]), told[p], 1e-6, "%s: %s", p.Name, what)
		c.drops++
	}
}

func described(l solve.Lost) string {
	if l.Part == nil {
		return "nothing lost"
	}
	if l.Rope != nil {
		return fmt.Sprintf("lost %s %s of %s at %d", l.Kind, l.Part.Name, l.Rope.Line.Name, l.Node)
	}
	return fmt.Sprintf("lost %s %s", l.Kind, l.Part.Name)
}

func TestTheFourAnswersAgreeWithASimulation(t *testing.T) {
	for name, rig := range map[string]func(langtest.Dice) string{"any": langtest.RandomRig, "drawn": drawnRig} {
		t.Run(name, func(t *testing.T) {
			c := &lossCensus{answers: map[solve.Answer]int{}, kinds: map[solve.LostKind]int{}, drawn: name == "drawn"}
			dice := langtest.Seeded(3)
			for range 400 {
				c.compare(t, rig(dice))
			}
			t.Log(c)
			for _, a := range []solve.Answer{solve.Held, solve.Caught, solve.Jams, solve.Down} {
				assert.Greater(t, c.answers[a], 20, string(a))
			}
			assert.Zero(t, c.undecided)
			if c.drawn {
				assert.Greater(t, c.atKnot, 20)
				assert.Greater(t, c.drops, 1000)
			}
		})
	}
}
