package report

import (
	"fmt"
	"slices"

	"fairlead/solve/count"
	"fairlead/solve/report/page"
)

// The steps of a tackle repeat: over the upper block, round the lower one, and so on.
// Said once and then again as often as the rope passes, nobody would read to the end.
const (
	// longestRound is how many steps may make a round that repeats.
	longestRound = 6
	// fewestAgain is how many repeated steps it takes to leave them out.
	fewestAgain = 4
)

// again is a round of steps that comes again.
type again struct {
	round []count.Step
	times int
}

// againAfter finds the round that ends with step i and comes again right after, the
// shortest that does; none has times 0.
func againAfter(steps []count.Step, sentences []string, i int) again {
	for n := 1; n <= longestRound && n <= i+1; n++ {
		round := sentences[i+1-n : i+1]
		if slices.ContainsFunc(steps[i+1-n:i+1], func(s count.Step) bool { return !passes(s.Kind) }) {
			break
		}
		times := 0
		for at := i + 1; at+n <= len(sentences) && slices.Equal(round, sentences[at:at+n]); at += n {
			times++
		}
		if times*n >= fewestAgain {
			return again{steps[i+1-n : i+1], times}
		}
	}
	return again{}
}

// passes says whether a step is the rope's way past one part.
func passes(k count.Kind) bool {
	return k == count.FixedBend || k == count.MovingBend || k == count.Passes
}

// steps is how many steps are left out.
func (a again) steps() int { return a.times * len(a.round) }

// sentence says what is left out; last is the number of its last step.
func (a again) sentence(last int) string {
	var names []string
	for _, s := range a.round {
		if name := page.Clean(s.Part.Name); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return fmt.Sprintf("Steps %d to %d: the same %d times more, over %s.", last-a.steps()+1, last, a.times, page.List(names))
}
