package solve

import (
	"math"
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Turning is a fixed point that is pulled one way in one state of the rig and another way in
// another.
type Turning struct {
	Point *model.Part
	// Degrees is the angle between the two, the least that can be where it is not said to
	// which side a rope leans.
	Degrees  lp.Num
	From, To Pulled
}

// Pulled is the net force on a fixed point in one state.
type Pulled struct {
	// Phase is nil once something is lost: After then says what.
	Phase *Phase
	After Lost
	// Force is its size in fractions of the reference weight.
	Force lp.Num
	// Off is by how many degrees it leans from straight down the haul line: 180 is up.
	Off lp.Num
}

// Turnings gives the anchors and focal points whose net force turns, each with the two
// states that are farthest apart, in file order. One says of an angle in degrees whether
// it counts as none. With caught, the states count in which slack rope has caught the
// load once something is lost.
//
// A state counts only where the direction is known and statics leaves no force on the
// point open.
func (r *Result) Turnings(caught bool, one func(degrees lp.Num) bool) []Turning {
	if r.Status == Unsolved {
		return nil
	}
	var list []Turning
	for _, point := range r.Rig.Parts {
		if point.Kind != model.Anchor && point.Kind != model.Focal || point.Root() != point {
			continue
		}
		c := r.compassOf(point)
		if !c.mayTurn() {
			continue
		}
		states := c.phases(r)
		if caught && len(states) > 0 && c.slack {
			states = append(states, c.losses(r)...)
		}
		if turned, ok := c.turning(states); ok && !one(turned.Degrees) {
			list = append(list, turned)
		}
	}
	return list
}

// compass finds the directions in which a fixed point is pulled.
type compass struct {
	point *model.Part
	// touches are the nodes at the point and at all that is clipped to it, legs those that
	// come from it.
	touches []touch
	legs    []*model.Part
	// leans says that something may stand at an angle to the haul line, slack that slack
	// rope is tied to the point, up and down that a strand runs that way from it.
	leans, slack, up, down bool
}

func (r *Result) compassOf(point *model.Part) *compass {
	c := &compass{point: point}
	for _, p := range r.Rig.Parts {
		if p.Kind == model.Leg && p.Values.From == point {
			c.legs = append(c.legs, p)
		}
	}
	c.leans = len(c.legs) > 0
	for _, rope := range r.Rig.Ropes {
		for i, n := range rope.Nodes {
			if !rope.Broken && n.Part != nil && n.Part.Root() == point {
				c.touch(touch{rope, i})
			}
		}
	}
	return c
}

func (c *compass) touch(at touch) {
	c.touches = append(c.touches, at)
	r := at.rope
	c.leans = c.leans || r.Nodes[at.node].Angle != nil
	note := func(way model.Stroke) {
		c.slack = c.slack || way == model.Slack
		c.up = c.up || way == model.Up
		c.down = c.down || way == model.Down
	}
	if in := r.Before(at.node); in >= 0 {
		note(-r.Strokes[in])
	}
	if at.node < len(r.Strokes) {
		note(r.Strokes[at.node])
	}
}

// mayTurn says whether two forces on the point could have different directions, which is
// seen without solving anything.
func (c *compass) mayTurn() bool {
	return len(c.touches)+len(c.legs) > 1 && (c.leans || c.slack || c.up && c.down)
}

// state is all that draws the point in one state. Sides counts the forces of which it is
// not said to which side they lean.
type state struct {
	Pulled
	groups []group
	sides  int
}

// phases gives the states of the phases in which the direction is known.
func (c *compass) phases(r *Result) []state {
	var list []state
	for _, ph := range r.Bearing() {
		if s, known := c.in(r, ph); known {
			list = append(list, s)
		}
	}
	return list
}

// in gives what draws the point in a phase; known is false if a direction is not, or if
// statics leaves a force on it open.
func (c *compass) in(r *Result, ph *Phase) (s state, known bool) {
	if !ph.Solved() || ph.usual == nil || c.open(ph) {
		return s, false
	}
	d := r.drawnIn(ph)
	groups, known := d.groups(c.point)
	if !known {
		return s, false
	}
	if w := d.weight(c.point); w.Sign() != 0 {
		groups = append(groups, group{by: c.point, leans: []lean{{w.Float(), math.Pi, -1, false}}})
	}
	for _, leg := range c.legs {
		leans, known := c.leg(r, d, leg)
		if !known {
			return s, false
		}
		groups = append(groups, group{by: leg, leans: leans})
	}
	return state{Pulled{Phase: ph}, groups, d.sides}, true
}

// open says whether statics leaves a force open that some rope puts on the point.
func (c *compass) open(ph *Phase) bool {
	return slices.ContainsFunc(ph.Strands, func(s Strand) bool {
		return s.Ranges() && slices.ContainsFunc(c.touches, func(at touch) bool {
			return at.rope == s.Rope && (s.Index == at.node || s.Index == at.rope.Before(at.node))
		})
	})
}

// leg gives the force of a leg on the anchor that it comes from: toward its focal point,
// which hangs down from it. Not known of a strut, where the share is open, and where the
// focal point is not drawn down.
func (c *compass) leg(r *Result, d *drawn, leg *model.Part) (leans []lean, known bool) {
	parts, _ := d.phase.Loads()
	load, to := parts[leg.Index], leg.Values.To
	switch {
	case !load.Known() || load.Ranges() || leg.Values.Strut || to == nil:
		return nil, false
	case load.Value.IsZero():
		return nil, true
	}
	below, known := r.compassOf(to).in(r, d.phase)
	if !known || below.net(0).up >= 0 {
		return nil, false
	}
	if leg.Values.Angle == nil || leg.Values.Angle.Middle().Sign() == 0 {
		return []lean{{load.Value.Float(), math.Pi, -1, false}}, true
	}
	return d.leaning(load.Value.Float(), math.Pi-math.Abs(radians(leg.Values.Angle.Middle())), false), true
}

// net adds up the forces for one choice of the sides to which they lean, a bit each.
func (s *state) net(sides int) vector {
	var net vector
	for _, g := range s.groups {
		v := g.vector(sides)
		net.up += v.up
		net.across += v.across
	}
	return net
}

// turning gives the two states that are surely farthest apart.
func (c *compass) turning(states []state) (t Turning, ok bool) {
	for i := range states {
		for j := range i {
			degrees, a, b := apart(&states[j], &states[i])
			if degrees > t.Degrees.Float() {
				t = Turning{Point: c.point, Degrees: lp.Approx(degrees), From: states[j].pulled(a), To: states[i].pulled(b)}
				ok = true
			}
		}
	}
	return t, ok
}

// apart gives the least angle between the net forces of two states over all sides to which
// ropes may lean, and those forces; 0 if there is none in one of them, or if there are too
// many ways.
func apart(a, b *state) (degrees float64, x, y vector) {
	if a.sides+b.sides > mostSides {
		return 0, x, y
	}
	degrees = math.Inf(1)
	for sides := range 1 << (a.sides + b.sides) {
		u, v := a.net(sides&(1<<a.sides-1)), b.net(sides>>a.sides)
		if u.size() < nothing || v.size() < nothing {
			return 0, u, v
		}
		if angle := between(u, v); angle < degrees {
			degrees, x, y = angle, u, v
		}
	}
	return degrees, x, y
}

// pulled gives the state with its net force.
func (s *state) pulled(net vector) Pulled {
	d := s.Pulled
	d.Force, d.Off = lp.Approx(net.size()), lp.Approx(between(net, vector{up: -1}))
	return d
}
