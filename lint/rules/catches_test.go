package rules

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

// said gives the messages of a rule in a rig.
func said(rule, text string) []string {
	_, found := examined(text)
	var list []string
	for _, d := range only(rule, found) {
		list = append(list, d.Message)
	}
	return list
}

// bucketLine is a rig that hangs on one line: head, top or line lost, it falls.
const bucketLine = `anchor head
load bucket mass 30 kg
hauler team
pulley top on head holds bucket
rope line
reeve line: bucket / top \ team
`

func severityOf(t *testing.T, rule, text string) diag.Severity {
	t.Helper()
	f, found := examined(text)
	d := of(rule, found)
	require.NotNil(t, d, "%s\n%s", text, printed(f, found))
	return d.Severity
}

// Who hangs on the load or stands below it makes a hazard of what else is advice.
func TestPeopleMakeAWarning(t *testing.T) {
	at := strings.NewReplacer("head\n", "head at 20 m\n", "30 kg", "30 kg at 5 m")
	for _, c := range []struct {
		name, text string
		want       diag.Severity
	}{
		{"nobody", bucketLine, diag.Advice},
		{"people on the load", strings.Replace(bucketLine, "30 kg", "30 kg people 1", 1), diag.Warning},
		{"a range of people on the load", strings.Replace(bucketLine, "30 kg", "30 kg people 1 to 2", 1), diag.Warning},
		{"a hauler on the load", strings.Replace(bucketLine, "hauler team", "hauler team on bucket", 1), diag.Warning},
		{"a tender on the load", bucketLine + "tender mate on bucket\nrope tag\nreeve tag: bucket \\ mate\n", diag.Warning},
		{"a hauler above", strings.Replace(at.Replace(bucketLine), "team\n", "team at 21 m\n", 1), diag.Advice},
		{"a hauler at the same height", strings.Replace(at.Replace(bucketLine), "team\n", "team at 20 m\n", 1), diag.Advice},
		{"a hauler below", strings.Replace(at.Replace(bucketLine), "team\n", "team at 4.9 m\n", 1), diag.Warning},
		{"a hauler who will be below", strings.Replace(at.Replace(bucketLine), "team\n", "team at 19.9 m\n", 1), diag.Warning},
		{"a hauler somewhere", at.Replace(bucketLine), diag.Advice},
		{"a load somewhere", strings.Replace(bucketLine, "team\n", "team at 4 m\n", 1), diag.Advice},
	} {
		assert.Equal(t, c.want, severityOf(t, "no-backup", c.text), c.name)
	}
	free := strings.Replace(bucketLine, " holds bucket", "", 1)
	assert.Equal(t, diag.Advice, severityOf(t, "no-capture", free))
	assert.Equal(t, diag.Warning, severityOf(t, "no-capture", strings.Replace(at.Replace(free), "team\n", "team at 1 m\n", 1)))
}

// Each acceptance takes its part out and leaves the others.
func TestAcceptedPartsOfNoBackup(t *testing.T) {
	accept := func(parts ...string) string {
		text := bucketLine
		for _, p := range parts {
			text += "accept no-backup at " + p + " because \"x\"\n"
		}
		return text
	}
	for _, c := range []struct {
		text string
		want []string
	}{
		{accept(), []string{"bucket falls if head, top or line is lost: nothing else holds it"}},
		{accept("head"), []string{"bucket falls if top or line is lost: nothing else holds it"}},
		{accept("head", "line"), []string{"bucket falls if top is lost: nothing else holds it"}},
		{accept("head", "line", "top"), nil},
		{accept("bucket"), nil},
		{bucketLine + "accept no-backup because \"x\"\n", nil},
		{bucketLine + "expect finding no-backup at line\n", nil},
		{bucketLine + "expect finding no-backup\n", nil},
		{accept("head") + "expect finding no-backup at top\n", nil},
	} {
		assert.Equal(t, c.want, said("no-backup", c.text), c.text)
		assert.Empty(t, said("acceptance-unused", c.text), c.text)
		assert.Empty(t, said("expectation-unmet-finding", c.text), c.text)
	}
	assert.NotEmpty(t, said("acceptance-unused", accept("team")))
	assert.NotEmpty(t, said("acceptance-unused", "anchor tree\n"+accept("tree")))

	// one of two loads is accepted: what the other falls by is still said
	two := bucketLine + "load lamp mass 4 kg\nanchor beam\ncord pendant\nreeve pendant: lamp / beam\n"
	assert.Equal(t, []string{"bucket falls if head, top or line is lost; lamp falls if beam or pendant is lost: nothing else holds them"},
		said("no-backup", two))
	assert.Equal(t, []string{"bucket falls if head, top or line is lost: nothing else holds it"},
		said("no-backup", two+"accept no-backup at lamp because \"x\"\n"))
	_, found := drawnShort(two)
	assert.Empty(t, only("no-backup", found), "the house turned it off")
}

