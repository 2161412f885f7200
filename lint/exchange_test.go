package lint_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// probe lets a test be a rule.
func probe(t *testing.T, text string, check func(*lint.Pass)) {
	t.Helper()
	asked := 0
	rule := &lint.Rule{Name: "probe", Check: func(p *lint.Pass) { asked++; check(p) }}
	lint.Run([]*load.Loaded{load.Text("yard.rig", text)}, []*lint.Rule{rule})
	require.Positive(t, asked, "the rig is not legible")
}

const plainThree = `anchor head
load litter mass 100 kg
hauler team people 2
pulley top on head holds litter efficiency 80 %
hitch grab
pulley runner on grab efficiency 90 %
rope long
reeve long: litter / grab / top \ runner / team
`

// 1 + 0.9 + 0.9·0.8 = 2.62; with the two exchanged 1 + 0.8 + 0.8·0.9 = 2.52.
func TestTrialsHaveFriction(t *testing.T) {
	probe(t, plainThree, func(p *lint.Pass) {
		edits, ok := p.ExchangeHardware(p.Rig.Part("top"), p.Rig.Part("runner"))
		require.True(t, ok)
		trial, ok := p.Try(edits...)
		require.True(t, ok)
		assert.Nil(t, trial.Haul(p.Rig.Part("team")).Actual, "what a trial costs has no friction in it")
		actual, ok := trial.Actual(p, p.Rig.Part("team"))
		require.True(t, ok)
		assert.Equal(t, "63/25", actual.Advantage.Value.String())
		whole, ok := trial.Whole(p)
		require.True(t, ok)
		assert.Equal(t, "63/25", whole.Main().Actual.Advantage.Value.String())
		assert.NotEmpty(t, whole.Main().Actual.Parts)
		again, _ := trial.Whole(p)
		assert.Same(t, whole, again, "it is solved once")

		now, ok := p.HaulWith(p.Result.Main(), nil)
		require.True(t, ok)
		assert.Equal(t, "131/50", now.Advantage.Value.String())
		assert.InDelta(t, -0.0381679, lint.Gain(now.Advantage, actual.Advantage).Float(), 1e-7)
	})
}

// Asked for more than half a second's work, a rule gets nothing more.
func TestFrictionOfTrialsIsPaidFor(t *testing.T) {
	probe(t, plainThree, func(p *lint.Pass) {
		trial, ok := p.Try()
		require.True(t, ok)
		for p.AffordWhole() {
		}
		_, ok = trial.Whole(p)
		assert.False(t, ok)
		_, ok = p.HaulWith(p.Result.Main(), nil)
		for range 3 { // what is left may still pay for a little
			_, ok = p.HaulWith(p.Result.Main(), nil)
		}
		assert.False(t, ok)
		_, ok = trial.Actual(p, p.Rig.Part("team"))
		assert.False(t, ok)
		_, ok = p.Exchanged(p.Rig.Ropes[0], 2, 3)
		assert.False(t, ok)
	})
}

// A whole solution is dear where efficiencies are ranges, the dearer the longer the rope.
func TestRangesMakeAWholeSolutionDear(t *testing.T) {
	times := func(sheaves int, eta string) (n int) {
		var parts, line strings.Builder
		for i := range sheaves {
			fmt.Fprintf(&parts, "pulley up%d on head%s\npulley low%d on litter\n", i, eta, i)
			fmt.Fprintf(&line, " \\ low%d / up%d", i, i)
		}
		probe(t, "anchor head\nload litter\nhauler team\n"+parts.String()+"rope long\nreeve long: head"+line.String()+" \\ team\n",
			func(p *lint.Pass) {
				for p.AffordWhole() {
					n++
				}
			})
		return n
	}
	assert.Greater(t, times(20, " efficiency 90 %"), 50)
	assert.Less(t, times(20, " efficiency 85 to 95 %"), 10)
	assert.Greater(t, times(2, " efficiency 85 to 95 %"), 100)
}

// As a model or as a text, two nodes exchanged are the same rig.
func TestNodesExchanged(t *testing.T) {
	const tackle = `anchor head
load frame mass 100 kg
hauler team
pulley upper on head efficiency 90 %
device brake on head efficiency 50 %
pulley lower on frame efficiency 90 %
rope fall
reeve fall: frame / upper \ lower / brake (holds frame) \ lower / team
`
	probe(t, tackle, func(p *lint.Pass) {
		r := p.Rig.Ropes[0]
		res, ok := p.Exchanged(r, 1, 3)
		require.True(t, ok)
		assert.Equal(t, solve.OK, res.Status)
		edits, ok := p.ExchangeNodes(r, 1, 3)
		require.True(t, ok)
		trial, ok := p.Try(edits...)
		require.True(t, ok)
		actual, ok := trial.Actual(p, p.Rig.Part("team"))
		require.True(t, ok)
		assert.Equal(t, actual.Advantage.Value.String(), res.HaulWith(res.Main(), nil).Advantage.Value.String())
		assert.Equal(t, "upper", r.Nodes[1].Part.Name, "the rig itself stays")
	})
}

