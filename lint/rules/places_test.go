package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lint"
)

// placed is a rig with what one rule says of it, each message in order.
type placed struct {
	name, text string
	says       []string
}

// three is a three to one into which statements can be written, with a line for more.
const three = `anchor head
load litter mass 180 kg
hauler team people 3
pulley top on head holds litter
pulley runner on grab
`

const threeLine = "reeve long: litter / grab / top \\ runner / team\n"

func checkPlaced(t *testing.T, rule *lint.Rule, cases []placed) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			f, found := examined(c.text)
			for _, d := range found {
				require.Less(t, d.Severity, diag.Error, "%s", printed(f, found))
			}
			var says []string
			for _, d := range only(rule.Name, found) {
				says = append(says, d.Severity.String()+": "+d.Message)
			}
			assert.Equal(t, c.says, says)
		})
	}
}

func TestCordToRope(t *testing.T) {
	rig := func(cord, rope string) string {
		return three + "hitch grab cord " + cord + "\nrope long diameter " + rope + "\n" + threeLine
	}
	const thick = " of its diameter, thicker than 60 to 80 %: it may not grip; "
	const thin = " of its diameter, thinner than 60 to 80 %: it holds less, and is hard to loosen; "
	checkPlaced(t, cordToRope, []placed{
		{"at the upper end", rig("8 mm", "10 mm"), nil},
		{"just over", rig("8.01 mm", "10 mm"), []string{"warning: grab has a cord of 8.01 mm on long of 10 mm, 80.1 %" + thick + "6 to 8 mm would fit"}},
		{"at the lower end", rig("6 mm", "10 mm"), nil},
		{"just under", rig("5.99 mm", "10 mm"), []string{"advice: grab has a cord of 5.99 mm on long of 10 mm, 59.9 %" + thin + "6 to 8 mm would fit"}},
		{"two units", rig("8 mm", "0.5 in"), nil},
		{"a range that reaches in", rig("8 to 9 mm", "10 mm"), nil},
		{"a rope that reaches in", rig("8 mm", "9 to 10 mm"), nil},
		{"both ranges, out from end to end", rig("9 to 10 mm", "10 to 11 mm"),
			[]string{"warning: grab has a cord of 9 to 10 mm on long of 10 to 11 mm, 81.8 %" + thick + "6.6 to 8 mm would fit"}},
		{"no diameter", three + "hitch grab cord 5 mm\nrope long\n" + threeLine, nil},
		{"no cord", three + "hitch grab\nrope long diameter 11 mm\n" + threeLine, nil},
		{"a cord of the stock", three + "hitch grab prusik-5mm\nrope long diameter 11 mm\n" + threeLine,
			[]string{"advice: grab has a cord of 5 mm on long of 11 mm, 45.5 %" + thin + "6.6 to 8.8 mm would fit"}},
		{"a policy of its own", "require cord 40 to 50 %\n" + rig("5 mm", "11 mm"), nil},
		{"tied to it, not gripped", three + "hitch grab cord 8 mm\nrope long diameter 11 mm\ncord tail-line diameter 4 mm\nanchor rear\n" +
			threeLine + "reeve tail-line: rear ~ grab\n", nil},
	})
}

// A hitch on two strands of a rope is reported once, and on two ropes for each of them
// that it does not fit.
func TestCordToRopeOfSeveralRopes(t *testing.T) {
	checkPlaced(t, cordToRope, []placed{{"twin ropes", `anchor head
load litter mass 180 kg
hauler team people 3
tender minder
pulley top on head sheaves 2 holds litter
hitch back on head cord 8 mm
rope thick diameter 11 mm
rope thin diameter 8 mm
reeve thick: litter / back / top \ team
reeve thin: litter / back / top \ minder
`, []string{"warning: back has a cord of 8 mm on thin of 8 mm, 100 % of its diameter, thicker than 60 to 80 %: it may not grip; 4.8 to 6.4 mm would fit"}}})
}

