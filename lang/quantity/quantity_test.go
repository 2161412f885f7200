package quantity

import (
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNew(t *testing.T) {
	cases := []struct {
		low, high, unit string
		dimension       Dimension
		wantLow         string
		wantHigh        string
		text            string
	}{
		{"30", "", "kN", Force, "30000", "30000", "30 kN"},
		{"0.85", "0.95", "", None, "17/20", "19/20", "0.85 to 0.95"},
		{"40", "60", "%", Ratio, "2/5", "3/5", "40 to 60 %"},
		{"-30", "", "deg", Angle, "-30", "-30", "-30 deg"},
		{"8", "", "mm", Length, "1/125", "1/125", "8 mm"},
		{"007.50", "", "", None, "15/2", "15/2", "007.50"},
		{"60", "40", "m", Length, "60", "40", "60 to 40 m"},
		{"010", "", "", None, "10", "10", "010"}, // no octal number
		{strings.Repeat("9", 30), "", "", None, strings.Repeat("9", 30), strings.Repeat("9", 30), strings.Repeat("9", 30)},
	}
	for _, c := range cases {
		q, ok := New(c.low, c.high, c.unit)
		require.True(t, ok, c.text)
		assert.Equal(t, c.dimension, q.Dimension)
		assert.Equal(t, c.wantLow, q.Low.RatString())
		assert.Equal(t, c.wantHigh, q.High.RatString())
		assert.Equal(t, c.text, q.String())
		assert.Equal(t, c.unit, q.Unit)
	}
}

func TestNewRefusesWhatIsNoQuantity(t *testing.T) {
	for _, c := range [][3]string{{"x", "", ""}, {"", "", ""}, {"1", "x", ""}, {"1", "", "KN"}, {"1", "", "knots"},
		{"1e9", "", ""}, {"0x10", "", ""}, {"1/2", "", ""}, {"1_0", "", ""}, {"+1", "", ""}, {".5", "", ""}, {"5.", "", ""},
		{"-", "", ""}, {"--1", "", ""}, {"1.2.3", "", ""}, {"1", "2e9", ""}, {"Inf", "", ""}} {
		_, ok := New(c[0], c[1], c[2])
		assert.False(t, ok, c)
	}
}

// TestUnits checks the factors against their definitions: the international yard
// and pound agreement of 1959 (0.3048 m and 0.45359237 kg exactly) and standard
// gravity for the pound of force.
func TestUnits(t *testing.T) {
	factor := func(word string) *big.Rat {
		u, ok := UnitNamed(word)
		require.True(t, ok, word)
		return u.SI
	}
	times := func(a *big.Rat, n, d int64) *big.Rat { return new(big.Rat).Mul(a, big.NewRat(n, d)) }
	assert.Zero(t, factor("lbf").Cmp(new(big.Rat).Mul(factor("lb"), Gravity())))
	assert.Zero(t, factor("ft").Cmp(times(factor("in"), 12, 1)))
	assert.Zero(t, factor("m").Cmp(times(factor("cm"), 100, 1)))
	assert.Zero(t, factor("cm").Cmp(times(factor("mm"), 10, 1)))
	assert.Zero(t, factor("t").Cmp(times(factor("g"), 1_000_000, 1)))
	assert.Zero(t, factor("kN").Cmp(times(factor("daN"), 100, 1)))
	assert.Equal(t, "0.45359237", factor("lb").FloatString(8))
	assert.Equal(t, "0.3048", factor("ft").FloatString(4))
	assert.Equal(t, "9.80665", Gravity().FloatString(5))
}

func TestUnitsAreACopy(t *testing.T) {
	list := Units()
	list[0].Word = "stone"
	assert.NotEqual(t, "stone", Units()[0].Word)
	words := map[string]bool{}
	for _, u := range Units() {
		assert.False(t, words[u.Word], u.Word)
		words[u.Word] = true
		assert.Positive(t, u.SI.Sign())
		assert.NotEqual(t, None, u.Dimension)
	}
	_, ok := UnitNamed("")
	assert.False(t, ok)
}

func TestMiddle(t *testing.T) {
	q, _ := New("0.85", "0.95", "")
	assert.True(t, q.IsRange())
	assert.Equal(t, "9/10", q.Middle().RatString())
	assert.Equal(t, "17/20", q.Low.RatString(), "the ends are as they were")
	single, _ := New("92", "92", "%")
	assert.False(t, single.IsRange())
	assert.Equal(t, "23/25", single.Middle().RatString())
}
