package report_test

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/solve/report"
)

// machineRig are some fields of the machine output, as a reader would take them.
type machineRig struct {
	Name     string
	Ideal    *struct{ Value float64 }
	Actual   *struct{ Value, Low, High float64 }
	PullN    *struct{ Value, Low, High float64 } `json:"pull_n"`
	Friction *string
	Parts    []machinePart
	Held     struct {
		Without map[string]string
		Losses  []struct{ Kind, Part, Answer string }
	}
	Lower   []struct{ Parts []machinePart }
	Weakest *struct {
		Part, Phase string
		Factor      float64
	}
}

type machinePart struct {
	Name, Phase string
	HighN       *float64 `json:"high_n"`
	StrengthN   *float64 `json:"strength_n"`
	Factor      *float64
}

func machineOutput(t *testing.T, path string) []machineRig {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, report.JSON(&out, solved(t, path)))
	var read struct{ Rigs []machineRig }
	require.NoError(t, json.Unmarshal(out.Bytes(), &read))
	return read.Rigs
}

// What is said of the whole rig follows from what is said of its parts.
func TestMachineOutputAgreesWithItself(t *testing.T) {
	weak, rubbing := 0, 0
	for _, folder := range []string{"testdata", "../../examples"} {
		for _, r := range machineOutput(t, folder) {
			parts := r.Parts
			for _, l := range r.Lower {
				parts = append(parts, l.Parts...)
			}
			least := math.Inf(1)
			for _, p := range parts {
				if p.Factor != nil {
					least = math.Min(least, *p.Factor)
					assert.InEpsilon(t, *p.StrengthN / *p.HighN, *p.Factor, 1e-9, "%s: %s", r.Name, p.Name)
				}
			}
			if r.Weakest != nil {
				weak++
				assert.InEpsilon(t, least, r.Weakest.Factor, 1e-9, r.Name)
			} else {
				assert.Equal(t, math.Inf(1), least, r.Name)
			}
			if r.Actual != nil {
				rubbing++
				assert.Equal(t, "known", *r.Friction, r.Name)
				assert.LessOrEqual(t, r.Actual.High, r.Ideal.Value, r.Name)
				assert.LessOrEqual(t, r.Actual.Low, r.Actual.Value, r.Name)
			}
			for _, l := range r.Held.Losses {
				if answer, whole := r.Held.Without[l.Part]; whole && l.Kind != "hold" && l.Kind != "clip" && l.Kind != "tie" {
					assert.Equal(t, l.Answer, answer, "%s without %s", r.Name, l.Part)
				}
			}
		}
	}
	assert.Greater(t, weak, 4)
	assert.Greater(t, rubbing, 5)
}

// With 92 % at both pulleys three parts of the pull are 1, 0.92 and 0.92² of it.
func TestMachineOutputWithFriction(t *testing.T) {
	r := machineOutput(t, "testdata/friction.rig")[0]
	advantage := 1 + 0.92 + 0.92*0.92
	assert.InDelta(t, advantage, r.Actual.Value, 1e-9)
	assert.InDelta(t, 180*9.80665/advantage, r.PullN.Value, 1e-6)
	assert.Equal(t, "grab", r.Weakest.Part)
	assert.InDelta(t, 7000/(180*9.80665*(1-0.92*0.92/advantage)), r.Weakest.Factor, 1e-9)
}