// The anchor that carries most comes first, whatever the order of the file.
func TestTheMainAnchorComesFirst(t *testing.T) {
	got := said("no-backup", `anchor beam
anchor head
load lamp mass 4 kg
load bucket mass 30 kg
hauler team
pulley top on head holds bucket
cord pendant
rope line
reeve pendant: lamp / beam
reeve line: bucket / top \ team
`)
	assert.Equal(t, []string{"bucket falls if head, top or line is lost; lamp falls if beam or pendant is lost: nothing else holds them"}, got)
	f, found := examined(bucketLine)
	d := of("no-backup", found)
	require.NotNil(t, d, printed(f, found))
	assert.Equal(t, "head", d.Place.Text())
	assert.Equal(t, "bucket", d.Subject)
	assert.Equal(t, []string{"head", "top", "line"}, d.Also)
}

// An edge is the ground's; a load that the ground keeps does not fall.
func TestWhatIsNotLost(t *testing.T) {
	assert.Equal(t, []string{"crate drops until lip meets top if head is lost; crate falls if top or line is lost: nothing else holds it"}, said("no-backup", `anchor head
edge lip angle 120 deg
load crate mass 30 kg
hauler team
pulley top on head holds crate
rope line
reeve line: crate / lip / top \ team
`))
	sledge := func(friction string) string {
		return "anchor head\nload sledge mass 80 kg slope 15 deg friction " + friction + "\nhauler team\npulley runner on sledge holds head\nrope long\nreeve long: head \\ runner / team\n"
	}
	assert.Empty(t, said("no-backup", sledge("0.5")))
	assert.NotEmpty(t, said("no-backup", sledge("0.1")))
}

// Of a rig that nothing holds with all its parts, no loss is said; of one that raises
// nothing, but holds, it is.
func TestNoBackupOfRigsThatDoNotDoTheirJob(t *testing.T) {
	assert.Empty(t, said("no-backup", strings.Replace(bucketLine, " holds bucket", "", 1)))
	slip := "anchor head\nload litter\nhauler team\npulley top on head holds litter\nhitch grab\npulley runner on grab\nrope long\n" +
		"reeve long: litter / top \\ grab \\ runner / team\n"
	assert.NotEmpty(t, said("hitch-on-wrong-strand", slip))
	assert.Equal(t, []string{"litter falls if head, top or long is lost: nothing else holds it"}, said("no-backup", slip))
}

// Every loss by which a load falls is named by one of the rules, and no other part is.
func TestEveryCriticalLossIsNamed(t *testing.T) {
	dice := langtest.Seeded(7)
	named, shared := 0, map[string]int{}
	for i := range 3000 {
		text := langtest.RandomRig(dice)
		f := load.Text("yard.rig", text)
		rig := f.Model.Rigs[0]
		if rig.Incomplete || len(f.Problems) > 0 {
			continue
		}
		var found []diag.Diagnostic
		for _, d := range lint.Run([]*load.Loaded{f}, All()) {
			if r := d.Rule; r == noBackup.Name || r == commonLink.Name || r == sharedAnchorBackup.Name {
				found = append(found, d)
				shared[r]++
			}
		}
		res := solve.Rig(rig)
		if !res.Released.LoadsStay() {
			assert.Empty(t, found, text)
			continue
		}
		fatal := map[string]bool{}
		for _, l := range res.Losses() {
			if l.Answer.WorseThan(solve.Caught) && !l.LoadsStay() && l.Part.Kind != model.Edge && l.Whole() {
				fatal[l.Part.Name] = true
				named++
				assert.True(t, slices.ContainsFunc(found, func(d diag.Diagnostic) bool { return d.Named(l.Part.Name) }),
					"%d: %s is not named in\n%s\n%s", i, l.Part.Name, printed(f, found), text)
			}
		}
		for _, d := range found {
			for _, name := range d.Also {
				p := rig.Part(name)
				assert.True(t, fatal[name] || p.Kind.IsWeight() || strings.Contains(d.Message, "the hold of "+name) ||
					strings.Contains(d.Message, "the clip of "+name) || strings.Contains(d.Message, "the tie of "), "%s in %s\n%s", name, d.Message, text)
			}
		}
		if t.Failed() {
			return
		}
	}
	t.Log(named, shared)
	assert.Greater(t, named, 200)
}

