package rules

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/diag"
	"fairlead/lint"
)

// haul is a three to one whose figures the tests vary.
const haul = `%TOP%
anchor head at %HEAD%
load litter mass 180 kg %LOAD%
hauler team people 3
pulley top on head holds litter %CAPTURE%
hitch grab %GRAB%
pulley runner on grab
rope long %LONG%
reeve long: litter / grab / top \ runner / team
`

// drawn gives the rig with what is told, as "GRAB at 6 m", and the rest usual.
func drawn(told ...string) string {
	said := map[string]string{"TOP": "", "HEAD": "10 m", "LOAD": "at 0 m", "CAPTURE": "", "GRAB": "at 6 m", "LONG": ""}
	for _, s := range told {
		word, rest, _ := strings.Cut(s, " ")
		said[word] = rest
	}
	text := haul
	for word, s := range said {
		text = strings.ReplaceAll(text, "%"+word+"%", s)
	}
	return strings.TrimLeft(text, "\n")
}

// says gives the messages of some rules on a rig, and fails if any other speaks but those
// about what catches the load.
func says(t *testing.T, text string, rules ...*lint.Rule) string {
	t.Helper()
	f, found := examined(text)
	var list []string
	for _, d := range found {
		is := func(r *lint.Rule) bool { return r.Name == d.Rule }
		known := slices.ContainsFunc(rules, is)
		if !known && slices.ContainsFunc(catches, is) {
			continue
		}
		assert.True(t, known, "%s\nin:\n%s", printed(f, []diag.Diagnostic{d}), text)
		list = append(list, d.Severity.String()+": "+d.Message)
	}
	return strings.Join(list, "\n")
}

func TestRopeTooShort(t *testing.T) {
	// Six metres to the hitch, four to the head, four down to the runner.
	for _, c := range []struct{ name, text, want string }{
		{"just long enough", drawn("LONG length 14 m"), ""},
		{"a centimetre too short", drawn("LONG length 13.99 m"), "warning: long lacks 0.01 m: its strands take 14 m, and it has 13.99 m"},
		{"in feet", drawn("LONG length 40 ft"), "warning: long lacks 1.81 m: its strands take 14 m, and it has 12.2 m"},
		{"printed in feet", drawn("TOP units lbf ft", "LONG length 40 ft"), "warning: long lacks 5.93 ft: its strands take 45.9 ft, and it has 40 ft"},
		{"a range that reaches", drawn("LONG length 12 to 14 m"), ""},
		{"a range that does not", drawn("LONG length 12 to 13 m"), "warning: long lacks 1 m: its strands take 14 m, and it has 13 m"},
		{"no length", drawn(), ""},
		{"no position", strings.ReplaceAll(drawn("LONG length 1 m"), "at 6 m", ""), ""},
		{"no position at all", strings.NewReplacer("at 6 m", "", "at 10 m", "", "at 0 m", "").Replace(drawn("LONG length 1 m")), ""},
		{"the team has a place", strings.Replace(drawn("LONG length 20 m"), "people 3", "people 3 at 14 m", 1),
			"warning: long lacks 2 m: its strands take 22 m, and it has 20 m"},
		{"slack counts from end to end", drawn("LONG length 40 m") + `anchor tree at 20 m
rope back length 9 m
reeve back: tree ~ head
`, "warning: back lacks 1 m: its strands take 10 m, and it has 9 m"},
		{"a closed line", drawn() + `pulley low on litter
pulley high on head
rope belt length 19 m
reeve belt: low / high \ loop
`, "warning: belt lacks 1 m: its strands take 20 m, and it has 19 m"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, says(t, c.text, ropeTooShort)) })
	}
}

// What a tender gives out while the load rises is rope that must be there.
func TestRopeThatIsPaidOut(t *testing.T) {
	text := func(length string) string {
		return drawn("LOAD at 2 m raise 6 m", "HEAD 12 m", "GRAB at 8 m") + `tender minder at 0 m
rope tag length ` + length + `
reeve tag: litter \ minder
`
	}
	assert.Empty(t, says(t, text("8 m"), ropeTooShort))
	assert.Equal(t, "warning: tag lacks 1 m: its strands take 2 m and the haul draws in 6 m more, and it has 7 m",
		says(t, text("7 m"), ropeTooShort))
}

