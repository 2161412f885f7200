package solve

import (
	"math"
	"math/big"
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
	From, To Drawn
}

// Drawn is the net force on a fixed point in one state.
type Drawn struct {
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
// A state counts only where the direction is known: along the haul line, at an end by the
// angle that is written, at a fixed bend if one of its strands lies in the haul line. A state
// whose forces statics leaves open does not count.
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
		if c == nil {
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
	*layout
	point *model.Part
	// touches are the nodes at the point and at all that is clipped to it.
	touches []touch
	legs    []*model.Part
	// slack says that slack rope is tied to it.
	slack bool
}

// compassOf gives the compass of a point; nil if no two forces on it can point
// different ways, which is seen without solving anything.
func (r *Result) compassOf(point *model.Part) *compass {
	c := &compass{layout: r.system.held.layout, point: point}
	for _, p := range r.Rig.Parts {
		if p.Kind == model.Leg && p.Values.From == point {
			c.legs = append(c.legs, p)
		}
	}
	ways := map[model.Stroke]bool{}
	leaning := len(c.legs) > 0
	for _, rope := range r.Rig.Ropes {
		if rope.Broken {
			continue
		}
		for i, n := range rope.Nodes {
			if n.Part == nil || n.Part.Root() != point {
				continue
			}
			c.touches = append(c.touches, touch{rope, i})
			leaning = leaning || n.Angle != nil
			for _, s := range c.strands(touch{rope, i}) {
				ways[s.way] = true
			}
		}
	}
	c.slack = ways[model.Slack]
	if len(c.touches)+len(c.legs) < 2 || !leaning && !c.slack && len(ways) < 2 {
		return nil
	}
	return c
}

// strandAt is a strand beside a node: way is that from the node to its far end.
type strandAt struct {
	stroke, far int
	way         model.Stroke
}

// strands gives those beside a touch.
func (c *compass) strands(at touch) []strandAt {
	var list []strandAt
	r := at.rope
	if in := r.Before(at.node); in >= 0 {
		list = append(list, strandAt{in, in, -r.Strokes[in]})
	}
	if at.node < len(r.Strokes) {
		list = append(list, strandAt{at.node, r.After(at.node), r.Strokes[at.node]})
	}
	return list
}

// pulling is a force on the point, up the haul line and across it. Side is the one of
// several to which it leans, a number of its own; -1: to the right as it stands.
type pulling struct {
	up, across float64
	side       int
}

// state is all that pulls on the point in one state.
type state struct {
	Drawn
	all []pulling
}

// phases gives the states of the phases in which directions are known.
func (c *compass) phases(r *Result) []state {
	var list []state
	for _, ph := range r.Bearing() {
		if ph.usual == nil || !ph.Solved() {
			continue
		}
		if all, known := c.in(r, ph); known {
			list = append(list, state{Drawn{Phase: ph}, all})
		}
	}
	return list
}

// in gives what pulls on the point in a phase; known is false if a direction is not.
func (c *compass) in(r *Result, ph *Phase) (all []pulling, known bool) {
	for side, at := range c.touches {
		got, known := c.touched(ph, at, side)
		if !known {
			return nil, false
		}
		all = append(all, got...)
	}
	for _, leg := range c.legs {
		got, known := c.leg(r, ph, leg)
		if !known {
			return nil, false
		}
		all = append(all, got...)
	}
	for _, p := range r.Rig.Parts {
		if w := r.WeightOf(p, ph.hauling()); p.Root() == c.point && w.Sign() != 0 {
			all = append(all, pulling{up: -w.Float(), side: -1})
		}
	}
	return all, true
}

// touched gives the force of a rope at a node.
func (c *compass) touched(ph *Phase, at touch, side int) (all []pulling, known bool) {
	strands := c.strands(at)
	forces := make([]float64, len(strands))
	any := false
	for i, s := range strands {
		if s.way == model.Slack {
			continue
		}
		f := ph.usual.tension(at.rope, s.stroke, true)
		if ph.usual.touchesOpen(f) {
			return nil, false
		}
		forces[i] = f.at(ph.usual.shown).Float()
		any = any || forces[i] > 0
	}
	n := at.rope.Nodes[at.node]
	switch {
	case !any:
		return nil, true
	case n.Angle != nil && !n.Role.Ends():
		return c.bent(at, strands, forces, side)
	}
	for i, s := range strands {
		angle := 0.0
		if n.Angle != nil {
			angle = inRadians(n.Angle.Middle())
		}
		all = append(all, pulling{up: float64(s.way) * forces[i] * math.Cos(angle), across: forces[i] * math.Sin(angle), side: side})
	}
	return all, true
}

// bent gives the force of a rope that a fixed bend turns by an angle: the strand to
// what moves lies in the haul line, and the other one leans. Not known where that is true of
// both or of none.
func (c *compass) bent(at touch, strands []strandAt, forces []float64, side int) (all []pulling, known bool) {
	if len(strands) != 2 {
		return nil, false
	}
	first, second := c.inLine(at.rope, strands[0]), c.inLine(at.rope, strands[1])
	if first == second {
		return nil, false
	}
	line, other := 0, 1
	if second {
		line, other = 1, 0
	}
	way, angle := float64(strands[line].way), inRadians(at.rope.Nodes[at.node].Angle.Middle())
	return []pulling{
		{up: way * forces[line], side: -1},
		{up: way * forces[other] * math.Cos(angle), across: forces[other] * math.Sin(angle), side: side},
	}, true
}

// inLine says whether a strand lies in the haul line: its far end moves along it.
func (c *compass) inLine(r *model.Rope, s strandAt) bool {
	n := r.Nodes[s.far]
	return n.Part != nil && c.of(n.Part) >= 0 && n.Angle == nil && s.way != model.Slack
}

// leg gives the force of a leg on the anchor that it comes from: toward its focal point,
// which hangs down from it. Not known of a strut, and where the focal point is not pulled down.
func (c *compass) leg(r *Result, ph *Phase, leg *model.Part) (all []pulling, known bool) {
	parts, _ := ph.Loads()
	load, to := parts[leg.Index], leg.Values.To
	switch {
	case !load.Known() || load.Ranges() || leg.Values.Strut || to == nil:
		return nil, false
	case load.Value.IsZero():
		return nil, true
	}
	below := (&compass{layout: c.layout, point: to, touches: touchesOf(r.Rig, to)})
	pulls, known := below.in(r, ph)
	if !known || sum(pulls, 0).up >= 0 {
		return nil, false
	}
	angle := 0.0
	if leg.Values.Angle != nil {
		angle = inRadians(leg.Values.Angle.Middle())
	}
	f := load.Value.Float()
	return []pulling{{up: -f * math.Cos(angle), across: -f * math.Sin(angle), side: -1}}, true
}

// touchesOf lists the nodes at a part and at all that is clipped to it.
func touchesOf(rig *model.Rig, root *model.Part) []touch {
	var list []touch
	for _, r := range rig.Ropes {
		for i, n := range r.Nodes {
			if !r.Broken && n.Part != nil && n.Part.Root() == root {
				list = append(list, touch{r, i})
			}
		}
	}
	return list
}

// sum adds up forces for one choice of the sides to which they lean, a bit each.
func sum(all []pulling, sides int) pulling {
	var net pulling
	for _, p := range all {
		net.up += p.up
		if p.side >= 0 && sides>>p.side&1 == 1 {
			p.across = -p.across
		}
		net.across += p.across
	}
	return net
}

// off is the angle of a force from straight down, in degrees, left negative.
func (p pulling) off() float64 { return math.Atan2(p.across, -p.up) * 180 / math.Pi }

func (p pulling) size() float64 { return math.Hypot(p.up, p.across) }

// mostLeaning is of how many forces both sides are tried.
const mostLeaning = 10

// turning gives the two states that are surely farthest apart.
func (c *compass) turning(states []state) (t Turning, ok bool) {
	if len(c.touches) > mostLeaning {
		states = slices.DeleteFunc(states, func(s state) bool {
			return slices.ContainsFunc(s.all, func(p pulling) bool { return p.across != 0 })
		})
	}
	for i := range states {
		for j := range i {
			degrees, a, b := c.apart(states[j], states[i])
			if degrees > t.Degrees.Float() {
				t = Turning{Point: c.point, Degrees: lp.Approx(degrees), From: states[j].drawn(a), To: states[i].drawn(b)}
				ok = true
			}
		}
	}
	return t, ok
}

// apart gives the least angle between the net forces of two states over all sides to which
// ropes may lean, and those forces; 0 if there is none in one of them.
func (c *compass) apart(a, b state) (degrees float64, x, y pulling) {
	degrees = math.Inf(1)
	for sides := range 1 << min(len(c.touches), mostLeaning) {
		u, v := sum(a.all, sides), sum(b.all, sides)
		if u.size() < 1e-9 || v.size() < 1e-9 {
			return 0, u, v
		}
		angle := math.Abs(u.off() - v.off())
		if angle = min(angle, 360-angle); angle < degrees {
			degrees, x, y = angle, u, v
		}
	}
	return degrees, x, y
}

// drawn gives the state with its net force.
func (s state) drawn(net pulling) Drawn {
	s.Force, s.Off = lp.Approx(net.size()), lp.Approx(math.Abs(net.off()))
	return s.Drawn
}

func inRadians(degrees *big.Rat) float64 {
	d, _ := degrees.Float64()
	return d * math.Pi / 180
}
