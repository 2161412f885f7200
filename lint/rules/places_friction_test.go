package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
)

// metal is a three to one of which the runner is a carabiner: with η of it and 0.9 at the
// top, 1 + η + 0.9·η.
func metal(runner, more string) string {
	return "anchor head\nload litter mass 100 kg\nhauler team\npulley top on head holds litter efficiency 90 %\nhitch grab\n" +
		"carabiner runner on grab" + runner + "\nrope long\nreeve long: litter / grab / top \\ runner / team\n" + more
}

func TestCarabinerForPulley(t *testing.T) {
	const slides = "advice: runner is a carabiner, over which rope slides: the actual advantage is "
	checkPlaced(t, carabinerForPulley, []placed{
		// 1.95 now; 2.33 to 2.805 with a pulley of 70 to 95 %, in the middle 1 + 1.9·0.825 = 2.5675
		{"half lost", metal(" efficiency 50 %", ""), []string{slides +
			"1.95:1, and with a pulley of 70 to 95 % in its place 2.33:1 to 2.81:1, about 31.7 % more"}},
		{"none lost", metal(" efficiency 90 %", ""), nil},
		// 1 + 1.9·0.785 = 2.4915 now, of which 2.5675 is 3.05 % more; 1 + 1.9·0.787 = 2.4953, 2.89 % more
		{"just worth it", metal(" efficiency 78.5 %", ""), []string{slides +
			"2.49:1, and with a pulley of 70 to 95 % in its place 2.33:1 to 2.81:1, about 3.05 % more"}},
		{"just not", metal(" efficiency 78.7 %", ""), nil},
		{"a house that asks for more", metal(" efficiency 50 %", "require gain 32 %\n"), nil},
		{"not known", metal("", ""), nil},
		{"the other one not known", strings.Replace(metal(" efficiency 50 %", ""), "litter efficiency 90 %", "litter", 1), nil},
		{"no loaded rope runs over it", metal(" efficiency 90 %", "anchor tree\ntender minder\ncarabiner eye on tree efficiency 50 % holds litter\n"+
			"rope belay\nreeve belay: litter / eye \\ minder\n"), nil},
		{"two of them, each for itself", strings.Replace(metal(" efficiency 50 %", ""), "pulley top on head holds litter efficiency 90 %",
			"carabiner top on head holds litter efficiency 50 %", 1), []string{
			// 1.75 now; with the top 0.7 to 0.95: 1.85 to 1.975
			"advice: top is a carabiner, over which rope slides: the actual advantage is 1.75:1, and with a pulley of 70 to 95 % in its place " +
				"1.85:1 to 1.98:1, about 9.29 % more",
			// with the runner 0.7 to 0.95: 1 + 1.5·η
			slides + "1.75:1, and with a pulley of 70 to 95 % in its place 2.05:1 to 2.42:1, about 27.9 % more"}},
		{"two teams, the one whose line it is", `anchor head
anchor tree
load platform mass 100 kg
hauler red people 3
hauler blue people 3
pulley top on head holds platform efficiency 90 %
carabiner side on tree holds platform efficiency 45 %
rope r
rope b
reeve r: platform / top \ red
reeve b: platform / side \ blue
`, []string{"advice: side is a carabiner, over which rope slides: the actual advantage of blue is 0.45:1, and with a pulley of 70 to 95 % " +
			"in its place 0.7:1 to 0.95:1, about 83.3 % more"}},
	})
}

// pulleys is a three to one with a hitch for a capture: 1 + η(runner)·(1 + η(top)).
func pulleys(top, runner, more string) string {
	return "anchor head\nload litter mass 100 kg\nhauler team\nhitch catch on head\npulley top on head" + top + "\nhitch grab\n" +
		"pulley runner on grab" + runner + "\nrope long\nreeve long: litter / grab / catch / top \\ runner / team\n" + more
}

