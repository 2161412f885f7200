package model

import (
	"fairlead/lang/quantity"
	"fairlead/lang/source"
)

// Stroke is the way a rope runs from one node to the next.
type Stroke int

// The strokes: the sign of Up and Down is that of the strand's direction.
const (
	Slack Stroke = 0  // loose rope lies between the two nodes
	Up    Stroke = +1 // up the line
	Down  Stroke = -1 // down the line
)

// String gives the stroke as written.
func (s Stroke) String() string {
	return map[Stroke]string{Slack: "~", Up: "/", Down: `\`}[s]
}

// Role is what a node does to the rope.
type Role int

const (
	// Tied: the rope's end is made fast to the part.
	Tied Role = iota
	// Hauled: people pull this end.
	Hauled
	// Tended: someone takes in the slack; holds nothing.
	Tended
	// Loose: the word tail; holds nothing.
	Loose
	// Stopper: a knot on nothing that ends the line.
	Stopper
	// Bend: the rope bends round the part and can run.
	Bend
	// Capture: a bend that lets the rope run one way only.
	Capture
	// Grip: a hitch or clamp that grips one way.
	Grip
	// KnotTie: a tie in mid rope, fast to what the knot is on.
	KnotTie
)

// Ends says whether a node of this role ends a run.
func (r Role) Ends() bool { return r <= Stopper }

// Side is one end of a run.
type Side int

const (
	// NoSide: the node holds neither side.
	NoSide Side = iota
	// FirstSide: the side of the run's first node is held.
	FirstSide
	// LastSide: the side of the run's last node is held.
	LastSide
)

// Node is one place where a rope touches a part.
type Node struct {
	// Part is nil for the word tail.
	Part *Part
	Role Role
	// Holds is the held side of a Grip or Capture.
	Holds Side
	// Angle is the included angle between the legs of a bend, or at an end the
	// angle to the haul line; nil if none is written (node or part).
	Angle *quantity.Quantity
	// Share is the share of the load on this end, if stated.
	Share *quantity.Quantity
	// Efficiency, Lowering, Friction and Turns are the node's own, or else the part's.
	Efficiency, Lowering, Friction, Turns *quantity.Quantity
	// Sideways: the part moves across the line.
	Sideways bool
	// Tie is the knot that ties the node, empty if not said. TieStock is the model
	// of that name, nil if nothing is known of it.
	Tie      string
	TieStock *Stock
	// Retains is what the knot here leaves of the rope's strength: the node's own,
	// else that of its tie, else the part's, where that is a knot.
	Retains *quantity.Quantity
	// Place is the node with its parentheses, NamePlace its name.
	Place, NamePlace source.Place
}

// Name gives the node's word as written.
func (n Node) Name() string {
	if n.Part == nil {
		return "tail"
	}
	return n.Part.Name
}

// Rope is one line with everything that touches it, in order.
type Rope struct {
	Line  *Part
	Nodes []Node
	// Strokes[i] stands between node i and node i+1; with Loop the last one
	// leads from the last node back to the first.
	Strokes []Stroke
	// StrokePlaces are the places of the strokes.
	StrokePlaces []source.Place
	// Loop says that the line is closed on its first node, which is then a bend.
	Loop bool
	// Place is the reeving statement.
	Place source.Place
	// Broken says that a node could not be resolved; such a rope is left out of
	// the analysis.
	Broken bool
}

// After gives the index of the node at the far end of stroke i.
func (r *Rope) After(i int) int { return (i + 1) % len(r.Nodes) }

// Before gives the index of the stroke that leads to node i, -1 if none does.
func (r *Rope) Before(i int) int {
	if i > 0 {
		return i - 1
	}
	if r.Loop {
		return len(r.Strokes) - 1
	}
	return -1
}

// Turns says whether the rope turns back at node i: the strokes on its two
// sides differ. False at an end of the line and beside a slack stroke.
func (r *Rope) Turns(i int) bool {
	in, out := r.Before(i), i
	if in < 0 || out >= len(r.Strokes) {
		return false
	}
	return r.Strokes[in] != Slack && r.Strokes[out] != Slack && r.Strokes[in] != r.Strokes[out]
}

// RunsOn says whether the rope goes straight through node i.
func (r *Rope) RunsOn(i int) bool {
	in, out := r.Before(i), i
	if in < 0 || out >= len(r.Strokes) {
		return false
	}
	return r.Strokes[in] != Slack && r.Strokes[in] == r.Strokes[out]
}
