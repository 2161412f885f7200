package stock_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/resolve"
)

// published is one figure as its source prints it, in the unit here: forces in kN,
// lengths in mm, efficiencies and what knots retain in per cent.
type published struct {
	kind, model, clause string
	low, high           float64
	// source must stand in what the catalogue says of the model's source.
	source string
}

// figures are the published figures of every value in the catalogue.
var figures = []published{
	// Rescue pulleys: ball bearing 85 to 95 %, bushing 70 to 85 %; handbooks, not opened.
	{"pulley", "bearing-pulley", "efficiency", 85, 95, "from memory, not checked"},
	{"pulley", "bushing-pulley", "efficiency", 70, 85, "from memory, not checked"},
	{"pulley", "rescue-pulley", "efficiency", 70, 95, "from memory, not checked"},
	// Prattley 2016: 9 mm rope turned 180 deg over a small pulley 83 %, over a 10 mm alloy carabiner
	// 53 %, each within 10 points.
	{"pulley", "small-pulley", "efficiency", 83 - 10, 83 + 10, "Prattley 2016, measured"},
	{"carabiner", "alloy-10mm", "efficiency", 53 - 10, 53 + 10, "Prattley 2016, measured"},
	// Workshop Receipts, 5th series: see TestPlainBlockBracketsTheMeasuredTackles.
	{"pulley", "plain-block", "efficiency", 84, 90, "Workshop Receipts, 5th series, measured"},
	// NFPA 1983, technical and general use: pulleys 22 and 36 kN and rope 20 and 40 kN, recalled;
	// carabiners 27 and 40 kN, training summaries.
	{"pulley", "technical-use", "strength", 22, 22, "NFPA 1983, from memory, not checked"},
	{"pulley", "general-use", "strength", 36, 36, "NFPA 1983, from memory, not checked"},
	{"rope", "technical-use", "strength", 20, 20, "NFPA 1983, from memory, not checked"},
	{"rope", "general-use", "strength", 40, 40, "NFPA 1983, from memory, not checked"},
	{"carabiner", "technical-use", "strength", 27, 27, "NFPA 1983 by training summaries"},
	{"carabiner", "general-use", "strength", 40, 40, "NFPA 1983 by training summaries"},
	// EN 12275:2013, major axis, by a test-house summary.
	{"carabiner", "class-b", "strength", 20, 20, "EN 12275:2013"},
	{"carabiner", "class-h", "strength", 20, 20, "EN 12275:2013"},
	{"carabiner", "class-k", "strength", 25, 25, "EN 12275:2013"},
	{"carabiner", "class-x", "strength", 18, 18, "EN 12275:2013"},
	{"carabiner", "class-q", "strength", 25, 25, "EN 12275:2013"},
	// A carabiner over 180 deg: 50 to 66 % is common practice, 43 to 63 % measured; both stand.
	{"carabiner", "class-b", "efficiency", 43, 66, "common practice"},
	{"carabiner", "class-h", "efficiency", 43, 66, "common practice"},
	{"carabiner", "class-k", "efficiency", 43, 66, "common practice"},
	{"carabiner", "class-x", "efficiency", 43, 66, "common practice"},
	{"carabiner", "technical-use", "efficiency", 43, 66, "common practice"},
	{"carabiner", "general-use", "efficiency", 43, 66, "common practice"},
	// Nylon on aluminium or steel, 0.2 to 0.3: see TestMetalFollowsTheCapstanLaw.
	{"ring", "metal-ring", "efficiency", 39, 53, "from memory, not checked"},
	{"device", "bollard", "efficiency", 39, 53, "from memory, not checked"},
	{"edge", "metal", "friction", 0.2, 0.3, "from memory, not checked"},
	// Rope on rock 0.4 to 0.6; handbooks, not opened.
	{"edge", "rock", "friction", 0.4, 0.6, "from memory, not checked"},
	{"anchor", "rock", "friction", 0.4, 0.6, "from memory, not checked"},
	// Schwartz, Calculating Forces: a three-wrap prusik of 8 mm cord on 12.7 mm rope starts to slip.
	{"hitch", "prusik-8mm", "slips", 7, 9.5, "Schwartz, Calculating Forces"},
	{"hitch", "prusik-8mm", "wraps", 3, 3, "Schwartz, Calculating Forces"},
	{"hitch", "prusik", "wraps", 3, 3, "common practice"},
	{"hitch", "prusik-5mm", "wraps", 3, 3, "common practice"},
	{"hitch", "prusik-6mm", "wraps", 3, 3, "common practice"},
	{"hitch", "prusik-7mm", "wraps", 3, 3, "common practice"},
	{"hitch", "prusik-5mm", "cord", 5, 5, ""},
	{"hitch", "prusik-6mm", "cord", 6, 6, ""},
	{"hitch", "prusik-7mm", "cord", 7, 7, ""},
	{"hitch", "prusik-8mm", "cord", 8, 8, ""},
	// EN 567 by a test-house summary: holds 4 kN without damage.
	{"clamp", "rope-clamp", "damages", 4, 4, "EN 567"},
	// HSE 364/2001, recalled; another table gives the figure-eight 80 %.
	{"knot", "figure-eight", "retains", 66, 80, "HSE 364/2001"},
	{"knot", "bowline", "retains", 55, 74, "HSE 364/2001"},
	{"knot", "overhand", "retains", 58, 68, "HSE 364/2001"},
	// EN 1891 by a rope catalogue, static strength without terminations.
	{"rope", "low-stretch-a", "strength", 22, 22, "EN 1891"},
	{"rope", "low-stretch-b", "strength", 18, 18, "EN 1891"},
	// EN 564 by a summary.
	{"cord", "cord-4mm", "strength", 3.2, 3.2, "EN 564"},
	{"cord", "cord-5mm", "strength", 5.0, 5.0, "EN 564"},
	{"cord", "cord-6mm", "strength", 7.2, 7.2, "EN 564"},
	{"cord", "cord-7mm", "strength", 9.8, 9.8, "EN 564"},
	{"cord", "cord-8mm", "strength", 12.8, 12.8, "EN 564"},
	{"cord", "cord-4mm", "diameter", 4, 4, "EN 564"},
	{"cord", "cord-5mm", "diameter", 5, 5, "EN 564"},
	{"cord", "cord-6mm", "diameter", 6, 6, "EN 564"},
	{"cord", "cord-7mm", "diameter", 7, 7, "EN 564"},
	{"cord", "cord-8mm", "diameter", 8, 8, "EN 564"},
	// EN 566, recalled.
	{"sling", "sewn-sling", "strength", 22, 22, "EN 566, from memory, not checked"},
	// EN 959:2018, clauses 4.2 and 4.3; EN 795:2012, one user, by a test-house summary.
	{"anchor", "bolt-axial", "strength", 15, 15, "EN 959:2018"},
	{"anchor", "bolt-radial", "strength", 25, 25, "EN 959:2018"},
	{"anchor", "anchor-device", "strength", 12, 12, "EN 795:2012"},
	// US Army field manual: about 60 lb (0.27 kN) each. Bassett: 50 lbf (0.22 kN) on a short haul,
	// 30 lbf (0.13 kN) on a long one.
	{"hauler", "level-pull", "pull", 0.27, 0.27, "US Army engineer field manual, sec. 30"},
	{"hauler", "short-haul", "pull", 0.22, 0.22, "Bassett"},
	{"hauler", "long-haul", "pull", 0.13, 0.13, "Bassett"},
	{"hauler", "person", "pull", 0.13, 0.27, "Bassett"},
}