// beltAndBelay has main line and belay on the anchors and at the parts that are given.
func beltAndBelay(main, belay, at string) string {
	return fmt.Sprintf(`anchor head
anchor tree
anchor oak
load litter mass 200 kg
ring yoke on litter
hauler team
tender belayer
pulley top on %s holds %s
device brake on %s holds %s
rope main
rope belay
reeve main: %[2]s / top \ team
reeve belay: %[4]s / brake \ belayer
`, main, at, belay, at)
}

func TestTwoLinesAndWhatTheyShare(t *testing.T) {
	apart := beltAndBelay("head", "tree", "litter")
	for _, rule := range []string{"common-link", "shared-anchor-backup", "no-backup"} {
		assert.Empty(t, said(rule, apart), rule)
	}
	yoke := beltAndBelay("head", "tree", "yoke")
	assert.Equal(t, []string{"litter falls if yoke is lost: both main and belay hang on it, though either alone would hold"}, said("common-link", yoke))
	assert.Empty(t, said("no-backup", yoke), "it is said already")
	assert.Empty(t, said("no-backup", yoke+"rule common-link off\n"), "as the house wants it")
	assert.Empty(t, said("common-link", yoke+"accept common-link at yoke because \"x\"\n"))

	both := beltAndBelay("head", "head", "yoke")
	assert.Equal(t, []string{"litter falls if head is lost: both main and belay hang on it, though either alone would hold"}, said("shared-anchor-backup", both))
	assert.Empty(t, said("common-link", both), "they do not go to different fixed points")
	assert.Equal(t, []string{"litter falls if yoke is lost: nothing else holds it"}, said("no-backup", both))

	plate := strings.Replace(beltAndBelay("plate", "plate", "litter"), "ring yoke", "ring plate on head\nring yoke", 1)
	assert.Equal(t, []string{"litter falls if head or plate is lost: both main and belay hang on them, though either alone would hold"}, said("shared-anchor-backup", plate))
	assert.Empty(t, said("no-backup", plate))

	// a focal point on one leg goes with its anchor, on two it stands
	focal := strings.NewReplacer("anchor oak\n", "anchor oak\nfocal master\nleg left from oak to master angle -10 deg\n").
		Replace(beltAndBelay("master", "master", "litter"))
	assert.Equal(t, []string{"litter falls if oak or left is lost: both main and belay hang on them, though either alone would hold"}, said("shared-anchor-backup", focal))
	assert.Empty(t, said("shared-anchor-backup", strings.Replace(focal, "left from oak to master angle -10 deg\n",
		"left from oak to master angle -10 deg\nleg right from tree to master angle 10 deg\n", 1)))

	// another load that hangs on one line is no matter of the two
	lamp := apart + "load lamp mass 4 kg\ncord pendant\nreeve pendant: lamp / oak\n"
	assert.Empty(t, said("shared-anchor-backup", lamp))
	assert.Equal(t, []string{"lamp falls if oak or pendant is lost: nothing else holds it"}, said("no-backup", lamp))
}

// tied is a plate on a head, backed up by a tie whose slack is the drop: half a metre with
// 3 m of rope.
func tied(house, tie string) string {
	return house + `anchor head at 10 m
anchor tree at 12.5 m
device plate on head holds crate
load crate mass 100 kg at 0 m
tender minder at 8 m
rope long
rope back ` + tie + `
reeve long: crate / plate \ minder
reeve back: tree ~ plate
`
}

