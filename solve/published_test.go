package solve_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve"
)

// published is one value printed elsewhere, with its source. All were read in a
// copy of the source; topologies marked "from the equations" were taken from the
// printed solution.
type published struct {
	name, source, text string
	// ratio is the ideal advantage, pull the pull in fractions of the load.
	ratio, pull string
	// carries has further printed forces, in fractions of the load.
	carries map[string]string
}

const ground = "anchor beam\npulley upper on beam\npulley lower\nload block on lower\nhauler team\nrope fall\n"

var tackles = []published{
	{"runner", "US Navy NAVEDTRA 14043, p. 4-16",
		ground + `reeve fall: beam \ lower / team`, "2", "1/2", nil},
	{"gun tackle, to disadvantage", "Griffiths, Artillerist's Manual, p. 321; NAVEDTRA 14251",
		ground + `reeve fall: upper \ lower / upper \ team`, "2", "1/2", nil},
	{"gun tackle, to advantage", "Griffiths, p. 321; NAVEDTRA 14251",
		ground + `reeve fall: lower / upper \ lower / team`, "3", "1/3", nil},
	{"luff tackle, to disadvantage", "Griffiths, p. 321",
		ground + `reeve fall: lower / upper \ lower / upper \ team`, "3", "1/3", nil},
	{"luff tackle, to advantage", "Griffiths, p. 321",
		ground + `reeve fall: upper \ lower / upper \ lower / team`, "4", "1/4", nil},
	{"two double blocks, to disadvantage", "Griffiths, p. 321",
		ground + `reeve fall: upper \ lower / upper \ lower / upper \ team`, "4", "1/4", nil},
	{"two double blocks, to advantage", "Griffiths, p. 321",
		ground + `reeve fall: lower / upper \ lower / upper \ lower / team`, "5", "1/5", nil},
	{"two treble blocks, to disadvantage", "Griffiths, p. 321; Jutsum no. 8",
		ground + `reeve fall: upper \ lower / upper \ lower / upper \ lower / upper \ team`, "6", "1/6", nil},
	{"two treble blocks, to advantage", "Griffiths, p. 321; Jutsum no. 8",
		ground + `reeve fall: lower / upper \ lower / upper \ lower / upper \ lower / team`, "7", "1/7", nil},
	{"runner and tackle, luff to disadvantage", "Griffiths, p. 321", runnerAndLuff +
		`reeve fall: eye / upper \ eye / upper \ team`, "6", "1/6", nil},
	{"runner and tackle, luff to advantage", "Griffiths, p. 321", runnerAndLuff +
		`reeve fall: upper \ eye / upper \ eye / team`, "8", "1/8", nil},
	{"single Spanish burton", "Dyer, Handbook for Light Artillery, p. 317 (reeving) and p. 319 (ratio)", `
anchor beam
pulley fixed on beam
pulley fly
load gun
hauler team
rope first
rope whip
reeve first: fly / fixed \ gun
reeve whip: gun / fly \ team
`, "3", "1/3", nil},
	{"luff upon luff, both to advantage", "Knight, Small-boat Sailing", `
anchor beam
pulley upper on beam
pulley lower
load block on lower
pulley fixed on beam
pulley moving
hauler team
rope first
rope second
reeve first: upper \ lower / upper \ lower / moving
reeve second: fixed \ moving / fixed \ moving / team
`, "16", "1/16", nil},
	{"200 lb on a gun tackle asks 100 lb", "NAVEDTRA 14043", `
anchor beam
pulley upper on beam
pulley lower
load block on lower weight 200 lbf
hauler team
rope fall
reeve fall: upper \ lower / upper \ team`, "2", "1/2", nil},
	{"600 lb on a single luff asks 200 lb", "US Navy Builder 3 & 2, ch. 4", `
anchor beam
pulley upper on beam
pulley lower
load block on lower weight 600 lbf
hauler team
rope fall
reeve fall: lower / upper \ lower / upper \ team`, "3", "1/3", nil},
}

const runnerAndLuff = `
anchor beam
pulley upper on beam
pulley runner
load block on runner
pulley eye
hauler team
rope pendant
rope fall
reeve pendant: beam \ runner / eye
`

