package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTeamsThatOpposeEachOther(t *testing.T) {
	guided := func(guides, ropes string) string {
		return drawn() + guides + ropes
	}
	say := func(text string) string { return says(t, text, opposedTeams) }
	one := "error: team raises litter at 3:1 only if guide gives rope: while guide holds still, long is fast between top and team"
	assert.Equal(t, one, say(guided("hauler guide people 1\n", "rope tag\nreeve tag: litter \\ guide\n")))
	assert.Equal(t, "error: team raises litter at 3:1 only if left and right give rope: while left and right hold still, long is fast between top and team",
		say(guided("hauler left\nhauler right\n", "rope a\nrope b\nreeve a: litter \\ left\nreeve b: litter \\ right\n")))
	assert.Equal(t, one, say(guided("hauler guide\nhauler aside\n", "rope tag\nrope b\nreeve tag: litter \\ guide\nreeve b: litter (angle 90 deg) \\ aside\n")),
		"who pulls straight aside need not give any")
	assert.Empty(t, say(guided("hauler guide\n", "rope tag\nreeve tag: litter / guide\n")), "from above the line goes slack")
	assert.Empty(t, say(guided("tender guide\n", "rope tag\nreeve tag: litter \\ guide\n")))
	assert.Empty(t, say(guided("hauler guide\n", "rope tag\nreeve tag: litter ~ guide\n")), "a slack line holds nothing")
	assert.Empty(t, say(guided("hauler guide\n", "rope tag\npulley low on litter\nreeve tag: head \\ low / guide\n")), "a second tackle helps")
}

// The guides become tenders, who have no number and no pull.
func TestOpposedTeamsAreMadeTenders(t *testing.T) {
	_, mended := fixed(t, drawn()+"hauler guide people 2 pull 200 N at 0 m\nrope tag\nreeve tag: litter \\ guide\n", "opposed-teams")
	assert.Contains(t, mended, "\ntender guide at 0 m\n")
	_, mended = fixed(t, "stock hauler crew pull 200 N\n"+drawn()+"hauler guide crew\nrope tag\nreeve tag: litter \\ guide\n", "opposed-teams")
	assert.Empty(t, mended, "what the crew's model says of tenders is not known")
}

func TestPeopleOnWhatCarriesNoLoad(t *testing.T) {
	say := func(text string) string { return says(t, text, pullsItself) }
	on := func(where string) string { return strings.Replace(drawn(), "hauler team", "hauler team on "+where, 1) }
	assert.Equal(t, "error: team is on runner, which carries no load, and pulls itself along the rope; "+
		"to pull at runner, tie a line to it: reeve strap: runner / team", say(on("runner")))
	assert.Empty(t, say(on("head")), "on the ground")
	assert.Empty(t, say(strings.Replace(on("runner"), "runner on grab", "runner on grab mass 90 kg", 1)), "somebody hangs there")
	text := on("runner") + "rope strap\nrope strap2\nreeve strap: litter / head\nreeve strap2: litter / head\n"
	assert.Contains(t, say(text), "reeve strap3: runner / team")
	assert.Equal(t, "error: team is on grab, which carries no load, and holds no rope; to pull at grab, tie a line to it: reeve strap: grab / team",
		say(strings.NewReplacer("hauler team", "hauler team on grab", `\ runner / team`, `\ tail`, "pulley runner on grab\n", "").Replace(drawn())))
}

// Line ends, comments and other rigs stay as they are.
func TestALineIsTiedForThosePeople(t *testing.T) {
	text := "rig one\r\nanchor head\r\nload litter\r\nhauler team on grab # four\r\npulley top on head holds litter\r\nhitch grab\r\nrope long\r\n" +
		"reeve long: litter / grab / top \\ tail # the end\r\nrig two\r\nanchor head\r\nload crate\r\nrope strap\r\nreeve strap: crate / head\r\n"
	d, mended := fixed(t, text, "pulls-itself")
	assert.Equal(t, "it is 1:1", d.Fixes[0].Gives)
	want := strings.Replace(text, "hauler team on grab", "hauler team", 1)
	want = strings.Replace(want, "# the end\r\n", "# the end\r\nrope strap\r\nreeve strap: grab / team\r\n", 1)
	assert.Equal(t, want, mended)
}

func TestLinesBetweenFixedParts(t *testing.T) {
	say := func(more string) string { return says(t, drawn()+more, tiedBetweenFixed) }
	const sling = "sling strop\n"
	assert.Equal(t, `error: strop is tied between head and top, which are both fixed: it never carries anything; without "on head" top hangs on it`,
		say(sling+"reeve strop: head \\ top\n"))
	assert.Equal(t, "error: strop is tied between tree and other, which are both fixed: it never carries anything",
		say("anchor tree\nanchor other\n"+sling+"reeve strop: tree / other\n"))
	assert.Equal(t, "error: strop touches only what is fixed, from tree to other: it never carries anything",
		say("anchor tree\nanchor other\nedge lip\n"+sling+"reeve strop: tree / lip / other\n"))
	assert.Equal(t, "error: strop touches only what is fixed, from eye to top: it never carries anything",
		say("ring eye on head\n"+sling+"reeve strop: eye / top \\ loop\n"))
	assert.Equal(t, "error: strop is tied between tree and other, which are both fixed: it never carries anything",
		say("anchor tree\nanchor other\n"+sling+"reeve strop: tree ~ other\n"))
	assert.Empty(t, say("anchor tree\n"+sling+"reeve strop: tree / head\n"), "without the head it holds")
	assert.Empty(t, say("anchor tree\n"+sling+"reeve strop: tree ~ head\n"), "and slack it catches")
	assert.Empty(t, say("anchor tree\n"+sling+"reeve strop: tree \\ tail\n"), "a tail is not fixed")
	assert.Empty(t, say("anchor tree\ntender minder\n"+sling+"reeve strop: tree \\ minder\n"))
}

func TestInheritedPositionsAgainstStrokes(t *testing.T) {
	say := func(text string) string { return says(t, text, strokeAgainstPosition) }
	text := drawn("GRAB")
	below := func(at string) string { return strings.Replace(text, "runner on grab", "runner on grab at "+at, 1) }
	assert.Empty(t, say(below("6 m")))
	assert.Empty(t, say(below("9.9 m")))
	assert.Equal(t, "warning: grab (runner at 10.5 m) lies above top (head at 10 m), yet the stroke leads up\n"+
		"warning: top (head at 10 m) lies below runner at 10.5 m, yet the stroke leads down", say(below("10.5 m")))
	assert.Empty(t, say(below("9 to 12 m")), "it may lie below")
	assert.Empty(t, say(strings.Replace(below("9 m"), "at 0 m", "", 1)))
}