func TestDropsThatTheHouseAllows(t *testing.T) {
	const over = "; the house allows a drop "
	for _, c := range []struct{ house, tie, drop, claim string }{
		{"", "length 3 m", "", "; no house rule allows a drop"},
		{"require drop under 0.5 m\n", "length 3 m", over + "under 0.5 m", over + "under 0.5 m"},
		{"require drop 0.5 m\n", "length 3 m", "", ""},
		{"require drop under 0.51 m\n", "length 3 m", "", ""},
		{"require drop under 1 ft\n", "length 3 m", over + "under 1 ft", over + "under 1 ft"},
		{"require drop under 2 ft\n", "length 3 m", "", ""},
		{"require drop under 1 m\n", "", ", and the house allows a drop under 1 m: back has no length", over + "under 1 m"},
		{"require drop under 1 m\n", "length 2 m", ", and the house allows a drop under 1 m: back is shorter than its way", over + "under 1 m"},
	} {
		text := tied(c.house, c.tie)
		drops := said("backup-drop", text)
		if c.drop == "" {
			assert.Empty(t, drops, c.house+c.tie)
		} else if assert.Len(t, drops, 1, c.house+c.tie) {
			assert.True(t, strings.HasSuffix(drops[0], c.drop), drops[0])
		}
		claims := said("expectation-failed", text+"expect held without head\n")
		if c.claim == "" {
			assert.Empty(t, claims, c.house+c.tie)
			assert.NotEmpty(t, said("expectation-failed", text+"expect not held without head\n"), c.house+c.tie)
		} else if assert.Len(t, claims, 1, c.house+c.tie) {
			assert.True(t, strings.HasSuffix(claims[0], c.claim), claims[0])
			assert.Empty(t, said("expectation-failed", text+"expect not held without head\n"), c.house+c.tie)
		}
		assert.Equal(t, []string{"crate falls if plate or long is lost: nothing else holds it"}, said("no-backup", text),
			"caught is no matter of it")
	}

	// a second tie of unknown length may catch it sooner: that is no excuse
	more := tied("require drop under 0.4 m\n", "length 3 m") + "rope spare\nreeve spare: tree ~ plate\n"
	assert.Equal(t, []string{"crate drops by at most 0.5 m until the slack of tree ~ plate catches it if head is lost; the house allows a drop under 0.4 m"},
		said("backup-drop", more))
	assert.Empty(t, said("backup-drop", strings.Replace(more, "0.4 m", "0.6 m", 1)), "it is no more than allowed in any case")

	// the house rule of a policy file is shown beside the finding
	f := load.Text("yard.rig", tied("", "length 3 m")+"expect held without head\n")
	f.Policy = load.Text("policy.rig", "policy quarry\nrequire drop under 0.5 m\n")
	for _, rule := range []string{"backup-drop", "expectation-failed"} {
		d := of(rule, lint.Run([]*load.Loaded{f}, All()))
		require.NotNil(t, d, rule)
		require.Len(t, d.Related, 1)
		assert.Equal(t, "the house rule of quarry", d.Related[0].Message)
	}
}

// A knot that is drawn up to a bend stops a load as well as slack rope does.
func TestDropsToAKnot(t *testing.T) {
	knot := func(house string) string {
		return house + "anchor head at 10 m\nload sinker mass 20 kg at 1 m\nhitch catch on head\npulley top on head\nknot stop at 9.8 m\n" +
			"rope line\nreeve line: sinker / catch / top \\ stop\n"
	}
	assert.Equal(t, []string{"sinker falls if head or line is lost; sinker drops by 0.2 m until top meets stop if catch is lost: nothing else holds it"},
		said("no-backup", knot("")))
	assert.Len(t, said("no-backup", knot("require drop under 0.2 m\n")), 1)
	assert.Equal(t, []string{"sinker falls if head or line is lost: nothing else holds it"}, said("no-backup", knot("require drop 0.2 m\n")))
	assert.Empty(t, said("expectation-failed", knot("require drop 0.2 m\n")+"expect held without catch\n"))
	assert.Equal(t, []string{"without catch, sinker drops by 0.2 m until top meets stop; the house allows a drop under 0.2 m"},
		said("expectation-failed", knot("require drop under 0.2 m\n")+"expect held without catch\n"))

	// other parts that meet are no knot, however little it drops
	blocks := "require drop 9 m\nanchor head at 20 m\nanchor beam at 20 m\nload stone mass 300 kg at 2 m\nhauler team\n" +
		"pulley low on stone\npulley high at 8 m\nrope first\nrope second\nreeve first: head \\ low / high\nreeve second: beam \\ high / team\n"
	assert.Equal(t, []string{"stone drops by 6 m when team lets go until low meets high: only that keeps it"}, said("held-only-by-jam", blocks))
	assert.Empty(t, said("no-capture", blocks))
	assert.Equal(t, []string{"hands off, stone drops by 6 m until low meets high"}, said("expectation-failed", blocks+"expect held\n"))
}

// In a very large rig not every loss is asked for, and that is said.
func TestLossesBeyondWhatIsAsked(t *testing.T) {
	chained := func(rings int) string {
		text, on := "", "head"
		for i := range rings {
			text += fmt.Sprintf("ring eye%d on %s\n", i, on)
			on = fmt.Sprintf("eye%d", i)
		}
		return text + strings.Replace(tackle(200, false), "pulley top0 on head", "pulley top0 on "+on, 1)
	}
	assert.Empty(t, said("not-computed-yet", chained(2)))
	assert.Contains(t, said("no-backup", chained(2))[0], " if eye0 or eye1 is lost")
	assert.Equal(t, []string{"the loss of so many parts of so large a rig is not computed yet: no-backup may miss some"},
		said("not-computed-yet", chained(9)))
	assert.Contains(t, said("no-backup", chained(9))[0], " if eye0, eye1, eye2")
}
