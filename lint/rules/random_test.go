package rules

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/solve"
)

// line is a rope of a random rig: strokes[i] follows nodes[i].
type line struct{ nodes, strokes []string }

func (l line) String() string {
	var b strings.Builder
	for i, n := range l.nodes {
		b.WriteString(n)
		if i < len(l.strokes) {
			b.WriteString(" " + l.strokes[i] + " ")
		}
	}
	return b.String()
}

// randomRig draws a rope between litter and team over fixed and moving pulleys and
// hitches, in strokes that fit where it bends.
func randomRig(t *rapid.T) line {
	l := line{nodes: []string{"litter"}}
	stroke := "/"
	for i := range rapid.IntRange(1, 6).Draw(t, "nodes") {
		l.strokes = append(l.strokes, stroke)
		kind := rapid.SampledFrom([]string{"top", "hitch", "runner"}).Draw(t, "kind")
		if kind == "hitch" {
			name := fmt.Sprintf("grab%d", rapid.IntRange(0, 1).Draw(t, "which"))
			l.nodes = append(l.nodes, rapid.SampledFrom([]string{name, name, name + " (holds team)"}).Draw(t, "way"))
			continue
		}
		kind += fmt.Sprint(rapid.IntRange(0, 1).Draw(t, "which"))
		l.nodes = append(l.nodes, rapid.SampledFrom([]string{kind, kind, kind + " (holds)"}).Draw(t, "capture"))
		if stroke = "\\"; l.strokes[i] == "\\" {
			stroke = "/"
		}
	}
	l.strokes = append(l.strokes, stroke)
	l.nodes = append(l.nodes, "team")
	return l
}

func rigOf(l line) string {
	return `anchor head
load litter
hauler team
pulley top0 on head
pulley top1 on head
hitch grab0
hitch grab1
pulley runner0 on grab0
pulley runner1 on grab1
rope long
reeve long: ` + l.String() + "\n"
}

func solved(t require.TestingT, l line) (*solve.Result, bool) {
	f := load.Text("yard.rig", rigOf(l))
	require.Len(t, f.Model.Rigs, 1)
	return solve.Rig(f.Model.Rigs[0]), !f.Model.Rigs[0].Incomplete
}

// moved gives the line with a hitch taken out and set into a strand of what is left.
func moved(l line, node, into int) line {
	hitch := l.nodes[node]
	left := line{
		append(append([]string{}, l.nodes[:node]...), l.nodes[node+1:]...),
		append(append([]string{}, l.strokes[:node]...), l.strokes[node+1:]...),
	}
	return set(left, hitch, into)
}

// set gives the line with a hitch set into a strand.
func set(l line, hitch string, into int) line {
	return line{
		append(append(append([]string{}, l.nodes[:into+1]...), hitch), l.nodes[into+1:]...),
		append(append(append([]string{}, l.strokes[:into+1]...), l.strokes[into]), l.strokes[into+1:]...),
	}
}

// holding says whether a part is a node of the line.
func holding(l line, part string) bool {
	return slices.ContainsFunc(l.nodes, func(n string) bool { return strings.HasPrefix(n, part) })
}

// bestMove tries on every strand each hitch that was forgotten, else every hitch on every
// other strand, by building the text anew, and gives the highest advantage of those that
// mend the rig; empty if none does.
func bestMove(t require.TestingT, l line, now *solve.Result) string {
	var trials, forgotten []line
	for i, n := range l.nodes {
		if !strings.HasPrefix(n, "grab") || l.strokes[i-1] != l.strokes[i] {
			continue
		}
		for into := range len(l.strokes) - 1 {
			if into != i-1 {
				trials = append(trials, moved(l, i, into))
			}
		}
	}
	for _, k := range []string{"0", "1"} {
		if holding(l, "runner"+k) && !holding(l, "grab"+k) {
			for into := range l.strokes {
				forgotten = append(forgotten, set(l, "grab"+k, into))
			}
		}
	}
	if best := bestOf(t, forgotten, now); best != "" {
		return best
	}
	return bestOf(t, trials, now)
}

func bestOf(t require.TestingT, trials []line, now *solve.Result) string {
	var best *solve.Result
	for _, trial := range trials {
		res, ok := solved(t, trial)
		falls := now.Released.Answer == solve.Down || now.Released.Answer == solve.Jams
		if !ok || res.Status != solve.OK || !falls && lint.Weaker(res.Released.Answer, now.Released.Answer) {
			continue
		}
		if best == nil || best.Main().Ideal.Cmp(*res.Main().Ideal) < 0 {
			best = res
		}
	}
	if best == nil {
		return ""
	}
	return lint.Ratio(*best.Main().Ideal)
}

// raisesMore checks a finding in a rig that does its job: the fix raises the advantage,
// and the load stays up as well as before.
func raisesMore(t require.TestingT, f *load.Loaded, d diag.Diagnostic, now *solve.Result) {
	require.Contains(t, d.Message, "holds against the haul")
	for _, fix := range d.Fixes {
		mended := solve.Rig(load.Text("yard.rig", diag.Apply(f.File, fix.Edits)).Model.Rigs[0])
		require.Equal(t, solve.OK, mended.Status)
		assert.Positive(t, mended.Main().Ideal.Cmp(*now.Main().Ideal))
		assert.False(t, lint.Weaker(mended.Released.Answer, now.Released.Answer) && lint.Stops(now.Released.Answer))
	}
}

// A rig that does not do its job has exactly one finding that says why; one that
// does has none. What is offered mends it, and no better move of a hitch exists.
func TestRandomRigs(t *testing.T) {
	why := map[string]bool{}
	for _, r := range faults {
		why[r.Name] = true
	}
	rapid.Check(t, func(t *rapid.T) {
		l := randomRig(t)
		now, complete := solved(t, l)
		f, found := examined(rigOf(l))
		var said []diag.Diagnostic
		for _, d := range found {
			if why[d.Rule] {
				said = append(said, d)
			}
		}
		if !complete {
			assert.Empty(t, said, printed(f, found))
			return
		}
		if now.Status == solve.OK {
			for _, d := range said {
				assert.Equal(t, "hitch-backward", d.Rule, printed(f, found))
				if now.Released.Answer == solve.Held || strings.Contains(d.Message, "against the haul") {
					raisesMore(t, f, d, now)
				}
			}
			return
		}
		require.Len(t, said, 1, "%s is %s:\n%s", l, now.Status, printed(f, found))
		d := said[0]
		if len(d.Fixes) > 0 {
			mended := load.Text("yard.rig", diag.Apply(f.File, d.Fixes[0].Edits))
			assert.Equal(t, solve.OK, solve.Rig(mended.Model.Rigs[0]).Status)
		}
		if d.Rule == "hitch-backward" || now.Status == solve.Jammed {
			return
		}
		best := bestMove(t, l, now)
		assert.Equal(t, best != "", d.Rule == "hitch-on-wrong-strand", "%s: best is %s\n%s", l, best, printed(f, found))
		if best != "" {
			assert.Contains(t, d.Message, "it is "+best, l)
		}
	})
}
