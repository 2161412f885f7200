package lint_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// said is a slack line of stated friction, without which a rig is an ideal one.
const said = "anchor far\nsling aside friction 0.3\nreeve aside: far ~ litter\n"

// rubbing writes an efficiency on every pulley of a random rig, and on the first one
// what is given; the strengths are there for the factor.
func rubbing(text, first string, d langtest.Dice) string {
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		if !strings.HasPrefix(l, "pulley ") {
			continue
		}
		clause := fmt.Sprintf(" efficiency %d %% strength 9 kN", 50+10*d.UpTo(6))
		if first != "-" {
			clause, first = first+" strength 9 kN", "-"
		}
		if name, mass, ok := strings.Cut(l, " mass"); ok {
			lines[i] = name + clause + " mass" + mass
			continue
		}
		lines[i] = l + clause
	}
	return strings.Join(lines, "\n")
}

// around writes a claim over and one under some multiples of a figure.
func around(what string, figure lp.Num, unit string) []string {
	var claims []string
	for _, k := range []float64{0.7, 1, 1.1, 1.6} {
		for _, compare := range []string{"over", "under"} {
			claims = append(claims, fmt.Sprintf("expect %s %s %.4f%s", what, compare, k*figure.Float(), unit))
		}
	}
	return claims
}

// claimsAbout writes claims near the figures that a rig has without friction.
func claimsAbout(res *solve.Result) []string {
	claims := []string{"expect factor over 3", "expect factor under 30"}
	if main := res.Main(); main != nil && main.Ideal != nil {
		claims = append(claims, around("actual advantage", *main.Ideal, "")...)
	}
	for _, ph := range res.Hauls() {
		if pull := res.PullNewtons(ph); pull != nil {
			claims = append(claims, around("pull", *pull.Value, " N")...)
			claims = append(claims, around("lower hand", *pull.Value, " N")...)
		}
	}
	for _, p := range res.Rig.Parts {
		for _, ph := range res.Phases {
			if f := ph.Parts[p.Index]; f.Known() {
				claims = append(claims, around("load on "+p.Name, f.Most(), "")...)
			}
		}
	}
	return claims
}

// What is confirmed or contradicted while an efficiency is not known stays so,
// whatever it is. Every claim gets one verdict.
func TestRandomClaimsWithUnknownFriction(t *testing.T) {
	settled, unknown := 0, 0
	for seed := range int64(300) {
		text := langtest.RandomRig(langtest.Seeded(seed)) + said
		f := load.Text("yard.rig", text)
		if len(f.Model.Rigs) != 1 || f.Model.Rigs[0].Incomplete {
			continue
		}
		claims := strings.Join(claimsAbout(solve.Ideal(f.Model.Rigs[0])), "\n") + "\n"
		before := verdicts(rubbing(text, "", langtest.Seeded(seed)) + claims)
		for _, efficiency := range []string{" efficiency 10 %", " efficiency 60 %", " efficiency 99 %"} {
			after := verdicts(rubbing(text, efficiency, langtest.Seeded(seed)) + claims)
			for i, v := range before {
				assert.Equal(t, v.Holds, v.Message == "")
				assert.False(t, v.Holds && v.Unknown)
				if v.Unknown {
					unknown++
					continue
				}
				settled++
				if !after[i].Unknown {
					assert.Equal(t, v.Holds, after[i].Holds, "seed %d,%s: %s\n%s\nand then %s\n%s",
						seed, efficiency, strings.Split(claims, "\n")[i], v.Message, after[i].Message, text)
				}
			}
		}
		if t.Failed() {
			return
		}
	}
	assert.Greater(t, settled, 1000)
	assert.Greater(t, unknown, 1000)
}

func verdicts(text string) []lint.Verdict {
	rig := load.Text("yard.rig", text).Model.Rigs[0]
	res := solve.Rig(rig)
	var list []lint.Verdict
	for _, c := range rig.Claims {
		list = append(list, lint.Judge(res, house.Of(), c))
	}
	return list
}