func TestRaiseThatEnds(t *testing.T) {
	free := func(text string) string { return strings.Replace(text, "holds litter", "", 1) }
	for _, c := range []struct{ name, text, want string }{
		{"reset as often as it takes", drawn("LOAD at 0 m raise 10 m"), ""},
		{"no height asked for", free(drawn()), ""},
		{"as high as one stroke", free(drawn("LOAD at 0 m raise 4 m")), ""},
		{"a little higher", free(drawn("LOAD at 0 m raise 4.01 m")),
			"error: grab meets top after 4 m of the 4.01 m that litter is to be raised, and cannot be reset: hands off, litter falls"},
		{"in feet", drawn("TOP units lbf ft", "LOAD at 0 m raise 40 ft"),
			"error: litter is up after 32.8 ft of the 40 ft that it is to be raised: litter meets top"},
		{"a length of the load", drawn("LOAD at 0 m raise 9 m length 2 m"),
			"error: litter is up after 8 m of the 9 m that it is to be raised: litter meets top"},
		{"no position", strings.ReplaceAll(drawn("LOAD at 0 m raise 20 m"), "at 6 m", ""), ""},
		{"on a rig that does not raise", strings.Replace(drawn("LOAD at 0 m raise 20 m"), `litter / grab / top \ runner / team`, `litter / top \ tail`, 1) +
			"accept unused-part because \"Laid out.\"\n", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := says(t, c.text, cannotReset, twoBlocked, knotMeetsBend, noCapture)
			var of []string
			for _, line := range strings.Split(found, "\n") {
				if !strings.HasPrefix(line, "advice") {
					of = append(of, line)
				}
			}
			assert.Equal(t, c.want, strings.Join(of, "\n"))
		})
	}
}

func TestKnotsAndBlocksThatMeet(t *testing.T) {
	knot := strings.Replace(drawn("LOAD at 0 m raise 9 m", "GRAB at 2 m"), "litter / grab / top", "litter / grab / joint / top", 1) +
		"knot joint at 4 m\n"
	assert.Equal(t, "error: joint is drawn up to top after 6 m of the 9 m that litter is to be raised, and cannot pass it",
		says(t, knot, knotMeetsBend))
	// A knot on the load is the load: it is up.
	on := strings.NewReplacer("litter / grab", "bowline / grab", "holds litter", "holds").Replace(drawn("LOAD at 0 m raise 11 m"))
	assert.Equal(t, "error: litter is up after 10 m of the 11 m that it is to be raised: bowline meets top",
		says(t, on+"knot bowline on litter\n", cannotReset))
	tackle := `anchor head at 6 m
load frame raise %RAISE% at 0 m
hauler team
pulley upper on head holds head
pulley lower on frame at 1 m
rope fall
reeve fall: head \ lower / upper \ lower / team
`
	assert.Empty(t, says(t, strings.ReplaceAll(tackle, "%RAISE%", "5 m"), twoBlocked))
	assert.Equal(t, "error: lower meets upper after 5 m of the 5.5 m that frame is to be raised, and no reset draws the two blocks apart",
		says(t, strings.ReplaceAll(tackle, "%RAISE%", "5.5 m"), twoBlocked))
}

func TestStrokesThatWinNothing(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"an inch is a stroke", drawn("GRAB at 9.97 m"), ""},
		{"none", drawn("GRAB at 10 m"), "warning: grab meets top from the start, and a stroke wins nothing"},
		{"none, and a height is asked for", drawn("GRAB at 10 m", "LOAD at 0 m raise 3 m"),
			"error: grab meets top from the start, and litter never comes to 3 m"},
		{"overlapping", drawn("GRAB at 9.9 m length 30 cm"), "warning: grab meets top from the start, and a stroke wins nothing"},
		{"before the hitch holds", drawn("GRAB at 9.9 m set-back 10 cm"),
			"warning: grab meets top before grab holds, and a stroke wins nothing"},
		{"what a stroke wins is given back", drawn("GRAB at 9 m", "CAPTURE set-back 1 m"),
			"warning: grab meets top after 1 m, and top gives back 1 m at each reset, and a stroke wins nothing"},
		{"but no reset is needed", drawn("GRAB at 9 m", "CAPTURE set-back 1 m", "LOAD at 0 m raise 1 m"),
			"advice: top gives back 1 m of each stroke, 100 % of the 1 m that litter rises until grab meets top"},
		{"the house is content", drawn("TOP require stroke 4 m"), ""},
		{"the house is strict", drawn("TOP require stroke over 4 m"), "warning: grab meets top after 4 m: a stroke raises litter less than 4 m"},
		{"the house wants more", drawn("TOP require stroke 15 ft"), "warning: grab meets top after 4 m: a stroke raises litter less than 15 ft"},
		{"but one stroke is all", drawn("TOP require stroke 5 m", "LOAD at 0 m raise 4 m"), ""},
		{"resets", drawn("TOP require resets 2", "LOAD at 0 m raise 10 m"), ""},
		{"too many resets", drawn("TOP require resets under 2", "LOAD at 0 m raise 10 m"),
			"warning: grab meets top after 4 m: raising litter by 10 m takes 2 resets, more than 2"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, says(t, c.text, strokeTooShort, setback)) })
	}
}

