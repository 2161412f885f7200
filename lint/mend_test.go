package lint_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
)

const (
	rightLine = "reeve long: litter / grab / top \\ runner / team\n"
	wrongLine = "reeve long: litter / top \\ grab \\ runner / team\n"
	// bare has no capture: mended, it still has advice, which is mended too.
	bare = "anchor head\nload litter\nhauler team\npulley top on head\nhitch grab\npulley runner on grab\nrope long\n"
)

func mend(t *testing.T, text string) *lint.Mending {
	t.Helper()
	m := lint.Mend(load.Text("yard.rig", text), rules.All())
	assert.Equal(t, m.File.File.Text == text, len(m.Steps) == 0, "there is a step if and only if something changed")
	return m
}

func TestMend(t *testing.T) {
	for _, c := range []struct {
		name, text, want string
		mended           int
	}{
		{"nothing to mend", wrongHitch + rightLine, wrongHitch + rightLine, 0},
		{"a hitch on the wrong strand", wrongHitch + wrongLine, wrongHitch + rightLine, 1},
		{"what comes to light is mended too", bare + wrongLine,
			bare + "reeve long: litter / grab / top (holds) \\ runner / team\n", 1},
		{"names that only together are right", wrongHitch + "reeve lon: litter / grb / top \\ runer / team\n", wrongHitch + rightLine, 3},
		{"a name at all its places", "anchor head\nload liter\nhauler team\nrope long\nreeve long: litter / head \\ team\naccept no-capture because \"x\"\n",
			"anchor head\nload liter\nhauler team\nrope long\nreeve long: liter / head \\ team\naccept no-capture because \"x\"\n", 1},
		{"strokes and comments", wrongHitch + "# the haul\nreeve long: litter/grab / top \\ runner/team  # to the wall\n",
			wrongHitch + "# the haul\n" + strings.TrimSuffix(rightLine, "\n") + "  # to the wall\n", 1},
		{"an acceptance of nothing", wrongHitch + rightLine + "\naccept jammed because \"x\"\n", wrongHitch + rightLine, 1},
		{"in each of two rigs", "rig a\n" + wrongHitch + wrongLine + "rig b\n" + wrongHitch + wrongLine,
			"rig a\n" + wrongHitch + rightLine + "rig b\n" + wrongHitch + rightLine, 2},
		{"in one rig, while an error hides another", "rig a\n" + wrongHitch + wrongLine + "rig b\n" + wrongHitch + "reeve long: litter / quay \\ grb / team\n",
			"rig a\n" + wrongHitch + rightLine + "rig b\n" + wrongHitch + "reeve long: litter / quay \\ grb / team\n", 1},
		{"an acceptance of what an error hides", wrongHitch + rightLine + "pulley stop on head\npulley spare on stopp\naccept unused-part because \"x\"\n",
			wrongHitch + rightLine + "pulley stop on head\npulley spare on stop\naccept unused-part because \"x\"\n", 2},
		{"with the line ends and the mark of the file", "\ufeff" + strings.ReplaceAll("ancor head\n"+strings.TrimPrefix(wrongHitch, "anchor head\n")+"reeve long: litter / grab / top\\ runner / team\n", "\n", "\r\n"),
			"\ufeff" + strings.ReplaceAll(wrongHitch+rightLine, "\n", "\r\n"), 2},
		{"a line taken out between others", strings.ReplaceAll(wrongHitch+rightLine+"\naccept jammed because \"x\"\nexpect advantage 3:1\n", "\n", "\r\n"),
			strings.ReplaceAll(wrongHitch+rightLine+"\nexpect advantage 3:1\n", "\n", "\r\n"), 1},
		{"without an end to the last line", wrongHitch + strings.TrimSuffix(wrongLine, "\n"), wrongHitch + strings.TrimSuffix(rightLine, "\n"), 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := mend(t, c.text)
			assert.Equal(t, c.want, m.File.File.Text)
			assert.Equal(t, c.mended, m.Mended)
			assert.False(t, m.Stopped)
			again := mend(t, m.File.File.Text)
			assert.Empty(t, again.Steps, "nothing is left to mend")
			assert.Equal(t, again.Before, m.Left)
		})
	}
}

