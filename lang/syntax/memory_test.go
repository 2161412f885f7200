package syntax

import (
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// typed changes a text as an author does: a few characters, a line, a block.
func typed(dice *rand.Rand, text string) string {
	pieces := []string{" ", "\n", "x", "#", "/", `\`, "~", "(", ")", `"`, "3 kN", "ü", "\x00", ". ", "\r\n", "on head", "expect held\n", "rig other\n", "\r"}
	at := dice.Intn(len(text) + 1)
	cut := min(len(text)-at, []int{0, 0, 1, 1, 3, 20, 100}[dice.Intn(7)])
	add := ""
	switch dice.Intn(4) {
	case 0, 1:
		add = pieces[dice.Intn(len(pieces))]
	case 2:
		from := dice.Intn(len(text) + 1)
		add = text[from:min(len(text), from+dice.Intn(80))]
	}
	return text[:at] + add + text[at+cut:]
}

// TestMemoryReadsWhatParseReads edits texts at random: every version is read as if
// it were the first.
func TestMemoryReadsWhatParseReads(t *testing.T) {
	texts := append(goodTexts(), shaftRig, strings.Join(goodTexts(), "\n"), strings.Join(faultTexts(t), "\n"))
	for seed, text := range texts {
		dice := rand.New(rand.NewSource(int64(seed)))
		memory := &Memory{}
		for step := range 60 {
			f := source.New("memory.rig", text)
			require.Equal(t, Parse(f), memory.Parse(f), "seed %d, step %d: %q", seed, step, text)
			text = typed(dice, text)
		}
	}
}

func TestMemoryKeepsWhatStaysAndForgetsTheRest(t *testing.T) {
	memory := &Memory{}
	before := memory.Parse(source.New("a.rig", shaftRig))
	after := memory.Parse(source.New("a.rig", "anchor bolt\n"+shaftRig))
	assert.Len(t, after.Statements, len(before.Statements)+1)
	assert.Len(t, memory.known, len(after.Statements))
	memory.Parse(source.New("a.rig", "anchor bolt\n"))
	assert.Len(t, memory.known, 1)
	at := memory.Parse(source.New("a.rig", "# x\nanchor bolt\n"))
	assert.Equal(t, "bolt", at.File.Slice(at.Statements[0].Body.(*Part).Name.Span))
}

func BenchmarkMemory(b *testing.B) {
	text := strings.Repeat(shaftRig+"\n", 40)
	memory := &Memory{}
	files := []*source.File{source.New("a.rig", text), source.New("a.rig", "anchor bolt\n"+text)}
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		memory.Parse(files[i%2])
	}
}
