package rules

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var one = lp.Int(1)

// armed gives a random rig whose parts bear little, so that the rules about forces have
// much to say.
func armed(d langtest.Dice) string {
	force := func(word string) string { return fmt.Sprintf(" %s %d N", word, 100+100*d.UpTo(12)) }
	clauses := map[string]func() string{
		"anchor": func() string { return force("strength") },
		"rope":   func() string { return force("strength") },
		"hauler": func() string { return fmt.Sprintf(" people %d", 1+d.UpTo(8)) + force("pull") },
		"hitch":  func() string { return force([]string{"strength", "slips"}[d.UpTo(2)]) },
		"pulley": func() string {
			if d.UpTo(2) == 0 {
				return force("strength")
			}
			return force("strength") + " efficiency 80 to 95 %"
		},
	}
	var b strings.Builder
	if d.UpTo(2) == 0 {
		b.WriteString("require factor 3\nrequire pull 700 N\n")
	}
	for line := range strings.Lines(langtest.RandomRig(d)) {
		kind, _, _ := strings.Cut(line, " ")
		line = strings.TrimSuffix(line, "\n")
		if add := clauses[kind]; add != nil && d.UpTo(4) > 0 {
			line += add()
		}
		b.WriteString(line + "\n")
	}
	return b.String()
}

// Of the rules about what a part bears only one speaks of it, and part-overloaded says that
// it breaks only where the solver has it carry more than it bears.
func TestRandomForces(t *testing.T) {
	dice, said := langtest.Seeded(3), map[string]int{}
	for range 4000 {
		text := armed(dice)
		f := load.Text("yard.rig", text)
		require.Len(t, f.Model.Rigs, 1)
		rig := f.Model.Rigs[0]
		res := solve.Rig(rig)
		if rig.Incomplete || res.Status != solve.OK || res.WeightNewtons == nil {
			continue
		}
		found := lint.Run([]*load.Loaded{f}, forces)
		about := map[string]string{}
		for _, d := range found {
			said[d.Rule]++
			switch d.Rule {
			case "part-overloaded", "hitch-slips", "clamp-damages-rope", "load-shared-unknown":
			default:
				continue
			}
			for _, name := range append([]string{d.Subject}, d.Also...) {
				assert.Empty(t, about[name], "%s also has: %s, in\n%s", name, d.Message, text)
				about[name] = d.Rule
				rating := res.Ratings()[rig.Part(name).Index]
				require.NotNil(t, rating.Load, text)
				if d.Severity == diag.Error {
					assert.Negative(t, rating.Factor.Cmp(one), text)
				}
			}
		}
		for _, rating := range res.Ratings() { // nothing that is broken goes unsaid
			if rating.Factor != nil && rating.Factor.Cmp(one) < 0 && len(res.GripsWith(rating.Part)) == 1 {
				assert.NotEmpty(t, about[rating.Part.Name], "%s in\n%s", rating.Part.Name, text)
			}
		}
	}
	t.Log(said)
	for _, r := range []string{"part-overloaded", "hitch-slips", "load-shared-unknown", "more-people-needed", "pull-over-limit",
		"team-can-overload", "redirect-loads-anchor"} {
		assert.Greater(t, said[r], 2, r)
	}
}
