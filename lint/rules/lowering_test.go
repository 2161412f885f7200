package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
)

// littered is a three to one with people on it, and what is said of its capture.
func littered(capture string) string {
	return `anchor head
load litter mass 180 kg people 2
hauler team people 3
pulley top on head ` + capture + `
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team
`
}

// belayed adds a belay to it, and what is said of its brake.
func belayed(capture, brake string) string {
	return littered(capture) + "anchor tree\ntender belayer\ndevice brake on tree " + brake + "\nrope belay\nreeve belay: litter / brake \\ belayer\n"
}

func TestCannotBeLowered(t *testing.T) {
	const top = "litter cannot be lowered: top holds and cannot be opened under load"
	empty := strings.NewReplacer(" people 2", "")
	for _, c := range []struct {
		name, text, want string
	}{
		{"people on it", littered("holds litter"), top},
		{"nobody on it", empty.Replace(littered("holds litter")), ""},
		{"it can be opened", littered("holds litter releasable"), ""},
		{"nothing holds", littered(""), ""},
		{"a belay that cannot be opened either", belayed("holds litter", "holds litter"), top},
		{"a belay that can", belayed("holds litter", "holds litter releasable"), ""},
		{"a hitch on the belay that holds before the brake",
			strings.Replace(belayed("holds litter", "holds litter releasable"), `litter / brake \ belayer`, `litter / catch / brake \ belayer`, 1) + "hitch catch on tree\n", top},
		{"nobody on it, but something that can be opened", empty.Replace(littered("holds litter") + "hitch spare on head releasable\ncord c\nreeve c: litter / spare \\ tail\n"), ""},
		{"a hauler on it", strings.Replace(empty.Replace(littered("holds litter")), "hauler team", "hauler team on litter", 1), top},
		{"a claim that says it", littered("holds litter") + "expect lower hand under 1 kN\n", ""},
		{"a claim about something else", littered("holds litter") + "expect held\n", top},
	} {
		var want []string
		if c.want != "" {
			want = []string{c.want}
		}
		assert.Equal(t, want, said("cannot-be-lowered", c.text), c.name)
	}
	f, found := examined(littered("holds litter"))
	d := of("cannot-be-lowered", found)
	require.NotNil(t, d, printed(f, found))
	assert.Equal(t, diag.Advice, d.Severity)
	assert.True(t, d.Named("top") && d.Named("litter"))
	assert.Len(t, said("expectation-failed", littered("holds litter")+"expect lower hand under 1 kN\n"), 1)

	// two teams whose captures both hold
	two := `anchor head
anchor tree
load platform mass 150 kg people 1
hauler red
hauler blue
pulley top on head holds platform
pulley side on tree holds platform
rope r
rope b
reeve r: platform / top \ red
reeve b: platform / side \ blue
`
	assert.Len(t, said("cannot-be-lowered", two), 1)
	assert.Empty(t, said("cannot-be-lowered", strings.ReplaceAll(two, "holds platform", "holds platform releasable")))
}

// hand is a load of 100 kg on a device that brakes with an efficiency of so much when it
// lowers.
func hand(house, hauler, lowering string) string {
	return house + "anchor ledge\nload crate mass 100 kg\nhauler brakeman " + hauler + "\ndevice brake on ledge " + lowering +
		" holds crate releasable\nrope line\nreeve line: crate / brake \\ brakeman\n"
}