var textbook = []published{
	{"three movable pulleys", "Hibbeler, Statics 14e, 6-61 (from the equations)", `
anchor ceiling
pulley a
pulley b
pulley c
load block on a
hauler hand
rope one
rope two
rope three
reeve one: ceiling \ a / b
reeve two: ceiling \ b / c
reeve three: ceiling \ c / hand
`, "8", "1/8", map[string]string{"one": "1/2", "two": "1/4", "three": "1/8"}},
	{"60 lb, 20 lb", "Hibbeler, Statics, F5-13 (from the equations)", `
anchor ceiling
pulley fixed on ceiling
pulley under
load block on under
hauler hand
rope line
reeve line: block / fixed \ under / hand
`, "3", "1/3", nil},
	{"100 lb, one rope, four strands", "Hibbeler, Statics, 5-46(a) (from the equations)", `
anchor ceiling
pulley fixed on ceiling
pulley under
load block on under
hauler hand
rope line
reeve line: ceiling \ under / fixed \ under / hand
`, "4", "1/4", nil},
	{"100 lb, two strands round and one tied", "Hibbeler, Statics, 5-46(b) (from the equations)", `
anchor ceiling
pulley fixed on ceiling
pulley under
load block on under
hauler hand
rope line
reeve line: under / fixed \ under / hand
`, "3", "1/3", nil},
	{"W/2 in every part", "Den Hartog, Mechanics, prob. 35", `
anchor ceiling
pulley fixed on ceiling
pulley under
load block on under
hauler hand
rope line
reeve line: ceiling \ under / fixed \ hand
`, "2", "1/2", map[string]string{"line": "1/2"}},
	{"pulleys with weight: 252 and 96 kg", "Singer, Engineering Mechanics, prob. 341", `
anchor ceiling
pulley first on ceiling
pulley second on ceiling
pulley third on ceiling
pulley low mass 36 kg
pulley middle mass 36 kg
load block on low mass 720 kg
hauler hand
rope one
rope two
reeve one: low / first \ low / middle
reeve two: middle / second \ middle / third \ hand
`, "9", "2/15", map[string]string{"one": "7/20", "two": "2/15"}}, // 96/720 and 252/720
	{"window washer, F = Mg/3", "university problem sheet", `
anchor roof
pulley fixed on roof
load platform
pulley under on platform
hauler washer on platform
rope line
reeve line: roof \ under / fixed \ washer
`, "3", "1/3", nil},
	{"person in a chair, W/2 and the ceiling W", "NTNU physics page (numbers recomputed)", `
anchor ceiling
pulley fixed on ceiling
load chair
hauler person on chair
rope line
reeve line: chair / fixed \ person
`, "2", "1/2", map[string]string{"ceiling": "1"}},
}

func TestPublishedTackles(t *testing.T)         { checkPublished(t, tackles) }
func TestPublishedTextbookStatics(t *testing.T) { checkPublished(t, textbook) }

func checkPublished(t *testing.T, rows []published) {
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			require.NotEmpty(t, row.source)
			ph := haul(t, solved(t, row.text))
			require.Equal(t, solve.OK, ph.Status, row.source)
			assert.Equal(t, row.ratio, ph.Ideal.String(), row.source)
			assert.Equal(t, row.pull, ph.Pull.String(), row.source)
			for part, want := range row.carries {
				assert.Equal(t, want, load(ph, part), "%s: %s", row.source, part)
			}
		})
	}
}

// The load on a redirect over the line's tension, as printed in several block
// makers' tables (read; some entries are truncated there, hence ±0.01).
func TestPublishedRedirectAngles(t *testing.T) {
	for angle, want := range map[string]float64{
		"0": 2.00, "30": 1.93, "60": 1.73, "90": 1.41, "120": 1.00, "150": 0.52, "180": 0.00,
	} {
		ph := haul(t, solved(t, "load litter\nhauler team\nanchor head\nanchor corner\npulley turn on corner\nrope long\n"+
			"reeve long: litter / head \\ turn (angle "+angle+" deg) / team\n"))
		var got float64
		for _, p := range ph.Parts {
			if p.Part.Name == "turn" {
				got = p.Value.Float()
			}
		}
		assert.InDelta(t, want, got, 0.01, "%s deg", angle)
	}
}

// The load on each leg of a symmetric two-leg anchor under 100 lb (Gaines,
// Rappelling, p. 61, read; printed in whole pounds).
func TestPublishedTwoLegAnchor(t *testing.T) {
	for half, want := range map[string]float64{"15": 52, "30": 58, "45": 71, "60": 100, "75": 193} {
		res := solved(t, "load block weight 100 lbf\nhauler team\nanchor left\nanchor right\nfocal master\n"+
			"leg one from left to master angle -"+half+" deg\nleg two from right to master angle "+half+" deg\n"+
			"pulley top on master holds\nrope long\nreeve long: block / top \\ team\n")
		for _, name := range []string{"one", "two", "left", "right"} {
			for _, p := range res.Hold().Parts {
				if p.Part.Name == name {
					// Held: top carries the load once.
					assert.InDelta(t, want, 100*p.Value.Float(), 1, "%s at %s deg", name, half)
				}
			}
		}
	}
}