// What is not proved is left as it is, and why is said.
func TestMendRefuses(t *testing.T) {
	for _, c := range []struct {
		name, text string
		why        []string
	}{
		{"names behind which a fault is hidden", wrongHitch + "reeve long: litter / top \\ grb \\ runner / team\n",
			[]string{"then grab grips the rope between top and runner: team raises nothing; on litter / top it is 3:1"}},
		{"names while another one is nowhere", wrongHitch + "anchor far\nreeve long: litter / grb / quay \\ runner / team\n",
			[]string{"errors still hide what the rig does"}},
		{"a guess that silences a finding", bare + rightLine + "accept no-captur because \"x\"\n",
			[]string{"then it is not reported that litter falls when team lets go"}},
		{"a part guessed that silences a finding", bare + rightLine + "accept no-capture at tp because \"x\"\n",
			[]string{"then it is not reported that litter falls when team lets go"}},
		{"an acceptance that what it names must outlive", wrongHitch + rightLine + "pulley low on hed\naccept unknown-part because \"x\"\n",
			[]string{"then unknown-part is accepted, but not found"}},
		{"a fix that makes an acceptance vain", wrongHitch + wrongLine + "expect finding hitch-on-wrong-strand\n", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := mend(t, c.text)
			assert.Equal(t, c.text, m.File.File.Text)
			assert.Empty(t, m.Steps)
			assert.Zero(t, m.Mended)
			assert.Equal(t, m.Before, m.Left)
			var why []string
			for _, r := range m.Refused {
				why = append(why, r.Why)
			}
			assert.Equal(t, c.why, why)
		})
	}
}

// House rules hold for other files too: they are not mended, and what they turn off is
// not mended away.
func TestMendLeavesHouseRules(t *testing.T) {
	for _, text := range []string{
		"rule no-kapture off\n", "policy quarry\nrequire factr 4\n",
		"rule no-captur off\n" + bare + rightLine,
	} {
		m := lint.Mend(load.Text("policy.rig", text), rules.All())
		assert.NotEmpty(t, m.Before.Findings, text)
		assert.Contains(t, m.File.File.Text, strings.SplitAfter(text, "\n")[0])
		for _, r := range m.Refused {
			assert.Equal(t, "then other house rules hold", r.Why, text)
		}
	}
	strict := load.Text("policy.rig", "rule no-capture error\n")
	f := load.Text("yard.rig", "ancor head\n"+strings.TrimPrefix(bare, "anchor head\n")+rightLine)
	f.Policy = strict
	m := lint.Mend(f, rules.All())
	assert.Empty(t, m.Steps, "the house makes an error of what comes to light")
	f.Policy = nil
	assert.Len(t, lint.Mend(f, rules.All()).Steps, 2)
}

// In notes only the blocks are mended, and new lines get what the document puts before
// them.
func TestMendNotes(t *testing.T) {
	const notes = "The *anchor hed*.\n\n> ```rig\n> anchor head\n> load litter\n> hauler team\n> pulley top on hed holds litter\n>\n> reeve long: litter / top (angle 130 deg)\\ team\n> ```\n"
	m := lint.Mend(load.Text("notes.md", notes), rules.All())
	assert.Equal(t, "The *anchor hed*.\n\n> ```rig\n> anchor head\n> load litter\n> hauler team\n> pulley top on head holds litter\n>\n> rope long\n> reeve long: litter / top (angle 130 deg) \\ team\n> ```\n", m.File.File.Whole)
	require.Len(t, m.Steps, 3)
	assert.Equal(t, "rope long", m.Steps[1].Now.Text())
	assert.Equal(t, 3, m.Mended)
}

