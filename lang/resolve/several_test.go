package resolve

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pair is two rigs on common parts.
const pair = "units lbf ft\nanchor head\nload litter\nrope long\n\n# the first\nrig low \"From below\"\nhauler team\n" + line +
	"\nrig high\nunits N\nhauler crew\nreeve long: litter / head \\ crew\nexpect advantage 1:1\n"

var severalCases = []marked{
	{"two rigs on common parts", pair},
	{"a common part that one rig uses", "pulley top on head\n" + basic + "rig a\n" + line + "rig b\nreeve long: litter / top \\ team\n"},
	{"a common part that a rig in error may use", "pulley top on head\n" + basic + "rig a\n" + line + "rig b\nreeve long: litter / ⟦tp⟧unknown-part \\ team\n"},
	{"a part of the other rig than the one in error", basic + "rig a\nreeve long: litter / ⟦hed⟧unknown-part \\ team\nring eye on head\nrig b\n" + line + "ring ⟦ear⟧unused-part on head\n"},
	{"a common part that none uses", "pulley ⟦top⟧unused-part on head\n" + basic + "rig a\n" + line + "rig b\n" + line},
	{"a common rope that none reeves", "rope ⟦b⟧missing-reeve\n" + basic + "rig a\n" + line + "rig c\n" + line},
	{"a common rope that one rig reeves", "rope b\n" + basic + "rig a\n" + line + "rig c\n" + line + "reeve b: litter / head\n"},
	{"a common fault is one", "pulley top on ⟦hed⟧unknown-part efficiency ⟦0 %⟧bad-value\n" + basic + "rig a\nreeve long: litter / top \\ team\nreeve b: litter / head\nrope b\nrig c\n" + line},
	{"a name of another rig", "rig a\n" + basic + line + "rig b\nanchor top\nload crate\nrope long\nreeve long: crate / ⟦head⟧unknown-part\nrope c\nreeve c: crate / top\n"},
	{"a common name given again", basic + "rig a\nload ⟦litter⟧duplicate-name\n" + line + "rig b\n" + line},
	{"a rig of nothing", "rig empty\n"},
}

func TestSeveralRigs(t *testing.T) {
	file, found := resolved("pit/yard.rig", pair)
	require.Empty(t, found)
	require.Len(t, file.Rigs, 2)
	low, high := file.Rigs[0], file.Rigs[1]
	assert.Equal(t, "low", low.Name)
	assert.Equal(t, "From below", low.Title)
	assert.Equal(t, "low", low.NamePlace.Text())
	assert.True(t, strings.HasPrefix(low.Place.Text(), "rig low"))
	assert.True(t, strings.HasSuffix(low.Place.Text(), "\\ team"))
	assert.Equal(t, []string{"lbf", "ft"}, low.Units)
	assert.Equal(t, []string{"N"}, high.Units)
	require.Len(t, high.Claims, 1)
	assert.NotSame(t, low.Part("head"), high.Part("head"), "each rig has its own")
	assert.Same(t, high.Part("litter"), high.Ropes[0].Nodes[0].Part)
	for _, rig := range file.Rigs {
		for i, p := range rig.Parts {
			assert.Equal(t, i, p.Index)
		}
	}
}

func TestFileWithoutRigHasItsName(t *testing.T) {
	for name, want := range map[string]string{
		"yard.rig": "yard", "pit/deep/yard.rig": "yard", "notes.txt": "notes.txt", "two.one.rig": "two.one",
	} {
		file, _ := resolved(name, "\n"+basic+line)
		require.Len(t, file.Rigs, 1)
		assert.Equal(t, want, file.Rigs[0].Name)
		assert.Equal(t, 0, file.Rigs[0].NamePlace.Span.Len())
		assert.Equal(t, 0, file.Rigs[0].NamePlace.Span.Start)
		assert.Equal(t, strings.TrimSpace(basic+line), file.Rigs[0].Place.Text())
	}
}

func TestNoRigWithoutStatements(t *testing.T) {
	for _, text := range []string{"", "\n# nothing\n", "stock pulley a\n", "use \"b.rig\"\n"} {
		file, _ := resolved("yard.rig", text)
		assert.Empty(t, file.Rigs, text)
	}
}

func TestTooManyRigsOnTooMuch(t *testing.T) {
	var b strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&b, "load p%d\n", i)
	}
	for i := range 1000 {
		fmt.Fprintf(&b, "rig r%d\nload q on p0\nrope long\nreeve long: p0 / p1\n", i)
	}
	file, found := resolved("yard.rig", b.String())
	require.Len(t, file.Rigs, 1000)
	assert.Contains(t, message(t, found, "too-large"), "r100 is one rig too many")
	for _, d := range found {
		assert.Contains(t, []string{"too-large", "unused-part"}, d.Rule)
	}
	assert.Len(t, file.Rigs[99].Parts, 4)
	assert.False(t, file.Rigs[99].Incomplete)
	assert.Len(t, file.Rigs[100].Parts, 2)
	assert.True(t, file.Rigs[100].Incomplete)
}

func TestDocComments(t *testing.T) {
	rig, _ := oneRig(t, "# far away\n\n# the block at the head\n#  two lines\npulley top\n")
	assert.Equal(t, []string{"the block at the head", "two lines"}, rig.Part("top").Doc)
}

func TestRigThatDoesWithoutACommonRope(t *testing.T) {
	file, found := resolved("yard.rig", "rope b\n"+basic+"rig a\n"+line+"rig c\n"+line+"reeve b: litter / head\n")
	assert.Empty(t, found)
	for _, rig := range file.Rigs {
		assert.False(t, rig.Incomplete, rig.Name)
	}
}