func TestRopeOutsideDevice(t *testing.T) {
	rig := func(takes, rope string) string {
		return "anchor head\nload litter mass 180 kg\nhauler team people 3\ndevice brake on head holds litter" + takes +
			"\nrope line" + rope + "\nreeve line: litter / brake \\ team\n"
	}
	checkPlaced(t, ropeOutsideDevice, []placed{
		{"at the upper end", rig(" takes 9 to 11 mm", " diameter 11 mm"), nil},
		{"over it", rig(" takes 9 to 11 mm", " diameter 11.1 mm"),
			[]string{"warning: brake takes rope of 9 to 11 mm, and line of 11.1 mm is thicker: it may jam"}},
		{"at the lower end", rig(" takes 9 to 11 mm", " diameter 9 mm"), nil},
		{"under it", rig(" takes 9 to 11 mm", " diameter 8.9 mm"),
			[]string{"warning: brake takes rope of 9 to 11 mm, and line of 8.9 mm is thinner: it may run through unbraked"}},
		{"one figure", rig(" takes 11 mm", " diameter 11 mm"), nil},
		{"another one", rig(" takes 11 mm", " diameter 0.5 in"),
			[]string{"warning: brake takes rope of 11 mm, and line of 0.5 in is thicker: it may jam"}},
		{"a rope that may fit", rig(" takes 9 to 11 mm", " diameter 11 to 12 mm"), nil},
		{"no diameter", rig(" takes 9 to 11 mm", ""), nil},
		{"nothing said of the device", rig("", " diameter 11 mm"), nil},
		{"passed twice, said once", `anchor head
load litter mass 180 kg
hauler team people 3
device brake on head takes 9 to 11 mm
pulley low on litter
rope line diameter 8 mm
reeve line: head \ low (holds head) / brake \ low / brake \ team
`, []string{"warning: brake takes rope of 9 to 11 mm, and line of 8 mm is thinner: it may run through unbraked"}},
		{"only tied to it", `anchor head
load litter mass 180 kg
hauler team people 3
device brake on litter takes 9 to 11 mm
pulley top on head holds
rope line diameter 12 mm
reeve line: brake / top \ team
`, nil},
		{"held at it beside slack rope", `anchor head
load litter mass 180 kg
hauler team people 3
tender minder
device brake on head holds litter takes 9 to 11 mm
pulley top on head holds litter
rope line diameter 11 mm
rope belay diameter 12 mm
reeve line: litter / top \ team
reeve belay: litter / brake ~ minder
`, []string{"warning: brake takes rope of 9 to 11 mm, and belay of 12 mm is thicker: it may jam"}},
	})
}

func TestGateUnlocked(t *testing.T) {
	link := func(gate string) string {
		return "anchor head\nload litter mass 180 kg\nhauler team people 3\ncarabiner link on head" + gate +
			"\npulley top on link holds litter\nrope line\nreeve line: litter / top \\ team\n"
	}
	const says = "warning: link is plain, with a gate that does not lock: litter falls without it"
	checkPlaced(t, gateUnlocked, []placed{
		{"plain", link(" plain"), []string{says}},
		{"locking", link(" locking"), nil},
		{"nothing said", link(""), nil},
		{"both said", link(" plain locking"), nil},
		{"a model that is plain", "stock carabiner light plain\n" + "anchor head\nload litter mass 180 kg\nhauler team people 3\n" +
			"carabiner link light on head\npulley top on link holds litter\nrope line\nreeve line: litter / top \\ team\n", []string{says}},
		{"nothing holds at all", "anchor head\nload litter mass 180 kg\nhauler team people 3\ncarabiner link on head plain\n" +
			"pulley top on link\nrope line\nreeve line: litter / top \\ team\n", nil},
		{"a slack back-tie catches", link(" plain") + "anchor tree\nsling tie\nreeve tie: tree ~ litter\n", nil},
		{"held by the friction of the ground", "anchor head\nload sledge mass 180 kg slope 20 deg friction 0.5\nhauler team people 3\n" +
			"carabiner link on head plain\npulley top on link holds sledge\nrope line\nreeve line: sledge / top \\ team\n", nil},
		{"two loads, one of which falls", link(" plain") + "load lamp mass 3 kg\nrope cord-2\nreeve cord-2: lamp / head\nhauler mate\n" +
			"rope hand\nreeve hand: lamp / mate\n", []string{says}},
		{"a bend of the rope itself", "anchor head\nload litter mass 180 kg\nhauler team people 3\ncarabiner eye on head plain holds litter\n" +
			"rope line\nreeve line: litter / eye \\ team\n",
			[]string{"warning: eye is plain, with a gate that does not lock: litter falls without it"}},
	})
}

func TestThreeWayCarabiner(t *testing.T) {
	slings := func(left, right, more string) string {
		return "anchor left-bolt\nanchor right-bolt\nload litter mass 100 kg\nhauler team\ncarabiner master\npulley top on master holds litter\n" +
			"sling one\nsling two\nrope line\nreeve one: left-bolt \\ master (angle " + left + ")\n" +
			"reeve two: right-bolt \\ master (angle " + right + ")\nreeve line: litter / top \\ team\n" + more
	}
	const spine = "; a carabiner bears its strength along its spine alone"
	checkPlaced(t, threeWayCarabiner, []placed{
		{"at the turn", slings("15 deg", "15 deg", ""), nil},
		{"over it", slings("20 deg", "20 deg", ""), []string{"warning: master is pulled three ways, the nearest two 40 deg apart: " +
			"1.04 kN by one, 1.04 kN by two and 1.96 kN by top, hauling" + spine}},
		{"a wider turn allowed", slings("20 deg", "20 deg", "require turn under 41 deg\n"), nil},
		{"just not allowed", slings("20 deg", "20 deg", "require turn under 40 deg\n"), []string{"warning: master is pulled three ways, " +
			"the nearest two 40 deg apart: 1.04 kN by one, 1.04 kN by two and 1.96 kN by top, hauling" + spine}},
		{"a sliding loop pulls along its resultant", `anchor left-bolt
anchor right-bolt
load bucket mass 30 kg
hauler team
carabiner master
pulley top on master holds bucket
sling strop
rope line
reeve strop: left-bolt \ master / right-bolt \ master / loop
reeve line: bucket / top \ team
`, nil},
		{"as wide as it gets", slings("60 deg", "60 deg", ""), []string{"warning: master is pulled three ways, " +
			"the nearest two 120 deg apart: 1.96 kN by one, 1.96 kN by two and 1.96 kN by top, hauling" + spine}},
	})
}

