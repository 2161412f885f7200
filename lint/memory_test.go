package lint_test

import (
	"fmt"
	"math/rand"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/solve"
)

var (
	rigBlock = regexp.MustCompile("(?ms)^```rig[^\n]*\n(.*?)^```")
	rigLine  = regexp.MustCompile(`(?m)^rig .*\n`)
)

// pageRigs are the rigs on the pages of the rules, each without its name.
func pageRigs() []string {
	var list []string
	for _, r := range rules.All() {
		text, _ := rules.Page(r.Name)
		for _, m := range rigBlock.FindAllStringSubmatch(text, -1) {
			list = append(list, rigLine.ReplaceAllString(m[1], ""))
		}
	}
	return list
}

// library writes a file of some rigs, drawn from a list, under a head of their own.
func library(dice *rand.Rand, rigs []string) []string {
	blocks := []string{"# One head for all.\nanchor common strength 20 kN\n"}
	for i := range 1 + dice.Intn(6) {
		blocks = append(blocks, fmt.Sprintf("rig stage-%d\n%s", i, rigs[dice.Intn(len(rigs))]))
	}
	return blocks
}

// changed alters a library as its author may.
func changed(dice *rand.Rand, blocks, rigs []string) []string {
	blocks = append([]string(nil), blocks...)
	i := dice.Intn(len(blocks))
	switch dice.Intn(8) {
	case 6:
		blocks[i] += fmt.Sprintf("include stage-%d as copy-%d with litter mass %d kg\n", dice.Intn(6), dice.Intn(9), dice.Intn(300))
	case 7:
		blocks[0] += "use \"models.rig\"\n"
	case 0:
		blocks[0] += "stock pulley twin strength 30 kN\n"
	case 1:
		blocks[i] = "# moved\n\n" + blocks[i]
	case 2:
		blocks[i] += "require factor 12\n"
	case 3:
		blocks = append(blocks, fmt.Sprintf("rig stage-%d\n%s", dice.Intn(9), rigs[dice.Intn(len(rigs))]))
	case 4:
		lines := strings.Split(blocks[i], "\n")
		j := dice.Intn(len(lines))
		blocks[i] = strings.Join(append(lines[:j:j], lines[j+1:]...), "\n")
	case 5:
		j := dice.Intn(len(blocks))
		if i > 0 && j > 0 {
			blocks[i], blocks[j] = blocks[j], blocks[i]
		}
	}
	return blocks
}

// TestMemoryFindsWhatExamineFinds edits libraries at random: every version is
// examined as if it were the first.
func TestMemoryFindsWhatExamineFinds(t *testing.T) {
	rigs := pageRigs()
	require.Greater(t, len(rigs), 20)
	for seed := range int64(12) {
		dice := rand.New(rand.NewSource(seed))
		memory := lint.NewMemory(rules.All())
		blocks := library(dice, rigs)
		for step := range 8 {
			f := load.Text("library.rig", strings.Join(blocks, "\n"))
			want := lint.Examine([]*load.Loaded{f}, rules.All())
			got, ok := memory.Examine(f, nil)
			require.True(t, ok)
			require.Equal(t, want, got, "seed %d, step %d:\n%s", seed, step, f.File.Text)
			blocks = changed(dice, blocks, rigs)
		}
	}
}

func TestMemoryFollowsThePolicy(t *testing.T) {
	memory := lint.NewMemory(rules.All())
	for _, policy := range []string{"require factor 2\n", "require factor 200\n", "require factor 2\n"} {
		f := load.Text("a.rig", langtest.Usual)
		f.Policy = load.Text("policy.rig", policy)
		got, _ := memory.Examine(f, nil)
		assert.Equal(t, lint.Examine([]*load.Loaded{f}, rules.All()), got)
	}
}

func TestMemoryKeepsTheFiguresOfAnUnchangedRig(t *testing.T) {
	memory := lint.NewMemory(rules.All())
	first := load.Text("a.rig", langtest.Usual)
	result := func(f *load.Loaded, rig int) *solve.Result {
		res, ok := memory.Result(f, rig, nil)
		require.True(t, ok)
		return res
	}
	res := result(first, 0)
	moved := load.Text("a.rig", langtest.Usual+"\nrig other\nanchor head\n")
	memory.Examine(moved, nil)
	assert.NotSame(t, res, result(moved, 0), "it is one of several now")
	again := load.Text("a.rig", langtest.Usual+"\nrig other\nanchor head\nanchor rear\n")
	assert.Same(t, result(moved, 0), result(again, 0))
	assert.NotSame(t, result(moved, 1), result(again, 1))
	_, ok := memory.Result(load.Text("a.rig", "anchor new\n"), 0, func() bool { return true })
	assert.False(t, ok, "nobody wants it any more")
}

func TestMemoryGivesUpWhenToldTo(t *testing.T) {
	slow := &lint.Rule{Name: "slow", Severity: diag.Advice, Check: func(p *lint.Pass) {
		time.Sleep(time.Millisecond)
		p.Report(diag.Diagnostic{Place: p.Rig.Place, Message: "slow"})
	}}
	memory := lint.NewMemory([]*lint.Rule{slow})
	f := load.Text("a.rig", langtest.Usual)
	_, ok := memory.Examine(f, func() bool { return true })
	assert.False(t, ok)
	got, ok := memory.Examine(f, func() bool { return false })
	assert.True(t, ok)
	assert.Len(t, got.Findings, 1, "what was given up is found the next time")
}

func BenchmarkMemory(b *testing.B) {
	var text strings.Builder
	for i := range 40 {
		text.WriteString(strings.Replace(langtest.Usual, "rig shaft-raise", fmt.Sprintf("rig shaft-raise-%d", i), 1) + "\n")
	}
	files := []*load.Loaded{load.Text("a.rig", text.String()), load.Text("a.rig", "# x\n"+text.String())}
	memory := lint.NewMemory(rules.All())
	for i := 0; b.Loop(); i++ {
		memory.Examine(files[i%2], nil)
	}
}
