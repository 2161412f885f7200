package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Status is what becomes of the rig in a phase, or over all its phases.
type Status string

// The statuses, in the order in which the first that fits is taken.
const (
	// Unsolved: errors left no load or no rope to compute with.
	Unsolved Status = "unsolved"
	// NoHaul: nobody pulls a rope's end.
	NoHaul Status = "no-haul"
	// Falls: a weight sinks without bound; in hold: hands off, it is not held.
	Falls Status = "falls"
	// RunsUp: a load runs away upward, drawn by a heavier weight.
	RunsUp Status = "runs-away-upward"
	// Unbalanced: only parts that are not loads move without bound.
	Unbalanced Status = "unbalanced"
	// Jammed: the hauled end cannot move.
	Jammed Status = "jammed"
	// RaisesNothing: the hauled end moves and the load does not rise.
	RaisesNothing Status = "raises-nothing"
	// Lowers: the load comes down as rope is given out.
	Lowers Status = "lowers"
	// StaysUp: the hand is slack and nothing comes down: a grip holds that cannot be
	// opened under load.
	StaysUp Status = "stays-up"
	// OK: the load rises (haul), or is held (hold).
	OK Status = "ok"
)

// Class is the trade's word for how the advantage is made.
type Class string

// The classes; NoClass where the status is not ok or several loads rise.
const (
	NoClass  Class = ""
	Simple   Class = "simple"
	Compound Class = "compound"
	Complex  Class = "complex"
)

// Result is everything computed of one rig. It never changes after Solve.
type Result struct {
	Rig    *model.Rig
	Status Status
	// Bodies are the moving bodies in file order of their first parts.
	Bodies []*Body
	// Reference is the load whose weight all ratios are of: the one that "raise"
	// names, else the first load of the file. Nil if there is no load.
	Reference *model.Part
	// WeightNewtons is the reference weight (of all loads of its body) in newtons;
	// nil if no mass or weight is written in the rig.
	WeightNewtons *lp.Num
	// Phases are hold, then one haul for each hauler that holds a rope's end, in
	// file order. Empty if Unsolved.
	Phases []*Phase
	// Lowers has, for each haul, what happens when its people give rope with every
	// releasable grip open. Status is Lowers or StaysUp, or Falls where nothing holds.
	// Pull is the smallest force that hands need on the rope.
	Lowers []*Phase
	// Released is the whistle test: everyone lets go.
	Released Stay
	// Rope is how much of each line is needed, one entry a line in file order, for
	// the phase of Main; nil if no part has a position.
	Rope []RopeNeed

	system *system
}

// Main gives the haul phase whose figures are the rig's: the first that raises,
// else the first whose status is the rig's; nil without a haul phase.
func (r *Result) Main() *Phase {
	for _, want := range []Status{OK, r.Status} {
		for _, p := range r.Hauls() {
			if p.Status == want {
				return p
			}
		}
	}
	return nil
}

// Hauls gives the haul phases.
func (r *Result) Hauls() []*Phase {
	if len(r.Phases) == 0 {
		return nil
	}
	return r.Phases[1:]
}

// Hold gives the hold phase; nil if the rig is unsolved.
func (r *Result) Hold() *Phase {
	if len(r.Phases) == 0 {
		return nil
	}
	return r.Phases[0]
}

// Body is a set of parts clipped to one another that move as one.
type Body struct {
	// Index is the body's place in Result.Bodies.
	Index int
	Parts []*model.Part
	// Weight is in fractions of the reference weight, as it counts in hold.
	Weight lp.Num
	// Loads are the load and counterweight parts of the body.
	Loads []*model.Part
}

// Phase is one boundary condition solved.
type Phase struct {
	// Name is "hold", "haul", or "haul NAME" where several haul.
	Name string
	// Hauler pulls in this phase; nil in hold.
	Hauler *model.Part
	// Lowering says that the hauler gives rope instead of pulling; such phases are
	// in Result.Lowers.
	Lowering bool
	Status   Status
	// Ideal is the travel ratio: rope hauled for one unit the reference load
	// rises. Nil unless the load rises and its motion is the only one.
	Ideal *lp.Num
	Class Class
	// Stages are the ratios of the stages from the load to the hauler (class
	// simple and compound); their product is Ideal.
	Stages []Stage
	// Pull is the sum of the tensions on the hauler's ends; nil if Status leaves
	// no tensions.
	Pull *lp.Num
	// Actual is the haul with friction; nil unless Status is OK in a haul that
	// takes a pull.
	Actual *Actual
	// Motion has one entry a body, in the order of Result.Bodies; empty if there
	// is no motion (falls, jammed).
	Motion []Motion
	// Stroke is how far a haul goes until parts meet; nil unless it raises a load.
	Stroke *Stroke
	// ShareUnmet says that forces in balance do not allow the stated shares, which
	// were passed over.
	ShareUnmet bool
	// Strands has one entry for every stroke of every rope in file order.
	Strands []Strand
	// Parts has one entry for every part in file order.
	Parts []PartLoad
	// Jam says where the rope is fast; set when Status is Jammed.
	Jam *Jam
	// Holding are the grips that keep the load from coming down; set when Status is
	// StaysUp.
	Holding []*model.Part
	// Sagging are the bodies without a load whose own weight was left out in hold,
	// since nothing holds it: they slide down until they meet something.
	Sagging []*Body
	// Ray is the motion without bound; set when Status is Falls, RunsUp or Unbalanced.
	Ray []Motion
	// Unpinned are the weightless bodies that fly up for want of a counter-pull
	// when Status is Falls in a haul: holding any one of them would stop the fall.
	Unpinned []*Body

	program *program
	// exact are the tensions shown without friction, usual with it where it is known;
	// run says which way rope runs.
	exact, usual *tensions
	run          running
	// holds is what each grip of program holds.
	holds []Force
	// pull is Pull before inexact weights mark it.
	pull lp.Num
	// inexact says that a weight is no fraction, so that forces are none either.
	inexact bool
	// tension is the shown tension of each piece of program.
	tension []lp.Num
}