func TestSetBackThresholds(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"just allowed", drawn("CAPTURE set-back 120 cm"), ""},
		{"just not", drawn("CAPTURE set-back 121 cm"),
			"advice: top gives back 1.21 m of each stroke, 30.2 % of the 4 m that litter rises until grab meets top"},
		{"by the hitch that pulls", drawn("GRAB at 8 m set-back 70 cm"),
			"advice: grab gives back 0.7 m of each stroke, 35 % of the 2 m that litter rises until grab meets top"},
		{"by both", drawn("GRAB at 8 m set-back 40 cm", "CAPTURE set-back 30 cm"),
			"advice: top and grab give back 0.7 m of each stroke, 35 % of the 2 m that litter rises until grab meets top"},
		{"the house allows more", drawn("TOP require set-back 40 %", "GRAB at 8 m set-back 70 cm"), ""},
		{"nothing given", drawn("GRAB at 8 m"), ""},
		{"no positions", strings.NewReplacer("at 6 m", "", "at 10 m", "", "at 0 m", "").Replace(drawn("CAPTURE set-back 5 m")), ""},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, says(t, c.text, setback)) })
	}
}

func TestStagesThatRunOut(t *testing.T) {
	text := func(far, raise string) string {
		return `anchor head at 10 m
anchor far at ` + far + `
load litter ` + raise + ` at 0 m
hauler team
pulley top on head holds litter
pulley q on far
hitch grab at 0 m
pulley runner on grab
hitch grab2 at 5 m
pulley runner2 on grab2
rope long
reeve long: litter / grab / top \ runner / grab2 / q \ runner2 / team
`
	}
	assert.Empty(t, says(t, text("20 m", ""), stageRunsOutFirst), "5 m of 10 m are half")
	assert.Equal(t, "advice: grab2 meets q when litter has risen 4.97 m, 49.7 % of the 10 m that the next stage lasts, until grab meets top; "+
		"with grab2 at 0 m a stroke raises it 6.63 m", says(t, text("19.9 m", ""), stageRunsOutFirst))
	assert.Empty(t, says(t, text("19.9 m", "raise 9 m"), stageRunsOutFirst), "the raise is over before the next stage is")
	assert.Empty(t, says(t, "require stage 40 %\n"+text("19.9 m", ""), stageRunsOutFirst))
	assert.Empty(t, says(t, drawn(), stageRunsOutFirst), "a single stage")
}

func TestTractorsAboveTheirCaptures(t *testing.T) {
	text := `%TOP%anchor head at 10 m
load litter at 0 m %LOAD%
hauler team
pulley top on head
hitch catch on head at 8 m
hitch grab at 9 m
pulley runner on grab
rope long
reeve long: litter / catch / grab / top \ runner / team
`
	say := func(top, load string) string {
		return says(t, strings.NewReplacer("%TOP%", top, "%LOAD%", load).Replace(text), tractorAboveCapture)
	}
	finding := "warning: grab pulls between catch and top: at a reset it can be sent no lower than catch, and a stroke raises litter 2 m at most"
	assert.Equal(t, finding, say("", ""))
	assert.Equal(t, finding, say("", "raise 2.5 m"))
	assert.Empty(t, say("", "raise 2 m"), "one such stroke is enough")
	assert.Empty(t, say("require stroke 1 m\n", "raise 5 m"), "and for the house")
}

func TestSheaves(t *testing.T) {
	text := `%STOCK%anchor head
load frame mass 240 kg
hauler team people 3
pulley upper %UPPER%
pulley lower on frame %LOWER%
rope fall
reeve fall: head \ lower / upper \ lower / upper \ lower / team
`
	say := func(stock, upper, lower string) string {
		f, found := examined(strings.NewReplacer("%STOCK%", stock, "%UPPER%", upper, "%LOWER%", lower).Replace(text))
		return strings.TrimSpace(printed(f, only("more-bends-than-sheaves", found)))
	}
	assert.Empty(t, say("", "on head", ""), "as many as are used")
	assert.Empty(t, say("", "on head sheaves 2", "sheaves 3"))
	assert.Empty(t, say("", "on head", "sheaves 2 to 3"), "it may have three")
	assert.Equal(t, "yard.rig:7:52: warning: lower has 2 sheaves, but rope bends round it 3 times [more-bends-than-sheaves]", say("", "on head", "sheaves 2"))
	assert.Equal(t, "yard.rig:7:52: warning: lower has 1 to 2 sheaves, but rope bends round it 3 times [more-bends-than-sheaves]", say("", "on head", "sheaves 1 to 2"))
	assert.Equal(t, "yard.rig:8:44: warning: upper, single, has 1 sheave, but rope bends round it twice [more-bends-than-sheaves]",
		say("stock pulley single sheaves 1\n", "single on head", ""))
}
