package solve_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// placed gives every body and fixed point of a random rig a height that agrees with
// all strokes, and some parts a length or a set-back. The dice decide how far apart
// they are; where strokes lead round in a circle, all on it are at one height.
func placed(t require.TestingT, dice langtest.Dice, text string) string {
	rig := read(t, text)
	height := map[*model.Part]int{}
	for _, p := range rig.Parts {
		height[p.Root()] = dice.UpTo(4)
	}
	for range 8 { // spread them out, as far as a few rounds go
		eachStrand(rig, func(lower, upper *model.Part) {
			height[upper] = max(height[upper], height[lower]+dice.UpTo(3))
		})
	}
	level(rig, height)
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		words := strings.Fields(line)
		if len(words) < 2 || rig.Part(words[1]) == nil || words[0] == "expect" {
			continue
		}
		p := rig.Part(words[1])
		if p.Kind.IsPerson() || p.Kind.IsLine() {
			continue
		}
		if p.On == nil {
			lines[i] += fmt.Sprintf(" at %d m", height[p])
		}
		if p.Kind != model.Anchor && dice.UpTo(6) == 0 {
			lines[i] += fmt.Sprintf(" length %d cm", 10+10*dice.UpTo(4))
		}
		if p.Kind == model.Pulley && dice.UpTo(3) == 0 {
			lines[i] += fmt.Sprintf(" set-back %d cm", 5*dice.UpTo(4))
		}
	}
	return strings.Join(lines, "\n")
}

// level lifts what a stroke needs higher; what a circle of strokes joins ends up at
// one height.
func level(rig *model.Rig, height map[*model.Part]int) {
	for {
		settled := true
		eachStrand(rig, func(lower, upper *model.Part) {
			if height[upper] < height[lower] {
				height[upper], settled = height[lower], false
			}
		})
		if settled {
			return
		}
	}
}

func eachStrand(rig *model.Rig, do func(lower, upper *model.Part)) {
	for _, r := range rig.Ropes {
		for i, s := range r.Strokes {
			lower, upper := r.Nodes[i].Part, r.Nodes[r.After(i)].Part
			if s == model.Down {
				lower, upper = upper, lower
			}
			if !lower.Root().Kind.IsPerson() && !upper.Root().Kind.IsPerson() {
				do(lower.Root(), upper.Root())
			}
		}
	}
}

func TestRandomStrokes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dice := rapidDice{t}
		checkStrokes(t, placed(t, dice, langtest.RandomRig(dice)), &strokeCensus{})
		checkStrokes(t, placed(t, dice, haulRig(dice)), &strokeCensus{})
	})
}

type strokeCensus struct{ strokes, resettable, stuck, raises, together, set, short, endless, stepped, unsure int }

func TestSeededStrokesOfEverySort(t *testing.T) {
	dice, seen := langtest.Seeded(11), strokeCensus{}
	for range 1500 {
		checkStrokes(t, placed(t, dice, langtest.RandomRig(dice)), &seen)
		checkStrokes(t, placed(t, dice, haulRig(dice)), &seen)
	}
	t.Logf("%+v", seen)
	assert.Greater(t, seen.strokes, 500)
	assert.Greater(t, seen.resettable, 50)
	assert.Greater(t, seen.stuck, 50)
	assert.Greater(t, seen.raises, 50)
	assert.Greater(t, seen.together, 2)
	assert.Greater(t, seen.set, 2)
	assert.Greater(t, seen.short, 20)
	assert.Greater(t, seen.endless, 20)
	assert.Greater(t, seen.stepped, 500)
	assert.Less(t, seen.unsure, 300)
}

func checkStrokes(t require.TestingT, text string, seen *strokeCensus) {
	res := solved(t, text)
	for _, ph := range res.Hauls() {
		s := ph.Stroke
		if ph.Status != solve.OK || s == nil || s.First == nil {
			continue
		}
		require.Empty(t, s.Missing, text)
		require.Empty(t, s.Against, text)
		seen.strokes++
		checkMoved(t, res, ph, text)
		checkRaises(t, res, ph, text, seen)
		checkTogether(t, res, s, text, seen)
		if s.SetBack.Sign() > 0 {
			seen.set++
		}
	}
}

