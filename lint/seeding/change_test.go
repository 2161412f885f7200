package seeding_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/load"
	"fairlead/lint/seeding"
)

// compared changes the board and says what is different then.
func compared(t *testing.T, old, now string) seeding.Change {
	t.Helper()
	require.Contains(t, board, old)
	with := func(text string) *seeding.Worked {
		f := load.Text("board.rig", text)
		f.Policy = load.Text("policy.rig", "policy p\nrequire factor 10\nrequire drop under 1 m\n")
		w := seeding.Work(f, "board")
		require.NotNil(t, w)
		return w
	}
	return seeding.Compare(with(board), with(strings.Replace(board, old, now, 1)))
}

func indexOf(t *testing.T, text, part string) int {
	t.Helper()
	i := strings.Index(text, part)
	require.GreaterOrEqual(t, i, 0, part)
	return i
}

func TestHarmlessChanges(t *testing.T) {
	for old, now := range map[string]string{
		"rope    belay            diameter 11 mm": "rope    belay            diameter 11.05 mm",
		"people 4  pull 200 N":                    "people 5  pull 201 N",
		"strength 30 kN\nanchor  tree":            "strength 30.1 kN\nanchor  tree",
		"litter / plate":                          "litter (bowline) / plate",
	} {
		c := compared(t, old, now)
		assert.True(t, c.Harmless(), "%s: %q %q", now, c.Worse, c.Other)
	}
}

func TestOtherChanges(t *testing.T) {
	for _, c := range []struct{ old, now, says string }{
		{"mass 160 kg", "mass 100 kg", "team pulls 354 N, not 567 N"},
		{"strength 30 kN\nanchor  tree", "strength 25 kN\nanchor  tree", "head has a factor of 15.9, not 19.1"},
	} {
		got := compared(t, c.old, c.now)
		assert.False(t, got.Harmful(), "%s: %q", c.now, got.Worse)
		assert.Contains(t, got.Other, c.says, "%s: %q", c.now, got.Other)
	}
}

// Each is worse than the board by what one compares.
func TestHarmfulChanges(t *testing.T) {
	for _, c := range []struct{ old, now, says string }{
		{"on head", "on haed", "the text is wrong: haed is not a part of this rig, did you mean head?"},
		{`grab / top \ runner`, `top \ grab \ runner`, "while team hauls: raises-nothing"},
		{"holds litter  releasable\nhitch", "releasable\nhitch", "without the anchor tree: falls"},
		{"holds litter  takes", "takes", "without the anchor head: falls"},
		{"on tree", "on head", "without the anchor head: falls"},
		{"/ plate", "~ plate (holds)", "without the line main: falls"},
		{"people 4", "people 2", "team cannot pull so much"},
		{"people 4", "people 7", "team with that advantage can pull more than the house allows"},
		{"efficiency 92 %\ndevice", "efficiency 50 %\ndevice", "friction leaves team 0.653 of the ideal advantage, not 0.922"},
		{"strength 30 kN\nanchor  tree", "strength 12 kN\nanchor  tree", "head has a factor of 7.65"},
		{"mass 160 kg", "mass 2000 kg", "head has a factor of 1.53"},
		{"cord 8 mm", "cord 4 mm", "the cord of grab is 0.364 of its rope"},
		{"takes 9 to 12 mm", "takes 12 to 13 mm", "plate does not take belay"},
		{"releasable\nhitch", "\nhitch", "team cannot lower it"},
		{"pulley  runner  on grab", "sling runner on grab strength 20 kN mass 1 kg #", "runner is textile, and a loaded rope runs over it"},
	} {
		got := compared(t, c.old, c.now)
		assert.True(t, got.Harmful(), c.now)
		assert.Contains(t, got.Worse, c.says, "%s: %q", c.now, got.Worse)
	}
	assert.True(t, seeding.Compare(seeding.Work(load.Text("board.rig", board), "board"), nil).Harmful())
}
