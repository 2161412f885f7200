package lint_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
)

// What became of each claim: its reason or rule, its rig, its state, and what it met.
func TestClaimsAreKeptWithWhatTheyMet(t *testing.T) {
	const right = wrongHitch + "reeve long: litter / grab / top \\ runner / team\n"
	const fault = wrongHitch + "reeve long: litter / top \\ grab \\ runner / team\n"
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"met", right + "anchor b\nanchor a\naccept unused-part because \"For later.\"\n",
			[]string{"accept For later. in yard: met: b, a"}},
		{"at one part", right + "anchor a\nanchor b\naccept unused-part at b because \"x\"\nexpect finding unused-part at a\n",
			[]string{"accept x in yard: met: b", "expect unused-part in yard: met: a"}},
		{"unmet", right + "accept no-capture because \"x\"\nexpect finding jammed\n",
			[]string{"accept x in yard: unmet: ", "expect jammed in yard: unmet: "}},
		{"an error of the text", right + "pulley low on hed\naccept unknown-part because \"x\"\nexpect finding unknown-part\n",
			[]string{"accept x in yard: not-allowed: ", "expect unknown-part in yard: met: hed"}},
		{"of claims", right + "accept expectation-failed because \"x\"\nexpect finding unknown-rule\n",
			[]string{"accept x in yard: not-allowed: ", "expect unknown-rule in yard: not-allowed: "}},
		{"hidden by an error", fault + "pulley low on hed\nrope b\nreeve b: litter / low\naccept hitch-on-wrong-strand because \"x\"\n",
			[]string{"accept x in yard: not-judged: "}},
		{"no such rule or part", right + "accept jam because \"x\"\naccept jammed at nobody because \"y\"\n",
			[]string{"accept x in yard: not-judged: ", "accept y in yard: not-judged: "}},
		{"in each rig", "anchor spare\naccept unused-part because \"x\"\nrig a\n" + right + "rig b\n" + right,
			[]string{"accept x in a: met: spare", "accept x in b: met: spare"}},
		{"in one rig", "anchor spare\nrig a\n" + right + "accept unused-part because \"x\"\nrig b\n" + right,
			[]string{"accept x in a: met: spare"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			out := lint.Examine([]*load.Loaded{load.Text("yard.rig", c.text)}, rules.All())
			assert.Equal(t, c.want, settled(out))
		})
	}
}

func settled(out lint.Outcome) []string {
	var list []string
	for _, a := range out.Acceptances {
		line := "accept " + a.Because.Value + " in " + a.Rig.Name + ": " + string(a.State) + ": "
		for i, d := range a.Findings {
			line += []string{"", ", "}[min(i, 1)] + d.Subject
		}
		list = append(list, line)
	}
	for _, e := range out.Expectations {
		line := "expect " + e.Rule.Text + " in " + e.Rig.Name + ": " + string(e.State) + ": "
		for i, d := range e.Findings {
			line += []string{"", ", "}[min(i, 1)] + d.Subject
		}
		list = append(list, line)
	}
	return list
}
