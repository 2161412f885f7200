package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Stroke is how far a haul goes until parts meet, and which of them can be drawn
// apart again. Lengths are in metres along the haul line.
type Stroke struct {
	// Load is the body whose rise all figures are counted in: the one that the
	// advantage is about, else the reference load's.
	Load *Body
	// Pairs are the parts that close in on each other, one pair for every two
	// bodies (all fixed parts together count as one), the first to meet first; those
	// whose gap is unknown come last, in the order of the reeving lines.
	Pairs []*Pair
	// Missing are the parts whose positions a pair needs, in file order; of parts
	// clipped to one another, the one that the others are on. If there are any, or
	// Against, only Load, Travel and each pair's Rate are sure.
	Missing []*model.Part
	// Against are the strokes that the positions of their ends contradict.
	Against []Strand
	// First is the pair that meets first, and Rise how far the load rises until
	// then: the stroke. Hauled is the rope that it takes. Nil where unknown, or where
	// nothing closes in on anything.
	First        *Pair
	Rise, Hauled *lp.Num
	// Travel is the rope hauled for one metre that the load rises.
	Travel lp.Num
	// Confined are the grips that pull between a capture and its bend, whatever is known
	// of positions.
	Confined []Confined
	// Stage is the first pair to meet that can be reset: the stage that runs out
	// first. End is the first that cannot be reset: it ends the raise when the load
	// has risen by End.Meets.
	Stage, End *Pair
	// SetBack is how far the load sinks at each reset until its captures bite, SettingBack
	// the captures that settle it, in file order.
	SetBack     lp.Num
	SettingBack []*model.Part
	// Slip is the rope that is hauled at the start of each stroke until the grips that
	// pull, and that let go at each reset, have slipped their set-back and hold. It is in
	// Hauled, and what closes meanwhile comes off the way to each Meets.
	Slip lp.Num
	// Slipping are those grips, in file order.
	Slipping []*model.Part
	// Together are the start positions at which all stages run out at once; nil with
	// fewer than two stages, or where no such positions fit the drawing.
	Together *Together
	// room is what resets are limited by; nil without stages.
	room *room
	// Raise is the height that "raise" asks for; nil where nothing asks or is known.
	Raise *Raise
}

// Pair is two parts that close in on each other.
type Pair struct {
	Lower, Upper *model.Part
	// Rope and Index are a stroke between them: theirs, or that which leaves the load
	// for its first fixed bend.
	Rope  *model.Rope
	Index int
	// Gap is the way between them at the start less the lengths of both; 0 where
	// they overlap. Nil if unknown.
	Gap *lp.Num
	// Rate is how much of it closes for each metre that the load rises.
	Rate lp.Num
	// Meets is how far the load has risen when they meet, without a reset; 0 if they
	// meet before the grips that pull hold.
	Meets *lp.Num
	// Resettable says that they can be drawn apart again: hands off, the rig is
	// held, and with every load at rest, captures holding and the ropes as taut as
	// in the haul some motion opens the gap. False while Gap is unknown; of pairs that
	// meet only after the raise has ended it may be false without need.
	Resettable bool

	lower, upper int // bodies, or ground
	// apart is the gap as the positions have it, negative where the parts overlap.
	apart lp.Num
	// slip is how much of it closes before the grips that pull hold.
	slip lp.Num
}

// Known says whether the stroke could be computed.
func (s *Stroke) Known() bool { return s != nil && len(s.Missing) == 0 && len(s.Against) == 0 }

// measure computes what positions and lengths give: the stroke of every haul that
// raises, and the rope needed.
func (s *system) measure(res *Result) {
	for _, ph := range res.Hauls() {
		if ph.Status == OK {
			ph.Stroke = s.stroke(ph, res.Hold())
		}
	}
	var height *lp.Num
	if main := res.Main(); main != nil {
		height = s.wanted(main.Stroke)
	}
	res.Rope = s.ropeNeeds(res.Main(), height)
}

// stroke computes that of a haul that raises; nil if no load of it does so in a way
// that is known.
func (s *system) stroke(ph, hold *Phase) *Stroke {
	load := s.counted(ph)
	if load == nil {
		return nil
	}
	c := s.newClosing(ph, load)
	for _, r := range s.rig.Ropes {
		if !r.Broken {
			c.addRope(r)
		}
	}
	c.bites = s.biting(ph, hold)
	stroke := &Stroke{Load: load.Body, Travel: load.Rise.Inv(), Slip: c.bites.rope(load), Slipping: c.bites.grips, Confined: c.addConfined(), Pairs: c.sorted(load), Missing: c.lacking(), Against: c.against}
	if !stroke.Known() {
		return stroke
	}
	if hold.Status == OK {
		s.resets(ph, c.tight, stroke.Pairs)
		stroke.SetBack, stroke.SettingBack = s.setBack(load.Body)
	}
	stroke.name()
	stroke.room = c.newRoom(stroke)
	stroke.Together = s.together(stroke)
	if height := s.wanted(stroke); height != nil {
		stroke.Raise = stroke.For(*height)
	}
	return stroke
}

// counted gives the motion of the body whose rise the figures are counted in; nil
// if it does not rise.
func (s *system) counted(ph *Phase) *Motion {
	if m := s.raised(ph); m != nil {
		return m
	}
	body := s.pulled.of(s.reference)
	if body < 0 || ph.Motion[body].Free || ph.Motion[body].Rise.Sign() <= 0 {
		return nil
	}
	return &ph.Motion[body]
}

// wanted gives the height that "raise" asks for of the body counted in; nil if
// nothing asks.
func (s *system) wanted(stroke *Stroke) *lp.Num {
	if stroke == nil || !s.named || !slices.Contains(stroke.Load.Parts, s.reference) {
		return nil
	}
	height := lp.FromRat(s.reference.Values.Raise.Middle())
	return &height
}

// GivenBack gives what set-backs take of a whole stroke, in metres that the load would
// rise by without them: whole until the first parts meet, back what the load sinks when
// hands let go then, and what closes before the grips that pull hold. Known is false
// where nothing meets.
func (s *Stroke) GivenBack() (whole, back lp.Num, known bool) {
	if !s.Known() || s.First == nil {
		return whole, back, false
	}
	whole = s.First.Gap.Quo(s.First.Rate)
	return whole, whole.Sub(*s.First.Meets).Add(s.SetBack), true
}

// name picks the pairs that have a name of their own out of the sorted ones.
func (s *Stroke) name() {
	if len(s.Pairs) == 0 {
		return
	}
	s.First = s.Pairs[0]
	hauled := s.First.Meets.Mul(s.Travel).Add(s.Slip)
	s.Rise, s.Hauled = s.First.Meets, &hauled
	for _, p := range s.Pairs {
		if p.Resettable && s.Stage == nil {
			s.Stage = p
		}
		if !p.Resettable && s.End == nil {
			s.End = p
		}
	}
}
