package count

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// Unit says what a count counts in.
type Unit int

const (
	// OfPull: the pull is 1. Possible where only the raised load has weight.
	OfPull Unit = iota
	// OfLoad: the weight of the reference load is 1.
	OfLoad
)

// Count is the count of one haul.
type Count struct {
	Phase *solve.Phase
	Unit  Unit
	Steps []Step
	// Force is the weight of the reference load over the pull; Travel the rope
	// hauled for one unit it rises. They are equal where only that load has
	// weight and the hauler stands on the ground or moves with the load.
	Force, Travel *lp.Num
	// Fixed is what each fixed point carries, in the count's unit.
	Fixed []FixedLoad
	// Open says that statics leaves some share open: the count shows the middle.
	Open bool
}

// FixedLoad is what one fixed point carries.
type FixedLoad struct {
	Part   *model.Part
	Load   solve.Force
	AtMost bool
}

// Kind is the kind of a step.
type Kind string

// The kinds of step.
const (
	// Pull: the hauler pulls with Value.
	Pull Kind = "pull"
	// MovingBend: both sides of Part carry Value; it is pulled with Force.
	MovingBend Kind = "moving-bend"
	// FixedBend: Part is fixed, the rope goes on with Value.
	FixedBend Kind = "fixed-bend"
	// Passes: Part, a hitch or clamp, lets the rope run on with Value.
	Passes Kind = "passes"
	// Ends: the rope is fast at Part and pulls it with Value.
	Ends Kind = "ends"
	// Sum: Items meet at Body; together they put Value into the rope of Line.
	Sum Kind = "sum"
	// Total: Items meet at Body, the reference load's; together Value.
	Total Kind = "total"
	// Equations: the values cannot be had one after another.
	Equations Kind = "equations"
)

// Step is one step of the count.
type Step struct {
	Kind Kind
	Part *model.Part
	Body *solve.Body
	// Value is a tension, or for Total a sum.
	Value lp.Num
	// Force is the pull on the part of a MovingBend.
	Force lp.Num
	Items []Item
	// Reaches says for a Sum that its rope ends at the reference load.
	Reaches bool
	// Line is the piece of reeving line that the step is about.
	Line Fragment

	Equations []Equation
	Unknowns  []Unknown
}

// Item is one force that meets others at a body, up positive.
type Item struct {
	Part  *model.Part
	Value lp.Num
	// Weight says that it is the part's own weight.
	Weight bool
}

// Fragment is a piece of a reeving line with the figures known so far.
type Fragment struct {
	Rope *model.Rope
	// Strokes are indices into Rope.Strokes, in the order of the line.
	Strokes []int
	// Known has the tension of each stroke that is known; nil where it is not.
	Known []*lp.Num
}

// Equation is the balance of one body: Σ Factor·Unknown = Constant.
type Equation struct {
	Body     *solve.Body
	Terms    []Term
	Constant lp.Num
}

// Term is a factor times an unknown.
type Term struct {
	Factor  lp.Num
	Unknown int // index into Step.Unknowns
}

// Unknown is the tension of a piece of rope, with its solution.
type Unknown struct {
	Line  Fragment
	Value lp.Num
}

// Of counts a haul; nil if it raises nothing, or without pull.
func Of(res *solve.Result, ph *solve.Phase) *Count {
	if ph == nil || ph.Hauler == nil || ph.Status != solve.OK || ph.Pull.Sign() == 0 {
		return nil
	}
	c := newCounter(res, ph)
	c.start()
	c.finish()
	return c.count
}

// othersWeigh says whether anything but the raised load has weight.
func othersWeigh(res *solve.Result) bool {
	for _, b := range res.Bodies {
		for _, p := range b.Parts {
			stated := p.Values.Mass != nil || p.Values.Weight != nil || p.Kind.IsWeight()
			if stated && (p.Kind != model.Load || p.Root() != res.Reference.Root()) {
				return true
			}
		}
	}
	return false
}
