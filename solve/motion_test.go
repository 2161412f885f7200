package solve_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/solve"
)

// motionProgram is the other half of the mechanics, written anew for this test in
// floating point: the motion itself, found as min Σ W·u over the bodies' motions
// and the slips of the grips, such that no piece of rope grows. Its optimum is the
// pull of the tension program (duality), though no line of code is shared.
type motionProgram struct {
	bodies map[*model.Part]int
	cost   []float64
	rows   []map[int]float64
	limits []float64
}

// variable pairs: u = x[2i] - x[2i+1]; slips are single, of the sign allowed.
func newMotionProgram(res *solve.Result, hauler *model.Part) *motionProgram {
	m := &motionProgram{bodies: map[*model.Part]int{}}
	for _, p := range res.Rig.Parts {
		if !p.Moves() {
			continue
		}
		at, known := m.bodies[p.Root()]
		if !known {
			at = len(m.cost)
			m.bodies[p.Root()] = at
			m.cost = append(m.cost, 0, 0)
		}
		w := res.WeightOf(p, hauler != nil).Float()
		m.cost[at] += w
		m.cost[at+1] -= w
	}
	for _, r := range res.Rig.Ropes {
		m.rope(r, hauler)
	}
	return m
}

func (m *motionProgram) rope(r *model.Rope, hauler *model.Part) {
	row, limit, dropped := map[int]float64{}, 0.0, false
	finish := func() {
		if !dropped {
			m.rows, m.limits = append(m.rows, row), append(m.limits, limit)
		}
		row, limit, dropped = map[int]float64{}, 0, false
	}
	end := func(n model.Node) {
		switch {
		case n.Role != model.Hauled:
		case n.Part == hauler:
			limit--
		case hauler == nil:
			dropped = true
		}
	}
	end(r.Nodes[0])
	for i, stroke := range r.Strokes {
		m.add(row, r.Nodes[i].Part, -float64(stroke))
		m.add(row, r.Nodes[i+1].Part, float64(stroke))
		n := r.Nodes[i+1]
		if n.Role == model.KnotTie {
			finish()
		}
		if n.Role == model.Grip || n.Role == model.Capture {
			slip := len(m.cost)
			m.cost = append(m.cost, 0)
			sign := 1.0 // first side held: m = -x, x ≥ 0
			if n.Holds == model.LastSide {
				sign = -1
			}
			row[slip] = sign
			finish()
			row[slip] = -sign
		}
	}
	end(r.Nodes[len(r.Nodes)-1])
	finish()
}

func (m *motionProgram) add(row map[int]float64, p *model.Part, factor float64) {
	if p == nil || !p.Moves() {
		return
	}
	at := m.bodies[p.Root()]
	row[at] += factor
	row[at+1] -= factor
}

func (m *motionProgram) solve() (optimum float64, err error) {
	optimum, _, err = m.best()
	return optimum, err
}

// best gives the motion too.
func (m *motionProgram) best() (optimum float64, x []float64, err error) {
	if len(m.rows) == 0 {
		return 0, nil, errUnsound
	}
	cost, at := m.touched()
	n := len(cost)
	cost = append(cost, make([]float64, len(m.rows))...)
	a := mat.NewDense(len(m.rows), len(cost), nil)
	for i, row := range m.rows {
		for j, v := range row {
			if v != 0 {
				a.Set(i, at[j], v)
			}
		}
		a.Set(i, n+i, 1)
	}
	defer func() {
		if recover() != nil {
			err = errUnsound
		}
	}()
	optimum, found, err := lp.Simplex(cost, a, m.limits, 1e-10, nil)
	if err != nil {
		return optimum, nil, err
	}
	x = make([]float64, len(m.cost))
	for j, k := range at {
		x[j] = found[k]
	}
	return optimum, x, nil
}

// touched leaves out what no rope touches and weighs nothing: the library refuses
// empty columns.
func (m *motionProgram) touched() (cost []float64, at map[int]int) {
	at = map[int]int{}
	used := map[int]bool{}
	for _, row := range m.rows {
		for j, v := range row {
			used[j] = used[j] || v != 0
		}
	}
	for j, c := range m.cost {
		if used[j] || c != 0 {
			at[j] = len(cost)
			cost = append(cost, c)
		}
	}
	return cost, at
}

var errUnsound = errors.New("the library gave up")

func TestPullAgreesWithAnIndependentMotionProgram(t *testing.T) {
	dice, optima, infeasible, unbounded, unsound := langtest.Seeded(5), 0, 0, 0, 0
	for range 4000 {
		text := langtest.RandomRig(dice)
		res := solved(t, text)
		for _, ph := range res.Phases {
			if len(ph.Sagging) > 0 {
				continue // solved without some weights, as the other program is not
			}
			got, err := newMotionProgram(res, ph.Hauler).solve()
			switch {
			case err == nil:
				optima++
				if assert.True(t, ph.Solved(), "%s: the other program finds %v\n%s", ph.Name, got, text) {
					assert.InDelta(t, got, ph.Pull.Float(), 1e-7, "%s\n%s", ph.Name, text)
				}
			case errors.Is(err, lp.ErrInfeasible):
				infeasible++
				assert.Contains(t, []solve.Status{solve.Jammed, solve.Falls, solve.RunsUp, solve.Unbalanced}, ph.Status, text)
			case errors.Is(err, lp.ErrUnbounded):
				unbounded++
				assert.Contains(t, []solve.Status{solve.Falls, solve.RunsUp, solve.Unbalanced}, ph.Status, "%s\n%s", ph.Name, text)
			default:
				unsound++
			}
		}
	}
	t.Logf("%d optima, %d infeasible, %d unbounded, %d not solved by the library", optima, infeasible, unbounded, unsound)
	assert.Greater(t, optima, 500)
	assert.Greater(t, unbounded, 500)
}