func TestBestPulleyElsewhere(t *testing.T) {
	checkPlaced(t, bestPulleyElsewhere, []placed{
		// 1 + 0.8·1.9 = 2.52; 1 + 0.9·1.8 = 2.62, 3.97 % more
		{"the better one at the top", pulleys(" efficiency 90 %", " efficiency 80 %", ""), []string{
			"advice: top (90 %) turns easier than runner (80 %) and wins less where it is: the actual advantage is 2.52:1, " +
				"with the two exchanged 2.62:1, 3.97 % more"}},
		{"the better one at the runner", pulleys(" efficiency 80 %", " efficiency 90 %", ""), nil},
		// 1 + 0.83·1.9 = 2.577; 1 + 0.9·1.83 = 2.647, 2.72 % more
		{"too little to feel", pulleys(" efficiency 90 %", " efficiency 83 %", ""), nil},
		{"a house that feels it", pulleys(" efficiency 90 %", " efficiency 83 %", "require gain 2 %\n"), []string{
			"advice: top (90 %) turns easier than runner (83 %) and wins less where it is: the actual advantage is 2.58:1, " +
				"with the two exchanged 2.65:1, 2.72 % more"}},
		// ends with their like: 1 + 0.7·1.85 = 2.295 and 2.445, 6.54 %; 1 + 0.85·1.95 = 2.6575 and 2.7575, 3.76 %
		{"ranges", pulleys(" efficiency 85 to 95 %", " efficiency 70 to 85 %", ""), []string{
			"advice: top (85 to 95 %) turns easier than runner (70 to 85 %) and wins less where it is: the actual advantage is " +
				"2.3:1 to 2.66:1, with the two exchanged 2.44:1 to 2.76:1, at least 3.76 % more"}},
		{"it holds", pulleys(" efficiency 90 % holds litter", " efficiency 80 %", ""), nil},
		{"the other one holds", pulleys(" efficiency 90 %", " efficiency 80 % holds litter", ""), nil},
		{"another number of sheaves", pulleys(" efficiency 90 %", " efficiency 80 % sheaves 2", ""), nil},
		{"the same number", pulleys(" efficiency 90 % sheaves 1", " efficiency 80 %", ""), []string{
			"advice: top (90 %) turns easier than runner (80 %) and wins less where it is: the actual advantage is 2.52:1, " +
				"with the two exchanged 2.62:1, 3.97 % more"}},
		{"one not known", pulleys(" efficiency 90 %", "", ""), nil},
		{"an efficiency at the node", strings.Replace(pulleys(" efficiency 90 %", " efficiency 80 %", ""), "\\ runner", "\\ runner (efficiency 80 %)", 1), nil},
		{"a claim that would fail", pulleys(" efficiency 90 %", " efficiency 80 %", "expect actual advantage under 2.6\n"), nil},
		// 1 + 0.5·1.9 = 1.95; 1 + 0.9·1.5 = 2.35
		{"a carabiner for the runner", strings.Replace(pulleys(" efficiency 90 %", " efficiency 50 %", ""), "pulley runner", "carabiner runner", 1), []string{
			"advice: top (90 %) turns easier than runner (50 %) and wins less where it is: the actual advantage is 1.95:1, " +
				"with the two exchanged 2.35:1, 20.5 % more"}},
	})
}

// fixedBy gives the text after the only fix of a rule.
func fixedBy(t *testing.T, rule, text string) string {
	t.Helper()
	f, found := examined(text)
	d := of(rule, found)
	require.NotNil(t, d, printed(f, found))
	require.Len(t, d.Fixes, 1, printed(f, found))
	return diag.Apply(f.File, d.Fixes[0].Edits)
}

