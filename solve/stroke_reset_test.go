package solve_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/solve"
)

// haulRig writes a rig that raises a load over some stages: hitch, top and runner on
// one rope, or a block with a rope of its own, with captures here and there and a
// second line that may have a knot in it.
func haulRig(d langtest.Dice) string {
	var parts, reeves strings.Builder
	part := func(format string, args ...any) { fmt.Fprintf(&parts, format+"\n", args...) }
	part("load litter")
	part("hauler team")
	line, name := "litter", "long"
	part("rope long")
	for i, n := 0, 1+d.UpTo(3); i < n; i++ {
		part("anchor head%d", i)
		holds := ""
		if d.UpTo(1+i) == 0 {
			holds = " (holds)"
		}
		if i > 0 && d.UpTo(3) == 0 {
			part("pulley block%d", i)
			fmt.Fprintf(&reeves, "reeve %s: %s / block%d\n", name, line, i)
			name = fmt.Sprintf("short%d", i)
			part("rope %s", name)
			line = fmt.Sprintf(`head%d \ block%d`, i, i)
			continue
		}
		part("hitch grab%d", i)
		part("pulley runner%d on grab%d", i, i)
		part("pulley top%d on head%d", i, i)
		line += fmt.Sprintf(` / grab%d / top%d%s \ runner%d`, i, i, holds, i)
	}
	fmt.Fprintf(&reeves, "reeve %s: %s / team\n", name, line)
	if d.UpTo(2) == 0 {
		part("anchor tree")
		part("device plate on tree")
		part("tender minder")
		part("rope safety")
		joint := ""
		if d.UpTo(2) == 0 {
			part("knot joint")
			joint = " / joint"
		}
		fmt.Fprintf(&reeves, "reeve safety: litter%s / plate (holds) \\ minder\n", joint)
	}
	return parts.String() + reeves.String()
}

// resetProgram asks, in floating point and with the motion itself as unknown, how far
// a pair can be drawn apart: at most one unit, hands off, with the loads at rest.
func resetProgram(res *solve.Result, ph *solve.Phase, pair *solve.Pair) *motionProgram {
	m := &motionProgram{bodies: map[*model.Part]int{}}
	for _, b := range res.Bodies {
		if len(b.Loads) == 0 {
			m.bodies[b.Parts[0].Root()] = len(m.cost)
			m.cost = append(m.cost, 0, 0)
		}
	}
	apart := map[int]float64{}
	m.moves(apart, pair.Upper, 1)
	m.moves(apart, pair.Lower, -1)
	for j, v := range apart {
		m.cost[j] = -v
	}
	m.rows, m.limits = append(m.rows, apart), append(m.limits, 1)
	for _, r := range res.Rig.Ropes {
		m.handsOff(r, ph)
	}
	return m
}

// moves is add for a rig whose loads are at rest.
func (m *motionProgram) moves(row map[int]float64, p *model.Part, factor float64) {
	if _, free := m.bodies[p.Root()]; p != nil && free {
		m.add(row, p, factor)
	}
}

// handsOff adds the pieces of a rope that no hand holds: none grows, and none that was
// taut in the haul goes slack.
func (m *motionProgram) handsOff(r *model.Rope, ph *solve.Phase) {
	row, taut := map[int]float64{}, false
	finish := func() {
		m.rows, m.limits = append(m.rows, row), append(m.limits, 0)
		if taut {
			back := map[int]float64{}
			for j, v := range row {
				back[j] = -v
			}
			m.rows, m.limits = append(m.rows, back), append(m.limits, 0)
		}
		row, taut = map[int]float64{}, false
	}
	for i, stroke := range r.Strokes {
		m.moves(row, r.Nodes[i].Part, -float64(stroke))
		m.moves(row, r.Nodes[i+1].Part, float64(stroke))
		for _, s := range ph.Strands {
			taut = taut || s.Rope == r && s.Index == i && s.Value.Sign() > 0
		}
		switch n := r.Nodes[i+1]; n.Role {
		case model.Grip, model.Capture:
			slip := len(m.cost)
			m.cost = append(m.cost, 0)
			sign := 1.0 // first side held
			if n.Holds == model.LastSide {
				sign = -1
			}
			row[slip] = sign
			finish()
			row[slip] = -sign
		case model.KnotTie, model.Tied:
			finish()
		}
	}
}

func TestResetsAgreeWithAnIndependentMotionProgram(t *testing.T) {
	dice, again, never, unsound := langtest.Seeded(3), 0, 0, 0
	for i := range 1500 {
		draw := haulRig
		if i%3 == 0 {
			draw = langtest.RandomRig
		}
		text := placed(t, dice, draw(dice))
		res := solved(t, text)
		for _, ph := range res.Hauls() {
			if ph.Stroke == nil || ph.Stroke.First == nil {
				continue
			}
			for _, pair := range ph.Stroke.Pairs {
				late := ph.Stroke.End != nil && pair != ph.Stroke.End && pair.Meets.Cmp(*ph.Stroke.End.Meets) >= 0
				if pair.Lower.Kind == model.Knot || late && !pair.Resettable {
					continue
				}
				want := false
				if res.Hold().Status == solve.OK {
					best, err := resetProgram(res, ph, pair).solve()
					if err != nil {
						unsound++
						continue
					}
					want = best < -0.5
				}
				if want {
					again++
				} else {
					never++
				}
				assert.Equal(t, want, pair.Resettable, "%s\n%s", told(pair), text)
			}
		}
	}
	t.Logf("%d can be reset, %d cannot, %d not solved by the library", again, never, unsound)
	assert.Greater(t, again, 500)
	assert.Greater(t, never, 500)
	assert.Less(t, unsound, 100)
}
