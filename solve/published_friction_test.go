package solve_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tackle writes a tackle of so many parts of rope at the moving block, hauled at
// the fixed block (to disadvantage): as many sheaves as parts.
func tackle(parts int) string {
	text := "anchor beam\npulley upper on beam\npulley lower\nload block on lower\nhauler team\nrope fall\nreeve fall: "
	line := "upper"
	if parts%2 == 1 {
		line = "lower / upper"
	}
	for range parts / 2 {
		line += ` \ lower / upper`
	}
	return text + line + " \\ team\n"
}

// Measured useful work of white-rope falls from one to six parts (Workshop
// Receipts, 5th series, read): they fit 0.84 to 0.87 a sheave from two parts on. The
// built-in stock's old block with a plain bearing brackets them all.
func TestMeasuredTackleEfficiencies(t *testing.T) {
	for i, measured := range []float64{0.90, 0.81, 0.75, 0.68, 0.615, 0.59} {
		parts := i + 1
		text := strings.ReplaceAll(tackle(parts), "pulley upper", "pulley upper plain-block")
		_, a := actual(t, strings.ReplaceAll(text, "pulley lower", "pulley lower plain-block"))
		ideal := math.Round(a.Advantage.Value.Float() / a.Efficiency.Value.Float())
		require.InDelta(t, float64(parts), ideal, 1e-9, "the tackle has as many parts as meant")
		assert.LessOrEqual(t, a.Efficiency.Low.Float(), measured, "%d parts", parts)
		assert.GreaterOrEqual(t, a.Efficiency.High.Float(), measured-1e-9, "%d parts", parts)
	}
}

// Nicholls's Seamanship, pp. 40-44, and Builder 3 & 2, ch. 4 (read), add a tenth of
// the weight for each sheave: S·P = W + n·W/10. The model loses at each sheave a part
// of what is left, so that it asks for less than the rule in a long tackle when one
// sheave alone costs the same tenth (η = 10/11).
func TestRuleOfTenthsDiffersFromThePerSheaveModel(t *testing.T) {
	rule := func(weight float64, sheaves, ratio int) float64 {
		return (weight + float64(sheaves)*weight/10) / float64(ratio)
	}
	// As printed: 12 t, three-fold, to disadvantage 3.2 t, to advantage 2.743 t.
	assert.InDelta(t, 3.2, rule(12, 6, 6), 1e-9)
	assert.InDelta(t, 2.743, rule(12, 6, 7), 1e-3)
	_, a := actual(t, efficient(tackle(6), "0.90909090909090909090909090909"))
	model := 12 * a.Pull.Value.Float()
	// 12·0.1/(1 − 1.1^-6)
	assert.InDelta(t, 12*0.1/(1-math.Pow(1.1, -6)), model, 1e-9)
	assert.InDelta(t, -0.445, model-rule(12, 6, 6), 1e-3, "the model asks for less than the rule here")
	_, a = actual(t, efficient(tackle(1), "0.90909090909090909090909090909"))
	assert.InDelta(t, rule(1, 1, 1), a.Pull.Value.Float(), 1e-9, "with one sheave they agree")
}

// A 9 mm rope turned by 180 degrees over a 10 mm alloy carabiner and over a small
// pulley at 0.1 kN: 53 % and 83 %, each ±10 points (Prattley 2016, measured, read).
func TestMeasuredTurnOverCarabinerAndPulley(t *testing.T) {
	for part, eta := range map[string]float64{"carabiner top on head efficiency 43 to 63 %": 0.53, "pulley top on head efficiency 73 to 93 %": 0.83} {
		_, a := actual(t, parts+"anchor head\n"+part+"\nrope long\nreeve long: litter / top \\ team\n")
		assert.InDelta(t, eta, a.Advantage.Value.Float(), 1e-9)
		assert.InDelta(t, eta-0.10, a.Advantage.Low.Float(), 1e-9)
		assert.InDelta(t, eta+0.10, a.Advantage.High.Float(), 1e-9)
	}
}

// Three to one with its tail used again for five to one, equal efficiency P at every
// bend: 1 + 2P + 2P² (Pöysti 2020, read).
func TestPublishedFiveToOne(t *testing.T) {
	for _, eta := range []string{"60 %", "80 %", "95 %"} {
		_, a := actual(t, efficient(parts+`
anchor head
pulley top on head holds
hitch grab
pulley runner on grab
pulley block
knot tie-off on head
rope long
reeve long: litter / grab / top \ block / team ~ tie-off \ runner / block
`, eta))
		p := map[string]float64{"60 %": 0.6, "80 %": 0.8, "95 %": 0.95}[eta]
		assert.InDelta(t, 1+2*p+2*p*p, a.Advantage.Value.Float(), 1e-9)
	}
}

// Sling factors, the load of a leg over half the load, at 60, 45 and 30 degrees from
// the horizontal: 1.155, 1.414, 2.000 (ASME B30.9 as reprinted, read).
func TestPublishedSlingFactors(t *testing.T) {
	for fromLine, want := range map[string]float64{"30": 1.155, "45": 1.414, "60": 2.000} {
		res := solved(t, "load block\nanchor left\nanchor right\nfocal master\n"+
			"leg one from left to master angle -"+fromLine+" deg\nleg two from right to master angle "+fromLine+" deg\n"+
			"rope long\nreeve long: block / master\n")
		for _, p := range res.Hold().Parts {
			if p.Part.Name == "one" {
				assert.InDelta(t, want, 2*p.Value.Float(), 5e-4)
			}
		}
	}
}

// An edge by its friction: rope on rock 0.4 to 0.6 (handbooks, from memory, not
// checked) over a right-angled lip costs e^(μ·π/2).
func TestEdgeFriction(t *testing.T) {
	_, a := actual(t, parts+`
anchor head
pulley top on head efficiency 100 %
edge lip angle 90 deg friction 0.4 to 0.6
rope long
reeve long: litter / lip / top \ team
`)
	assert.InDelta(t, math.Exp(-0.5*math.Pi/2), a.Advantage.Value.Float(), 1e-9)
	assert.InDelta(t, math.Exp(-0.6*math.Pi/2), a.Advantage.Low.Float(), 1e-9)
	assert.InDelta(t, math.Exp(-0.4*math.Pi/2), a.Advantage.High.Float(), 1e-9)
}
