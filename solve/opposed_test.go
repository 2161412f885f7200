package solve_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
)

const withGuide = `
anchor head
load litter
hauler team
hauler guide
pulley top on head holds litter
hitch grab
pulley runner on grab
rope long
rope tag
reeve long: litter / grab / top \ runner / team
reeve tag: litter %GUIDE%
`

func opposed(t *testing.T, text string) []solve.Opposed {
	t.Helper()
	return solved(t, text).Opposed()
}

func TestGuideWhoHoldsStillOpposesTheTeam(t *testing.T) {
	text := strings.ReplaceAll(withGuide, "%GUIDE%", `\ guide`)
	assert.Equal(t, solve.Jammed, solved(t, text).Status)
	list := opposed(t, text)
	require.Len(t, list, 1, "the guide raises nothing however much rope the team gives")
	assert.Equal(t, "team", list[0].Haul.Hauler.Name)
	require.Len(t, list[0].By, 1)
	assert.Equal(t, "guide", list[0].By[0].Name)
	assert.Equal(t, "3", list[0].Ideal.String())
}

func TestWhoNeedNotGiveRopeOpposesNobody(t *testing.T) {
	assert.Empty(t, opposed(t, strings.ReplaceAll(withGuide, "%GUIDE%", "/ guide")), "a line from above goes slack")
	assert.Empty(t, opposed(t, strings.ReplaceAll(withGuide, "%GUIDE%", `(angle 90 deg) \ guide`)), "a line from aside is not pulled at")
	assert.Empty(t, opposed(t, strings.ReplaceAll(strings.ReplaceAll(withGuide, "%GUIDE%", `\ guide`), "hauler guide", "tender guide")))
	third := strings.ReplaceAll(withGuide, "%GUIDE%", `\ guide`) + "hauler other\nrope spare\nreeve spare: litter / other\n"
	list := opposed(t, third)
	require.Len(t, list, 2)
	for _, o := range list {
		require.Len(t, o.By, 1, "of the two others only the guide is needed")
		assert.Equal(t, "guide", o.By[0].Name)
	}
}

func TestTwoGuidesBothGiveRope(t *testing.T) {
	text := strings.ReplaceAll(withGuide, "%GUIDE%", `\ guide`) + "hauler guide2\nrope tag2\nreeve tag2: litter \\ guide2\n"
	list := opposed(t, text)
	require.Len(t, list, 1)
	assert.Len(t, list[0].By, 2)
}

func TestGivingRopeDoesNotMendWhatRaisesNothing(t *testing.T) {
	text := strings.ReplaceAll(withGuide, "%GUIDE%", `\ guide`)
	text = strings.ReplaceAll(text, `litter / grab / top \ runner`, `litter / top \ grab \ runner`)
	assert.Empty(t, opposed(t, text))
}