// What a part is made of changes place, what it is used for stays.
func TestBestPulleyElsewhereIsMended(t *testing.T) {
	for _, c := range []struct{ top, runner, thenTop, thenRunner string }{
		{"pulley top bearing-pulley on head  # red", "pulley runner bushing-pulley on grab",
			"pulley top bushing-pulley on head  # red", "pulley runner bearing-pulley on grab"},
		{"pulley top bearing-pulley on head strength 30 kN at 9 m", "pulley runner on grab efficiency 70 %",
			"pulley top on head at 9 m  efficiency 70 %", "pulley runner bearing-pulley on grab  strength 30 kN"},
		{"pulley  top  efficiency 90 %  strength 22 kN  on head  # red", "carabiner runner on grab mass 200 g efficiency 50 % locking",
			"carabiner  top  efficiency 50 %  on head  mass 200 g  locking  # red", "pulley runner on grab efficiency 90 %  strength 22 kN"},
	} {
		text := pulleys("", "", "")
		text = strings.Replace(text, "pulley top on head", c.top, 1)
		text = strings.Replace(text, "pulley runner on grab", c.runner, 1)
		after := fixedBy(t, "best-pulley-elsewhere", text)
		assert.Contains(t, after, c.thenTop+"\n")
		assert.Contains(t, after, c.thenRunner+"\n")
		f, found := examined(after)
		assert.Empty(t, only("best-pulley-elsewhere", found), printed(f, found))
	}
}

// What stands before the first rig is others' too: nothing is changed there.
func TestBestPulleyElsewhereOfSeveralRigs(t *testing.T) {
	text := "anchor head\nload litter mass 100 kg\nhauler team\nhitch catch on head\npulley top on head efficiency 90 %\nhitch grab\n" +
		"pulley runner on grab efficiency 80 %\nrope long\nrig one\nreeve long: litter / grab / catch / top \\ runner / team\n" +
		"rig two\nreeve long: litter / grab / catch / top \\ runner / team\n"
	_, found := examined(text)
	found = only("best-pulley-elsewhere", found)
	require.Len(t, found, 2)
	assert.Empty(t, found[0].Fixes)
	assert.Empty(t, found[1].Fixes)
}

// brake is a tackle with a brake on the second of its two fixed bends: with η of the brake
// second, and 0.9 everywhere else, 1 + 0.9·(1 + b·(1 + 0.9·(1 + 0.9))).
func brake(eta, more string) string {
	return "anchor head\nload frame mass 240 kg\nhauler team\npulley upper on head efficiency 90 %\ndevice brake on head holds frame" + eta +
		"\npulley lower on frame efficiency 90 %\nrope fall\nreeve fall: frame / upper \\ lower / brake \\ lower / team\n" + more
}

func TestRedirectBeforeCapture(t *testing.T) {
	const holds = "advice: brake holds fall only after upper, so that the strand it holds pays the friction there: the actual advantage is "
	checkPlaced(t, redirectBeforeCapture, []placed{
		{"half lost", brake(" efficiency 50 %", ""), []string{holds + "3.12:1; with brake first it is 3.8:1, 21.9 % more"}},
		{"as good", brake(" efficiency 90 %", ""), nil},
		// 4.0951 at 0.9; at 0.85 3.9731 and 4.0586, 2.15 % more; at 0.8 3.8512 and 4.0222, 4.44 % more
		{"too little to feel", brake(" efficiency 85 %", ""), nil},
		{"enough", brake(" efficiency 80 %", ""), []string{holds + "3.85:1; with brake first it is 4.02:1, 4.44 % more"}},
		{"not known", brake("", ""), nil},
		{"an angle at the brake", strings.Replace(brake(" efficiency 50 %", ""), "/ brake", "/ brake (angle 20 deg)", 1), nil},
		{"a tree before it", strings.Replace(brake(" efficiency 50 %", ""), "pulley upper on head", "anchor upper", 1), nil},
	})
}

func TestRedirectBeforeCaptureIsMended(t *testing.T) {
	text := strings.Replace(brake(" efficiency 50 %", ""), "holds frame", "", 1)
	text = strings.Replace(text, "/ brake \\", "/ brake (holds frame) \\  # the loft\n ", 1)
	text = strings.Replace(text, "\n  lower", "\n\\ lower", 1)
	assert.Contains(t, fixedBy(t, "redirect-before-capture", strings.Replace(text, "\\  # the loft", "# the loft", 1)),
		"reeve fall: frame / brake (holds frame) \\ lower / upper # the loft\n")
}