// Every value in the catalogue is one of the published figures, and the other way round.
func TestFiguresAreThePublishedOnes(t *testing.T) {
	left := map[[3]string]published{}
	for _, f := range figures {
		left[[3]string{f.kind, f.model, f.clause}] = f
	}
	require.Len(t, left, len(figures))
	for _, m := range resolve.Catalogue() {
		for _, c := range m.Clauses {
			key := [3]string{m.Kind.Text, m.Model.Text, c.Word.Text}
			f, known := left[key]
			if !assert.True(t, known, "%v has no published figure", key) {
				continue
			}
			delete(left, key)
			require.NotNil(t, c.Amount, key)
			low, high := printed(c.Amount.Quantity)
			near := 1e-9
			if c.Amount.Unit == "lbf" { // printed in kN to two places
				near = 0.005
			}
			assert.InDelta(t, f.low, low, near, key)
			assert.InDelta(t, f.high, high, near, key)
			assert.Contains(t, m.Source, f.source, key)
		}
	}
	assert.Empty(t, left)
}

// printed gives the ends of a quantity in the unit of the table above.
func printed(q quantity.Quantity) (low, high float64) {
	scale := map[quantity.Dimension]float64{
		quantity.None: 1, quantity.Ratio: 100, quantity.Force: 1e-3, quantity.Length: 1e3,
	}[q.Dimension]
	low, _ = q.Low.Float64()
	high, _ = q.High.Float64()
	return low * scale, high * scale
}

// The strength of accessory cord is 0.2 kN times the square of its diameter in mm
// (EN 564 by a summary).
func TestCordsFollowTheRuleOfTheirStandard(t *testing.T) {
	for _, m := range resolve.Catalogue() {
		if m.Kind.Text != "cord" {
			continue
		}
		_, d := printed(*m.Values.Diameter)
		_, strength := printed(*m.Values.Strength)
		assert.InDelta(t, 0.2*d*d, strength, 1e-9, m.Model.Text)
	}
}

// Measured useful work of white-rope falls of one to six parts (Workshop Receipts,
// 5th series). The part at the pull carries most, and each sheave takes its share:
// n parts with n sheaves have (η + η² + … + ηⁿ)/n.
func TestPlainBlockBracketsTheMeasuredTackles(t *testing.T) {
	low, high := printed(*named(t, "pulley", "plain-block").Values.Efficiency)
	for i, measured := range []float64{90, 81, 75, 68, 61.5, 59} {
		parts := i + 1
		assert.LessOrEqual(t, tackle(low/100, parts), measured+1e-9, "%d parts", parts)
		assert.GreaterOrEqual(t, tackle(high/100, parts), measured-1e-9, "%d parts", parts)
	}
}

// tackle gives the efficiency of a fall with as many sheaves as parts, in per cent.
func tackle(eta float64, parts int) float64 {
	sum := 0.0
	for k := 1; k <= parts; k++ {
		sum += math.Pow(eta, float64(k))
	}
	return 100 * sum / float64(parts)
}

// T₂/T₁ = e^(−μ·π) over a half turn, for nylon on aluminium or steel.
func TestMetalFollowsTheCapstanLaw(t *testing.T) {
	for _, of := range [][2]string{{"ring", "metal-ring"}, {"device", "bollard"}} {
		low, high := printed(*named(t, of[0], of[1]).Values.Efficiency)
		assert.InDelta(t, 100*math.Exp(-0.3*math.Pi), low, 0.5, of)
		assert.InDelta(t, 100*math.Exp(-0.2*math.Pi), high, 0.5, of)
	}
}

func named(t *testing.T, kind, name string) *model.Stock {
	t.Helper()
	for _, m := range resolve.Catalogue() {
		if m.Kind.Text == kind && m.Model.Text == name {
			return m
		}
	}
	require.Fail(t, "there is no such model", "%s %s", kind, name)
	return nil
}