func TestBrakeHandTooWeak(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"more than one person may pull", hand("", "people 1", "efficiency 50 % lowering 35 %"),
			"brakeman must hold 0.343 kN to lower crate, and can hold 0.27 kN: one person with 0.27 kN"},
		{"two of them hold it", hand("", "people 2", "efficiency 50 % lowering 35 %"), ""},
		{"one or two: the fewer count", hand("", "people 1 to 2", "efficiency 50 % lowering 35 %"),
			"brakeman must hold 0.343 kN to lower crate, and can hold 0.27 kN: one person with 0.27 kN"},
		{"exactly what they can", hand("", "people 1 pull 343.23275 N", "efficiency 50 % lowering 35 %"), ""},
		{"a little less", hand("", "people 1 pull 343 N", "efficiency 50 % lowering 35 %"),
			"brakeman must hold 0.343 kN to lower crate, and can hold 0.343 kN: one person with 0.343 kN"},
		{"their own pull counts", hand("", "people 3 pull 100 to 200 N", "efficiency 50 % lowering 35 %"),
			"brakeman must hold 0.343 kN to lower crate, and can hold 0.3 kN: 3 people with 0.1 kN each"},
		{"nobody says how many", hand("", "", "efficiency 50 % lowering 35 %"), ""},
		{"friction is unknown", hand("", "people 1", ""), ""},
		{"the house asks all the same", hand("require lower hand under 300 N\n", "people 1", ""),
			"brakeman must hold 0.981 kN to lower crate without any friction; the house allows under 300 N"},
		{"some of it is unknown", strings.Replace(hand("require lower hand under 300 N\n", "people 1", ""), "crate / brake", "crate / guide (angle 120 deg) / brake", 1) +
			"pulley guide on ledge efficiency 90 %\n", ""},
		{"a range counts by its worse end", hand("", "people 1", "efficiency 50 % lowering 20 to 30 %"),
			"brakeman must hold 0.294 kN to lower crate, and can hold 0.27 kN: one person with 0.27 kN"},
		{"the house says how much", hand("require lower hand under 300 N\n", "people 9", "efficiency 50 % lowering 35 %"),
			"brakeman must hold 0.343 kN to lower crate; the house allows under 300 N"},
		{"and allows it", hand("require lower hand 350 N\n", "people 1", "efficiency 50 % lowering 35 %"), ""},
		{"in pounds", "units lbf\n" + hand("require lower hand under 60 lbf\n", "", "efficiency 50 % lowering 35 %"),
			"brakeman must hold 77.2 lbf to lower crate; the house allows under 60 lbf"},
		{"by the house's own person", hand("require pull 400 N per person\n", "people 1", "efficiency 50 % lowering 35 %"), ""},
	} {
		var want []string
		if c.want != "" {
			want = []string{c.want}
		}
		assert.Equal(t, want, said("brake-hand-too-weak", c.text), c.name)
	}
	assert.Equal(t, diag.Advice, severityOf(t, "brake-hand-too-weak", hand("", "people 1", "efficiency 50 % lowering 35 %")))
	assert.Equal(t, diag.Warning, severityOf(t, "brake-hand-too-weak",
		strings.Replace(hand("", "people 1", "efficiency 50 % lowering 35 %"), "100 kg", "100 kg people 1", 1)))
	assert.Empty(t, said("brake-hand-too-weak", strings.Replace(hand("", "people 1", "efficiency 50 % lowering 35 %"), " mass 100 kg", "", 1)))
}

func TestHaulerInFallLine(t *testing.T) {
	rig := func(litter, team string) string {
		return "anchor head at 20 m\nload litter mass 180 kg " + litter + "\nhauler team " + team +
			"\npulley top on head holds litter\nhitch grab at 12 m\npulley runner on grab\npulley corner on head\nrope long\n" +
			"reeve long: litter / grab / top \\ runner / corner (angle 130 deg) \\ team\n"
	}
	for _, c := range []struct{ name, text, want string }{
		{"as high as the head", rig("at 2 m", "at 20 m"), ""},
		{"below from the start", rig("at 2 m", "at 1 m"), "team at 1 m is below litter, which gets to 10 m: litter falls if head, top or long is lost"},
		{"below after one stroke of 8 m", rig("at 2 m", "at 9.9 m"), "team at 9.9 m is below litter, which gets to 10 m: litter falls if head, top or long is lost"},
		{"where it gets to", rig("at 2 m", "at 10 m"), ""},
		{"below the height that is asked for", rig("at 2 m raise 12 m", "at 13 m"), "team at 13 m is below litter, which gets to 14 m: litter falls if head, top or long is lost"},
		{"without a position", rig("at 2 m", ""), ""},
		{"a load without a position", rig("", "at 1 m"), ""},
		{"on the litter", rig("at 2 m", "on litter"), ""},
		{"in feet", "units ft\n" + rig("at 5 ft", "at 1 ft"), "team at 1 ft is below litter, which gets to 31.2 ft: litter falls if head, top or long is lost"},
		{"with a belay", rig("at 2 m", "at 1 m") + "anchor tree at 20 m\ntender belayer\ndevice brake on tree holds litter\nrope belay\nreeve belay: litter / brake \\ belayer\n", ""},
		{"nothing holds", strings.Replace(rig("at 2 m", "at 1 m"), " holds litter", "", 1), ""},
	} {
		var want []string
		if c.want != "" {
			want = []string{c.want}
		}
		assert.Equal(t, want, said("hauler-in-fall-line", c.text), c.name)
	}
	still := "anchor head at 20 m\nload litter mass 9 kg at 8 m\ntender minder at 1 m\ndevice plate on head holds litter\nrope long\nreeve long: litter / plate \\ minder\n"
	assert.Equal(t, []string{"minder at 1 m is below litter at 8 m: litter falls if head, plate or long is lost"}, said("hauler-in-fall-line", still))
	f, found := examined(still)
	d := of("hauler-in-fall-line", found)
	require.NotNil(t, d, printed(f, found))
	assert.Equal(t, "at 1 m", d.Place.Text())
}

