package solve_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
)

const aboveCatch = `
anchor head at 10 m
anchor brink at 7 m
load litter at 0 m
hauler team
pulley top on head
hitch catch on head %CATCH%
hitch grab %GRAB%
pulley runner on grab
rope long
reeve long: litter / catch / grab / top \ runner / team
`

func confined(t *testing.T, text string) []solve.Confined {
	t.Helper()
	s := haul(t, solved(t, text)).Stroke
	require.NotNil(t, s)
	return s.Confined
}

func TestTractorAboveItsCapture(t *testing.T) {
	text := strings.NewReplacer("%CATCH%", "at 9 m length 10 cm", "%GRAB%", "at 9.5 m length 20 cm").Replace(aboveCatch)
	list := confined(t, text)
	require.Len(t, list, 1)
	k := list[0]
	assert.Equal(t, []int{2, 1, 3}, []int{k.Grip, k.Capture, k.Bend})
	assert.Equal(t, "7/10", number(k.Rise), "a metre less the lengths")
	nowhere := strings.NewReplacer("%CATCH%", "", "%GRAB%", "", " at 10 m", "").Replace(aboveCatch)
	list = confined(t, nowhere)
	require.Len(t, list, 1, "the order on the rope needs no positions")
	assert.Nil(t, list[0].Rise)

	assert.Empty(t, confined(t, strings.Replace(nowhere, "litter / catch / grab /", "litter / grab / catch /", 1)))
	assert.Empty(t, confined(t, strings.Replace(text, "catch on head", "catch on brink", 1)), "a fixed point of its own")
	assert.Empty(t, confined(t, three("", "", "6")), "a pulley that holds is its own bend")
}

func TestTractorAboveItsCaptureInASecondStage(t *testing.T) {
	text := strings.NewReplacer("grab2 at 9 m", "grab2 at 29.5 m", "/ grab2 / q", "/ bite / grab2 / q", "pulley q on far", "pulley q on far\nhitch bite on far at 29 m").
		Replace(nine("30", "", "", ""))
	list := confined(t, text)
	require.Len(t, list, 1)
	assert.Equal(t, "grab2", list[0].Rope.Nodes[list[0].Grip].Part.Name)
	assert.Equal(t, "1/3", number(list[0].Rise), "one metre at three times the load's speed")
}

func TestCapturesThatSettleTheSetBackAreNamed(t *testing.T) {
	names := func(s *solve.Stroke) string {
		var list []string
		for _, p := range s.SettingBack {
			list = append(list, p.Name)
		}
		return strings.Join(list, " ")
	}
	assert.Equal(t, "top", names(stroke(t, three("", "set-back 50 cm", "6"))))
	assert.Empty(t, names(stroke(t, three("", "", "6"))))
	assert.Equal(t, "q", names(stroke(t, nine("30", "", "set-back 10 cm", "holds litter set-back 15 cm"))))
	assert.Equal(t, "top", names(stroke(t, nine("30", "", "set-back 10 cm", "holds litter set-back 60 cm"))))
}

func TestLongestStart(t *testing.T) {
	// The block comes down to the tractor, and the tractor to the drum: 20 − 3·rise = 0.
	s := stroke(t, strings.Replace(sixToOne, "hitch grab at 0 m", "hitch grab at 1 m", 1))
	best := s.LongestStart()
	require.NotNil(t, best)
	assert.Equal(t, "20/3", best.Rise.String())
	require.Len(t, best.Starts, 2)
	for _, start := range best.Starts {
		assert.Zero(t, start.At.Sign(), start.Part.Name)
	}
	assert.Equal(t, "4", s.Together.Rise.String(), "to run out together gives a shorter stroke")
	assert.Nil(t, stroke(t, three("", "", "0")).LongestStart())
	assert.Nil(t, stroke(t, strings.Replace(three("", "", "6"), "holds litter", "", 1)).LongestStart())
	only := stroke(t, strings.Replace(sixToOne, "block at 11 m", "block at 1 m", 1)).LongestStart()
	require.Len(t, only.Starts, 1, "the tractor stays where it is")
	assert.Equal(t, "block", only.Starts[0].Part.Name)
}