// Solved says whether tensions exist in this phase.
func (p *Phase) Solved() bool { return p.Pull != nil }

// Motion is how one body moves for one unit of rope hauled, or along a ray.
type Motion struct {
	Body *Body
	// Rise is up positive.
	Rise lp.Num
	// Free says that the ropes do not fix the body's motion; Rise is then 0.
	Free bool
}

// Strand is what one stroke of a rope carries.
type Strand struct {
	Rope *model.Rope
	// Index is the stroke's place in Rope.Strokes.
	Index int
	Force
	// Count is the tension to show in pulls; nil without a pull. It stays exact
	// where the weight on a slope makes the force inexact.
	Count *lp.Num
	// Slack says that it carries nothing, ever or in this phase.
	Slack bool
}

// PartLoad is what one part carries.
type PartLoad struct {
	Part *model.Part
	Force
	// AtMost says that the forces on it are not parallel, so that their sizes
	// were added up: the true load is at most this.
	AtMost bool
}

// Force is a force in fractions of the reference weight, with its range where
// statics leaves it open. The three are nil if unknown.
type Force struct {
	// Value is the figure to show: within the range, in balance with all others.
	Value *lp.Num
	Low   *lp.Num
	// High is nil also where there is no upper limit (preload).
	High *lp.Num
}

// Known says whether the force could be computed.
func (f Force) Known() bool { return f.Value != nil }

// Ranges says whether statics leaves the force open: the ends differ, or there
// is no upper end.
func (f Force) Ranges() bool {
	return f.Known() && (f.High == nil || f.Low.Cmp(*f.High) != 0)
}

// Most gives the figure that counts for strength: the upper end, or the lower
// one where there is no upper end (not counting preload). Zero if unknown.
func (f Force) Most() lp.Num {
	switch {
	case f.High != nil:
		return *f.High
	case f.Low != nil:
		return *f.Low
	}
	return lp.Num{}
}

// Stage is one stage of a compound rig.
type Stage struct {
	// Load is the body at the load's side of the stage, Hauler the one at the
	// other side; nil for the hauler's end itself.
	Load, Hauler *Body
	Ratio        lp.Num
}

// Jam names the two nodes of a rope between which it is fast.
type Jam struct {
	Rope *model.Rope
	// From and To are indices into Rope.Nodes, From the nearer to the first node.
	From, To int
}

// Answer says whether a rig stays up, from the strongest to the weakest.
type Answer string

// The answers.
const (
	// Held: it stays where it is.
	Held Answer = "held"
	// Caught: it drops by the slack of a rope, then is held.
	Caught Answer = "caught"
	// Jams: it drops until parts meet.
	Jams Answer = "jams"
	// Down: it falls.
	Down Answer = "falls"
)

// Stay is the outcome of letting go, or of losing a part.
type Stay struct {
	Answer Answer
	// Sinking are the bodies that go down when it is not held: after a loss those
	// that are left, which need not be bodies of Result.Bodies.
	Sinking []*Body
	// Catching are the slack strands that catch it, when Caught.
	Catching []Strand
	// Meeting are the pairs of parts that meet, when it Jams.
	Meeting [][2]*model.Part
	// AtKnot says that it Jams because a knot is drawn up to a bend, and not because
	// other parts meet.
	AtKnot bool
	// Drop is how far it goes down, when Caught or Jams.
	Drop *Drop
	// Grounded are the bodies on a slope that the friction of the ground alone keeps.
	Grounded []*Body

	lost Lost
	// forces are tensions in balance that keep it, once it has dropped if it does; nil
	// where it falls.
	forces strandForces
}

// Loss is one thing lost and what comes of it.
type Loss struct {
	Lost
	Stay
}

// LoadsStay says whether every load and counterweight stays where it is: the rig is
// held, or all that goes down are parts with a weight of their own, such as a heavy
// pulley on a hitch that slides down its rope.
func (s Stay) LoadsStay() bool {
	return s.Answer == Held ||
		len(s.Sinking) > 0 && !slices.ContainsFunc(s.Sinking, func(b *Body) bool { return len(b.Loads) > 0 })
}

// WeightOf gives the weight of a part along the haul line in fractions of the
// reference weight, as it counts while hauling or held.
func (r *Result) WeightOf(p *model.Part, hauling bool) lp.Num {
	return r.system.weights.of(p, hauling)
}