// What stands before the rigs of a file is no rig's own.
func TestHardwareOfAllRigsIsNotExchanged(t *testing.T) {
	text := strings.Replace(plainThree, "reeve", "rig one\nreeve", 1)
	probe(t, text+"rig two\n"+text[strings.Index(text, "reeve"):], func(p *lint.Pass) {
		_, ok := p.ExchangeHardware(p.Rig.Part("top"), p.Rig.Part("runner"))
		assert.False(t, ok)
		_, ok = p.ExchangeNodes(p.Rig.Ropes[0], 2, 3)
		assert.True(t, ok, "the reeving line is the rig's own")
	})
}

// What was found of one of two parts that exchange their hardware may be found of the
// other then; of others it may not.
func TestAnExchangeIsProved(t *testing.T) {
	heavy := &lint.Rule{Name: "heavy", Severity: diag.Advice, Check: func(p *lint.Pass) {
		for _, part := range p.Rig.Parts {
			if part.Values.Mass != nil && part.Kind == model.Pulley {
				p.Report(diag.Diagnostic{Place: part.NamePlace, Subject: part.Name})
			}
		}
	}}
	proved := map[string]bool{}
	asks := &lint.Rule{Name: "asks", Severity: diag.Advice, Check: func(p *lint.Pass) {
		top, runner := p.Rig.Part("top"), p.Rig.Part("runner")
		d := diag.Diagnostic{Place: top.NamePlace, Subject: "top"}
		edits, ok := p.ExchangeHardware(top, runner)
		require.True(t, ok)
		if trial, ok := p.Try(edits...); ok { // in the trial itself no further one is made
			proved["as two parts"] = p.Proves(trial, d)
			proved["exchanged"] = p.ProvesExchange(trial, d, top, runner)
			proved["with another"] = p.ProvesExchange(trial, d, top, p.Rig.Part("grab"))
		}
	}}
	f := load.Text("yard.rig", strings.Replace(plainThree, "pulley runner on grab", "pulley runner on grab mass 1 kg", 1))
	lint.Run([]*load.Loaded{f}, []*lint.Rule{heavy, asks})
	assert.Equal(t, map[string]bool{"as two parts": false, "exchanged": true, "with another": false}, proved)
}

func TestGainsInWords(t *testing.T) {
	num := func(n, d int64) *lp.Num { v := lp.Frac(n, d); return &v }
	single := func(n, d int64) solve.Force { return solve.Force{Value: num(n, d), Low: num(n, d), High: num(n, d)} }
	spread := solve.Force{Value: num(5, 2), Low: num(2, 1), High: num(3, 1)}
	assert.Equal(t, "25 % more", lint.More(single(2, 1), single(5, 2)))
	// from 2, 2.5 and 3 to 2.4, 3 and 3.3: a fifth, a fifth and a tenth
	to := solve.Force{Value: num(3, 1), Low: num(12, 5), High: num(33, 10)}
	assert.Equal(t, "at least 10 % more", lint.More(spread, to))
	assert.Equal(t, "1/5", lint.UsualGain(spread, to).String())
	assert.Equal(t, "2:1 to 3:1", lint.Advantage(spread))
	assert.Equal(t, "2.5:1", lint.Advantage(single(5, 2)))
	assert.Equal(t, "2 to 3 times", lint.Multiple(spread))
	assert.Equal(t, "45.5 %", lint.PerCent(*num(5, 11)))
	assert.Equal(t, "6.6 to 8.8 mm", lint.InUnit(*num(66, 10000), *num(88, 10000), "mm"))
	inch, ok := quantity.UnitNamed("in")
	require.True(t, ok)
	assert.Equal(t, "2 in", lint.InUnit(lp.FromRat(new(big.Rat).Mul(inch.SI, big.NewRat(2, 1))),
		lp.FromRat(new(big.Rat).Mul(inch.SI, big.NewRat(2, 1))), "in"))
	assert.NotNil(t, lint.Stocked(model.Pulley, "rescue-pulley"))
	assert.Nil(t, lint.Stocked(model.Carabiner, "rescue-pulley"))
}
