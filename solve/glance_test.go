package solve_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/langtest"
	"fairlead/solve"
)

// A glance sees what the whole solution does.
func TestGlanceAgreesWithTheWholeSolution(t *testing.T) {
	dice, statuses := langtest.Seeded(11), map[solve.Status]int{}
	for range 2000 {
		text := langtest.RandomRig(dice)
		res := solved(t, text)
		seen := solve.LookAt(res.Rig)
		statuses[res.Status]++
		assert.Equal(t, res.Status, seen.Status, text)
		assert.Equal(t, res.Released.Answer, seen.Released(), text)
		if main := res.Main(); main == nil || main.Ideal == nil {
			assert.Nil(t, seen.Ideal, text)
		} else if assert.NotNil(t, seen.Ideal, text) {
			assert.Equal(t, main.Ideal.String(), seen.Ideal.String(), text)
		}
	}
	for _, s := range []solve.Status{solve.OK, solve.Falls, solve.RunsUp, solve.Unbalanced, solve.Jammed, solve.RaisesNothing, solve.NoHaul} {
		assert.Greater(t, statuses[s], 2, string(s))
	}
}

func BenchmarkGlance(b *testing.B) {
	for _, n := range []int{2, 25, 50} {
		rig := solved(b, langtest.Chain(n)).Rig
		b.Run(fmt.Sprintf("chain of %d sheaves", n), func(b *testing.B) {
			for b.Loop() {
				solve.LookAt(rig)
			}
		})
		b.Run(fmt.Sprintf("ideal chain of %d sheaves", n), func(b *testing.B) {
			for b.Loop() {
				solve.Ideal(rig)
			}
		})
	}
}
