package solve

import (
	"math"
	"math/big"

	"fairlead/solve/lp"
)

// Raise is how a height is won stroke by stroke. Lengths are in metres.
type Raise struct {
	// Height is what is asked for, Reached how much of it can be had.
	Height, Reached lp.Num
	// EndedBy is the pair that meets before Height and cannot be drawn apart again: it
	// cannot be reset, or at Reached there is no room left for it. Nil if the height is
	// reached, or Endless.
	EndedBy *Pair
	// Endless says that the height is never reached since each reset loses what a stroke
	// wins, from Reached on, or since the first stage has no way to go.
	Endless bool
	// Resets is how often the haul stops to reset: as often as the stage that runs
	// out first must, the others being reset with it or in between.
	Resets int
	// PairResets is how often each pair must be reset if it is reset only when it has
	// met, in the order of Stroke.Pairs; 0 for those that cannot be.
	PairResets []int
	// Lost is what the load sinks at all resets together.
	Lost lp.Num
	// Hauled is the rope that passes through the haulers' hands, over all strokes.
	Hauled lp.Num
}

// For counts the resets that a height in metres takes. A pair that closes G at a
// rate of r for each metre must be reset ⌈H·r/G⌉ − 1 times; where the load sinks at
// each reset, H is what it rises in all strokes, the lost metres too. Every stroke is as
// long as the first, as long as there is room to draw the stages apart so far; then strokes
// get shorter and are counted one by one. Nil if the stroke is not known.
func (s *Stroke) For(height lp.Num) *Raise {
	if !s.Known() {
		return nil
	}
	r := &Raise{Height: height, Reached: height, PairResets: make([]int, len(s.Pairs))}
	if s.End != nil && s.End.Meets.Cmp(height) < 0 {
		r.Reached, r.EndedBy = *s.End.Meets, s.End
	}
	if s.Stage != nil && s.Stage.Meets.Cmp(r.Reached) < 0 {
		r.count(s)
	}
	r.Hauled = r.Reached.Add(r.Lost).Mul(s.Travel)
	if r.Reached.Sign() > 0 {
		r.Hauled = r.Hauled.Add(s.Slip.Mul(lp.Int(int64(r.Resets) + 1)))
	}
	return r
}

// Limit gives the rise that no reset can exceed, and the pair that ends the raise there:
// End, or a stage for which no room is left before. Nil where nothing ends the raise, or
// the stroke is not known.
func (s *Stroke) Limit() (rise *lp.Num, by *Pair) {
	if !s.Known() || s.End == nil {
		return nil, nil
	}
	if r := s.For(*s.End.Meets); r.EndedBy != nil {
		return &r.Reached, r.EndedBy
	}
	return s.End.Meets, s.End
}

// count counts the resets of a raise that takes more than one stroke.
func (r *Raise) count(s *Stroke) {
	first := *s.Stage.Meets
	if top := lp.Max(first, s.room.lasting(lp.Num{}, r.Reached)); top.Cmp(r.Reached) < 0 {
		r.Reached, r.EndedBy = top, s.Stage
	}
	gain, top := first.Sub(s.SetBack), first
	if gain.Sign() > 0 {
		top = lp.Max(first, s.room.lasting(s.SetBack, r.Reached).Add(s.SetBack))
	}
	if first.Sign() == 0 || top.Cmp(r.Reached) < 0 {
		r.Reached, r.EndedBy, r.Endless = top, nil, true
		return
	}
	r.Resets = wholeFrom(r.Reached.Sub(first).Quo(gain))
	if full := wholeTo(s.room.lasting(first, r.Reached).Quo(gain)); full < r.Resets {
		r.Resets = full + r.short(s, gain.Mul(lp.Int(int64(full))))
	}
	r.Lost = s.SetBack.Mul(lp.Int(int64(r.Resets)))
	gross := r.Reached.Add(r.Lost)
	for i, p := range s.Pairs {
		if p.Resettable && p.Meets.Sign() > 0 {
			r.PairResets[i] = min(r.Resets, max(0, wholeFrom(gross.Quo(*p.Meets))-1))
		}
		if p == s.Stage {
			r.PairResets[i] = r.Resets
		}
	}
}

// reached is how near to a height, in metres, the load has reached it: strokes that get
// shorter and shorter come as near as one likes.
var reached = lp.Frac(1, 1000)

// mostShort bounds how many strokes are counted that are shorter than the first: so many,
// in a rig whose resets have a single rule to keep. Two stages have twenty or so.
const mostShort = 6000

// short counts the strokes after the last whole one, which began at a height: each is
// shorter than the one before.
func (r *Raise) short(s *Stroke, from lp.Num) (strokes int) {
	top := lp.Approx(from.Add(*s.Stage.Meets).Float())
	for strokes*len(s.room.rules) < mostShort && top.Add(reached).Cmp(r.Reached) < 0 {
		start := top.Sub(s.SetBack)
		top = start.Add(s.room.next(start))
		strokes++
	}
	return strokes
}

// wholeTo gives the greatest whole number that is not above n.
func wholeTo(n lp.Num) int { return -wholeFrom(n.Neg()) }

// wholeFrom gives the least whole number that is not below n.
func wholeFrom(n lp.Num) int {
	if !n.IsExact() {
		f := math.Ceil(n.Float() - 1e-9*math.Max(1, math.Abs(n.Float())))
		return int(math.Min(f, math.MaxInt32))
	}
	r := n.Rat()
	whole, rest := new(big.Int).DivMod(r.Num(), r.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		whole.Add(whole, big.NewInt(1))
	}
	if !whole.IsInt64() || whole.Int64() > math.MaxInt32 {
		return math.MaxInt32
	}
	return int(whole.Int64())
}