func TestLooseEnd(t *testing.T) {
	rig := func(safety, end string) string {
		return `anchor head at 20 m
anchor tree at 20 m
load tub mass 120 kg raise 12 m at 0 m
counterweight box mass 60 kg at 18 m
hauler team people 2
tender minder
pulley wheel on head holds tub
device plate on tree
knot stop
rope main
rope hand-line
rope safety ` + safety + `
reeve main: tub / wheel \ box
reeve hand-line: box \ team
reeve safety: box / plate \ ` + end + "\n"
	}
	beyond := func(way string) []string {
		return []string{"safety runs out through plate: " + way + " lie beyond it, and the raise takes 12 m; its end has no stopper and nothing is tied there"}
	}
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"8 m for 12 m", rig("length 10 m", "minder"), beyond("8 m")},
		{"a loose end", rig("length 10 m", "tail"), beyond("8 m")},
		{"almost enough", rig("length 13.9 m", "minder"), beyond("11.9 m")},
		{"enough", rig("length 14 m", "minder"), nil},
		{"a stopper", rig("length 10 m", "stop"), nil},
		{"no length", rig("", "minder"), nil},
		{"too short as it lies", rig("length 1 m", "minder"), nil},
		{"nothing beyond the plate", rig("length 2 m", "minder"), beyond("0 m")},
		{"no position", strings.Replace(rig("length 10 m", "minder"), " at 18 m", "", 1), nil},
	} {
		assert.Equal(t, c.want, said("loose-end", c.text), c.name)
	}
	_, found := examined(rig("length 10 m", "tail"))
	d := of("loose-end", found)
	require.NotNil(t, d)
	assert.Equal(t, "safety", d.Subject)
	assert.Equal(t, "tail", d.Place.Text())
}

func TestBackupLoaded(t *testing.T) {
	rig := func(brake, belay string) string {
		return `anchor head
anchor rear
load litter mass 200 kg
hauler team
tender belayer
pulley runner on litter
pulley top on head holds head
hitch grab
pulley low on grab
device brake on ` + brake + `
rope main
rope jig
rope belay
reeve main: head \ runner / grab / top \ tail
reeve jig: rear \ low / team
reeve belay: ` + belay + "\n"
	}
	assert.Equal(t, []string{"belay carries 1.96 kN at brake while team hauls, though belayer only tends it"},
		said("backup-loaded", rig("grab holds litter", `litter / brake \ belayer`)))
	assert.Equal(t, []string{"belay carries 1.96 kN at brake while team hauls, though belayer only tends it"},
		said("backup-loaded", rig("grab holds litter", `belayer / brake (holds litter) \ litter`)), "written from the other end")
	assert.Empty(t, said("backup-loaded", rig("rear holds litter", `litter / brake \ belayer`)), "it is taken in")
	assert.Empty(t, said("backup-loaded", rig("grab", `litter / brake \ belayer`)), "nothing grips it")
	assert.Empty(t, said("backup-loaded", rig("litter holds rear", `rear \ brake / belayer`)), "a line up which the brake goes along")
	assert.Empty(t, said("backup-loaded", belayed("holds litter", "holds litter")))
}

func TestCaptureOffLoad(t *testing.T) {
	const rig = `anchor head
anchor rear
load litter mass 200 kg
hauler team
tender minder
pulley top on head
hitch grab
pulley runner on grab
pulley block
device plate on rear holds block
rope long
rope short
reeve long: litter / grab / top \ block / team
reeve short: block \ runner / plate \ minder
`
	assert.Len(t, said("capture-off-load", rig), 1)
	assert.Empty(t, said("no-capture", rig))
	assert.Empty(t, said("held-only-by-jam", rig))
	assert.Empty(t, said("capture-off-load", strings.Replace(rig, "top on head", "top on head holds litter", 1)))
	bare := strings.Replace(rig, `runner / plate \ minder`, `runner / rear`, 1)
	assert.Empty(t, said("capture-off-load", bare), "nothing holds but hands")
	assert.Len(t, said("held-only-by-jam", bare), 1)
	f, found := examined(rig)
	d := of("capture-off-load", found)
	require.NotNil(t, d, printed(f, found))
	assert.True(t, d.Named("plate") && d.Named("litter") && d.Named("top"))
	require.Len(t, d.Fixes, 1)
	assert.Equal(t, "let top hold: write top (holds)", d.Fixes[0].Title)
}

// What was hidden by a fault is no reason against the fix that mends it, however grave the
// house finds it.
func TestWhatComesToLightIsNoReasonAgainstAFix(t *testing.T) {
	const house = "rule no-backup error\nrule cannot-be-lowered error\n"
	for rule, rig := range map[string]string{
		"no-capture":            littered(""),
		"hitch-on-wrong-strand": strings.Replace(littered(""), `litter / grab / top \ runner`, `litter / top \ grab \ runner`, 1),
	} {
		f, found := examined(house + rig)
		d := of(rule, found)
		require.NotNil(t, d, printed(f, found))
		require.Len(t, d.Fixes, 1, printed(f, found))
		_, left := examined(diag.Apply(f.File, d.Fixes[0].Edits))
		assert.Nil(t, of(rule, left))
	}
}