func TestRopeOnTextile(t *testing.T) {
	checkPlaced(t, ropeOnTextile, []placed{
		{"hauled and lowered", `anchor head
anchor beam
load box mass 90 kg
hauler team people 2
sling strap on beam
device brake on head holds box releasable
rope line
reeve line: box / brake / strap \ team
`, []string{"warning: strap is textile, and line runs over it hauling, 1 m for each m that box rises, and presses on it with 1.77 kN: " +
			"rope on textile melts it; metal belongs between"}},
		{"twice as fast at a moving sling", `anchor head
load box mass 90 kg
hauler team people 2
sling strap on box
hitch catch on box
rope line
reeve line: head \ strap / catch / team
`, []string{"warning: strap is textile, and line runs over it hauling, 1 m for each m that box rises, and presses on it with 0.883 kN: " +
			"rope on textile melts it; metal belongs between"}},
		{"in feet", `units lbf ft
anchor head
load box mass 200 lb
hauler team people 2
sling strap on head
hitch catch on head
rope line
reeve line: box / catch / strap \ team
`, []string{"warning: strap is textile, and line runs over it hauling, 1 ft for each ft that box rises, and presses on it with 400 lbf: " +
			"rope on textile melts it; metal belongs between"}},
		{"a belay that nobody pulls", `anchor head
anchor tree
load box mass 90 kg
hauler team people 2
tender minder
pulley top on head holds box
sling strap on tree
hitch catch on tree
rope line
rope belay
reeve line: box / top \ team
reeve belay: box / catch / strap \ minder
`, nil},
		{"rope over a rope", `anchor head
load box mass 90 kg
hauler team people 2
rope strop on head
hitch catch on head
rope line
reeve line: box / catch / strop \ team
`, []string{"warning: strop is textile, and line runs over it hauling, 1 m for each m that box rises, and presses on it with 1.77 kN: " +
			"rope on textile melts it; metal belongs between"}},
	})
}

func TestBareEdge(t *testing.T) {
	over := func(edge, rope, at string) string {
		return "anchor head\nedge lip" + edge + "\nload litter mass 100 kg\nhauler team\npulley top on head holds litter\nrope line" + rope +
			"\nreeve line: litter / lip" + at + " / top \\ team\n"
	}
	const lies = "warning: lip is not padded, and line lies over it with 0.981 kN, held; "
	checkPlaced(t, bareEdge, []placed{
		{"padded", over(" padded", "", ""), nil},
		{"no angle", over(" friction 0.5", "", ""), []string{lies + "what that costs of the pull is unknown: lip has no angle"}},
		{"no friction", over(" angle 120 deg", "", ""), []string{lies + "what that costs of the pull is unknown: lip has no friction"}},
		{"an angle at the node, the friction of the rope", over("", " friction 0.3", " (angle 120 deg)"),
			[]string{lies + "while it runs, the tension past lip is 1.37 times that before"}},
		{"a roller", over(" angle 90 deg efficiency 90 %", "", ""), nil},
		{"a roller here", over(" angle 90 deg friction 0.5", "", " (efficiency 90 %)"), nil},
		{"both said", over(" angle 120 deg friction 0.5 efficiency 90 %", "", ""), nil},
		{"two edges", over(" padded", "", "") + "edge sill\nload pack mass 20 kg\nhauler mate\nrope other\npulley side on head holds pack\n" +
			"reeve other: pack / sill / side \\ mate\n", []string{"warning: sill is not padded, and other lies over it with 0.196 kN, held; " +
			"what that costs of the pull is unknown: sill has no angle"}},
		{"a belay that a device holds", `anchor head
anchor tree
edge lip
load litter mass 100 kg
hauler team
tender minder
pulley top on head holds litter
device brake on tree holds litter
rope line
rope belay
reeve line: litter / top \ team
reeve belay: litter / lip / brake \ minder
`, []string{"warning: lip is not padded, and belay lies over it, which may have to carry 0.981 kN, held; " +
			"what that costs of the pull is unknown: lip has no angle"}},
		{"a line that only a tender minds", `anchor head
edge lip
load litter mass 100 kg
hauler team
tender minder
pulley top on head holds litter
rope line
rope tag
reeve line: litter / top \ team
reeve tag: litter / lip / minder
`, nil},
		{"the rope with the larger tension", `anchor head
edge lip angle 120 deg friction 0.5
load litter mass 100 kg
load pack mass 200 kg
hauler team
hauler mate
pulley top on head holds
pulley side on head holds
rope line
rope other
reeve line: litter / lip / top \ team
reeve other: pack / lip / side \ mate
`, []string{"warning: lip is not padded, and other lies over it with 1.96 kN, held; while it runs, the tension past lip is 1.69 times that before"}},
	})
}
