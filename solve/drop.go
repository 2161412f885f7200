package solve

import (
	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Drop is how far the loads go down, straight down the haul line, until ropes or
// parts that meet take them; how far they swing aside is not in it.
type Drop struct {
	// Loads are the loads and counterweights that go down, in file order. Empty also
	// if the drop is unknown.
	Loads []LoadDrop
	// AtMost says that there is rope of unknown length that may take them sooner.
	AtMost bool
	// Missing is what is not known of that rope, or else why the drop is unknown.
	Missing []Missing

	known bool
}

// LoadDrop is how far one load goes down.
type LoadDrop struct {
	Load   *model.Part
	Metres lp.Num
}

// Known says whether there are figures.
func (d *Drop) Known() bool { return d != nil && d.known }

// Most gives the largest drop in metres, 0 if nothing goes down; nil if it is
// unknown.
func (d *Drop) Most() *lp.Num {
	if !d.Known() {
		return nil
	}
	most := lp.Num{}
	for _, l := range d.Loads {
		most = lp.Max(most, l.Metres)
	}
	return &most
}

// Gap is a kind of figure that is missing.
type Gap string

// The gaps.
const (
	NoPosition Gap = "no-position" // nothing says where the part is; nil: where any part is
	NoLength   Gap = "no-length"   // the line has no length, so its slack is unknown
	TooShort   Gap = "too-short"   // the line is shorter than its way as drawn
	Against    Gap = "against"     // positions contradict a stroke of the line
)

// Missing is one figure without which a drop is not known.
type Missing struct {
	Gap  Gap
	Part *model.Part
}