// checkMoved: after one stroke no strand between parts that move in a known way has
// a length below that of its parts, unless they overlapped from the start, and the
// first pair has met exactly.
func checkMoved(t require.TestingT, res *solve.Result, ph *solve.Phase, text string) {
	s := ph.Stroke
	motion, free := map[*model.Part]lp.Num{}, map[*model.Part]bool{}
	for _, m := range ph.Motion {
		root := m.Body.Parts[0].Root()
		motion[root], free[root] = m.Rise, m.Free
	}
	if joint := res.Rig.Part("joint"); joint != nil { // on the slack line that the load draws along
		motion[joint], free[joint] = motion[res.Rig.Part("litter")], false
	}
	gap := func(lower, upper *model.Part, hauled lp.Num) lp.Num {
		down, _ := res.Position(lower)
		up, _ := res.Position(upper)
		down, up = down.Add(motion[lower.Root()].Mul(hauled)), up.Add(motion[upper.Root()].Mul(hauled))
		for _, p := range []*model.Part{lower, upper} {
			if p.Values.Length != nil {
				up = up.Sub(lp.FromRat(p.Values.Length.Middle()))
			}
		}
		return up.Sub(down)
	}
	for _, r := range res.Rig.Ropes {
		for i, stroke := range r.Strokes {
			lower, upper := r.Nodes[i].Part, r.Nodes[r.After(i)].Part
			if stroke == model.Down {
				lower, upper = upper, lower
			}
			person := lower.Root().Kind.IsPerson() || upper.Root().Kind.IsPerson()
			if person || free[lower.Root()] || free[upper.Root()] || lower.Root() == upper.Root() {
				continue
			}
			least := lp.Min(lp.Num{}, gap(lower, upper, lp.Num{}))
			assert.GreaterOrEqual(t, gap(lower, upper, *s.Hauled).Cmp(least), 0, "%s %d\n%s", r.Line.Name, i, text)
		}
	}
	if s.First.Gap.Sign() > 0 {
		assert.Zero(t, gap(s.First.Lower, s.First.Upper, *s.Hauled).Sign(), "the first pair meets\n%s", text)
	}
}

// checkRaises: a raise done stroke by stroke, metre for metre, takes as many resets.
func checkRaises(t require.TestingT, res *solve.Result, ph *solve.Phase, text string, seen *strokeCensus) {
	s := ph.Stroke
	for _, p := range s.Pairs {
		if p.Resettable {
			seen.resettable++
		} else {
			seen.stuck++
		}
	}
	for i, cm := range []int64{40, 130, 700, 2500} {
		height, slowly := lp.Frac(cm, 100), i%4 == seen.strokes%4 // one of the heights
		r := s.For(height)
		assert.LessOrEqual(t, r.Reached.Cmp(height), 0, text)
		if r.EndedBy == nil && !r.Endless {
			assert.Equal(t, height.String(), r.Reached.String(), text)
		}
		if slowly && s.Stage != nil && s.SetBack.IsZero() && s.Rise.Sign() > 0 && (s.Stage == s.First || r.Resets > 0) && res.Rig.Part("joint") == nil {
			checkByStrokes(t, res, ph, r, text, seen)
		}
		if r.Endless {
			seen.endless++
		}
		if r.Resets == 0 {
			continue
		}
		seen.raises++
		for i, p := range s.Pairs {
			assert.LessOrEqual(t, r.PairResets[i], r.Resets, text)
			if p == s.Stage {
				assert.Equal(t, r.Resets, r.PairResets[i], text)
			}
		}
	}
}

// checkByStrokes: a raise done stroke by stroke takes as many resets, and comes as far.
func checkByStrokes(t require.TestingT, res *solve.Result, ph *solve.Phase, r *solve.Raise, text string, seen *strokeCensus) {
	height := r.Height.Float()
	if end := ph.Stroke.End; end != nil {
		height = math.Min(height, end.Meets.Float())
	}
	resets, top, ok := newStrokes(res, ph).raise(r.Reached.Float())
	_, most, too := newStrokes(res, ph).raise(height)
	if !ok || !too {
		seen.unsure++
		return
	}
	seen.stepped++
	assert.Equal(t, r.Resets, resets, "%v\n%s", r.Height, text)
	assert.InDelta(t, r.Reached.Float(), math.Min(most, height), 2e-3, "%v\n%s", r.Height, text)
	if ph.Stroke.Stage.Meets.Float()*float64(resets+1) > top+2e-3 {
		seen.short++
	}
}

// checkTogether: from the start positions that are given, all stages have closed by
// the same rise, and no pair has before.
func checkTogether(t require.TestingT, res *solve.Result, s *solve.Stroke, text string, seen *strokeCensus) {
	if s.Together == nil {
		return
	}
	seen.together++
	again := text
	for _, start := range s.Together.Starts {
		root := start.Part.Root()
		shift := start.At
		old, _ := res.Position(start.Part)
		at, _ := res.Position(root)
		at = at.Add(shift.Sub(old)).Mul(lp.Int(1000000))
		lines := strings.Split(again, "\n")
		for i, line := range lines {
			words := strings.Fields(line)
			if len(words) > 1 && words[1] == root.Name && words[0] != "reeve" {
				before, after, _ := strings.Cut(line, " at ")
				_, rest, _ := strings.Cut(after, " m")
				lines[i] = before + fmt.Sprintf(" at %.6f m", at.Float()/1000000) + rest
			}
		}
		again = strings.Join(lines, "\n")
	}
	for _, ph := range solved(t, again).Hauls() {
		if ph.Stroke == nil || ph.Stroke.Load.Index != s.Load.Index || !ph.Stroke.Known() || len(res.Hauls()) > 1 {
			continue
		}
		for _, p := range ph.Stroke.Pairs {
			if p.Resettable {
				assert.InDelta(t, s.Together.Rise.Float(), p.Meets.Float(), 1e-4, "%s\n%s", text, again)
			} else {
				assert.GreaterOrEqual(t, p.Meets.Float(), s.Together.Rise.Float()-1e-4, text)
			}
		}
	}
}