// A step says where the text now is that it wrote.
func TestStepsSayWhatTheyWrote(t *testing.T) {
	m := mend(t, bare+"reeve lon: litter/grb / top \\ runer / team\n")
	var steps []string
	for _, s := range m.Steps {
		line := s.Finding.Place.File.Line(s.Finding.Place.Span.Start) + 1
		steps = append(steps, fmt.Sprintf("%d: %s > %s", line, s.Finding.Place.Text(), s.Now.Text()))
	}
	assert.Equal(t, []string{"8: lon > long", "8: grb > grab", "8: runer > runner", "8: / > /", "8:  > (holds)"}, steps)
	left := mend(t, bare+"accept jammed because \"x\"\n"+rightLine)
	assert.Zero(t, left.Steps[0].Now, "a fix that only takes out writes nothing")
}

// inventor is a rule of the test: it finds the anchors named x… and offers to rename
// each as it says.
func inventor(names func(anchor string) []string) *lint.Rule {
	r := &lint.Rule{Name: "invented", Severity: diag.Error, Summary: "an anchor of the test"}
	r.Check = func(p *lint.Pass) {
		for _, part := range p.Rig.Parts {
			if !strings.HasPrefix(part.Name, "x") {
				continue
			}
			d := diag.Diagnostic{Place: part.NamePlace, Subject: part.Name, Message: part.Name + " is odd"}
			for _, name := range names(part.Name) {
				d.Fixes = append(d.Fixes, diag.Fix{Title: "write " + name, Edits: []diag.Edit{{Place: part.NamePlace, NewText: name}}})
			}
			p.Report(d)
		}
	}
	return r
}

func mendWith(r *lint.Rule, text string) *lint.Mending {
	return lint.Mend(load.Text("yard.rig", text), []*lint.Rule{r})
}

const quiet = "accept unused-part because \"A test.\"\n"

func TestMendLeavesTheChoiceToTheUser(t *testing.T) {
	m := mendWith(inventor(func(string) []string { return []string{"a", "b"} }), "anchor x\n"+quiet)
	assert.Empty(t, m.Steps)
	assert.Empty(t, m.Refused)
	require.Len(t, m.Left.Findings, 1)
}

// Two fixes, each of them right, that together are wrong: one is made.
func TestMendTakesNoTwoThatContradict(t *testing.T) {
	m := mendWith(inventor(func(string) []string { return []string{"same"} }), "anchor xa\nanchor xb\n"+quiet)
	assert.Equal(t, "anchor same\nanchor xb\n"+quiet, m.File.File.Text)
	require.Len(t, m.Refused, 1)
	assert.Equal(t, "then same is the name of another part already; each name is given once", m.Refused[0].Why)
	assert.Equal(t, 1, m.Mended)
}

func TestMendEnds(t *testing.T) {
	grows := inventor(func(name string) []string { return []string{name + "y"} })
	assert.Empty(t, mendWith(grows, "anchor x\n"+quiet).Steps, "what only moves the finding is no fix")
	none := inventor(func(name string) []string { return []string{name} })
	assert.Empty(t, mendWith(none, "anchor x\n"+quiet).Steps)
	huge := "# " + strings.Repeat("x", 3<<20) + "\nancor spare\n"
	m := lint.Mend(load.Text("yard.rig", huge), rules.All())
	assert.True(t, m.Stopped)
	assert.Equal(t, huge, m.File.File.Text)
}

// A claim is never mended away.
func TestMendKeepsClaims(t *testing.T) {
	r := &lint.Rule{Name: "invented", Severity: diag.Error, Summary: "a claim of the test"}
	r.Check = func(p *lint.Pass) {
		for _, c := range p.Rig.Claims {
			p.Report(diag.Diagnostic{Place: c.Place, Message: "a claim", Fixes: []diag.Fix{{Title: "take it out", Edits: []diag.Edit{{Place: c.Place}}}}})
		}
	}
	m := mendWith(r, wrongHitch+rightLine+"expect advantage 4:1\n")
	assert.Empty(t, m.Steps)
	require.Len(t, m.Refused, 1)
	assert.Equal(t, "then a claim is lost", m.Refused[0].Why)
}
