package report

import (
	"encoding/json"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/solve"
	"fairlead/solve/lp"
)

func TestNumbersAreReadAloud(t *testing.T) {
	for want, n := range map[string]lp.Num{
		"0": lp.Approx(0), "3": lp.Int(3), "1/3": lp.Frac(1, 3), "-5/2": lp.Frac(-5, 2),
		"≈0.333": lp.Frac(33333, 100000), "≈1.41": lp.Approx(1.41421356), "531441": lp.Int(531441),
		"≈1": lp.Approx(0.99999999), "≈0.05": lp.Approx(0.05), "≈1235": lp.Approx(1234.56),
	} {
		assert.Equal(t, want, number(n))
	}
	assert.Equal(t, "3 : 1", ratio(lp.Int(3)))
	assert.Equal(t, "5 : 2", ratio(lp.Frac(5, 2)))
	assert.Equal(t, "≈ 2.83 : 1", ratio(lp.Approx(2.8284)))
}

func TestMeasuresKeepThreeDigits(t *testing.T) {
	for want, n := range map[string]lp.Num{
		"0.490": lp.Frac(49, 100), "9.99": lp.Approx(9.994), "10.0": lp.Approx(9.996), "1.00": lp.Approx(0.9996),
		"12346": lp.Approx(12345.6), "0.000123": lp.Approx(0.000123), "0": lp.Int(0),
	} {
		assert.Equal(t, want, decimal(float(n)))
	}
}

func TestOpenForcesSayTheirEnds(t *testing.T) {
	half, none, all := lp.Frac(1, 2), lp.Int(0), lp.Int(1)
	assert.Equal(t, "1/2 (0 to 1)", span(solve.Force{Value: &half, Low: &none, High: &all}, number))
	assert.Equal(t, "1/2 or more", span(solve.Force{Value: &half, Low: &half}, number))
	assert.Equal(t, "1/2", span(solve.Force{Value: &half, Low: &half, High: &half}, number))
	assert.Equal(t, "unknown", span(solve.Force{}, number))
}

// Machine output holds a number, whatever its size, and its exact value.
func TestNumIsAlwaysANumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := func(label string) *big.Int {
			digits := rapid.StringMatching(`[1-9][0-9]{0,120}`).Draw(t, label)
			n, _ := new(big.Int).SetString(digits, 10)
			return n
		}
		exact := new(big.Rat).SetFrac(part("above"), part("below"))
		n := lp.FromRat(exact)
		text, err := json.Marshal(NumOf(&n))
		require.NoError(t, err)
		var back struct {
			Ratio string
			Value json.Number
			Exact bool
		}
		require.NoError(t, json.Unmarshal(text, &back))
		assert.Equal(t, exact.RatString(), back.Ratio)
		assert.True(t, back.Exact)
		read, ok := new(big.Rat).SetString(back.Value.String())
		require.True(t, ok, back.Value)
		// Twelve significant digits: off by less than 10^-11 of the value.
		off := new(big.Rat).Quo(new(big.Rat).Sub(read, exact), exact)
		assert.Negative(t, off.Abs(off).Cmp(big.NewRat(1, 100_000_000_000)))
	})
}

func TestNumOfWhatIsNotExactOrNotKnown(t *testing.T) {
	root := lp.Approx(1.4142135623730951)
	text, err := json.Marshal([]*Num{NumOf(nil), NumOf(&root), AdvantageOf(&root)})
	require.NoError(t, err)
	const inexact = `{"ratio":null,"value":1.41421356237,"exact":false}`
	assert.Equal(t, `[null,`+inexact+`,`+inexact+`]`, string(text))
	five := lp.Frac(5, 2)
	text, err = json.Marshal(AdvantageOf(&five))
	require.NoError(t, err)
	assert.Equal(t, `{"ratio":"5:2","value":2.5,"exact":true}`, string(text))
}
