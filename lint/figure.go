package lint

import (
	"slices"
	"strconv"
	"strings"

	"fairlead/lang/model"
	"fairlead/lang/syntax"
	"fairlead/solve/lp"
)

// figure is what is known of a quantity: it lies between two ends, of which either
// may be unknown.
type figure struct {
	low, high *lp.Num
	// bounds says that the ends only bound a figure that is not known itself. Without
	// it they are the figure's own range, which counts by its worse end.
	bounds bool
}

// outcome is what comes of comparing a figure with a claim.
type outcome int

const (
	unsure outcome = iota
	holds
	fails
)

// against compares the figure with a claimed one.
func (f figure) against(compare syntax.Compare, claimed lp.Num) outcome {
	switch {
	case !f.bounds && fits(compare, *f.low, *f.high, claimed):
		return holds
	case !f.bounds:
		return fails
	}
	above := f.low != nil && f.low.Cmp(claimed) > 0
	below := f.high != nil && f.high.Cmp(claimed) < 0
	reaches := f.low != nil && f.low.Cmp(claimed) >= 0
	stays := f.high != nil && f.high.Cmp(claimed) <= 0
	switch {
	case compare == syntax.Over && above, compare == syntax.Under && below:
		return holds
	case compare == syntax.Over && stays, compare == syntax.Under && reaches, compare == syntax.Equal && (above || below):
		return fails
	}
	return unsure
}

// between gives a figure in words: one value, or a range.
func between(low, high lp.Num, say func(lp.Num) string) string {
	least, most := say(low), say(high)
	if least == most {
		return least
	}
	return least + " to " + most
}

// doubt is why a figure is not known.
type doubt struct {
	// says is a clause, such as "runner has no efficiency".
	says string
	// lacking are the parts that do not say what it takes.
	lacking []Lack
}

// unconfirmed gives the verdict on a claim that stays in doubt. What is the quantity,
// known what is known of it all the same, which may be empty.
func (d *doubt) unconfirmed(what, wanted, known string) Verdict {
	if known != "" {
		known += ", but "
	}
	return Verdict{
		Unknown: true, Lacking: d.lacking,
		Message: what + " " + wanted + " is not confirmed: " + known + d.says,
	}
}

// mostNamed is how many parts a message names before it counts the rest.
const mostNamed = 3

// named names parts in a sentence, the first few of many.
func named(parts []*model.Part) string {
	var names []string
	for _, p := range parts[:min(len(parts), mostNamed)] {
		names = append(names, NameOf(p))
	}
	if more := len(parts) - mostNamed; more > 0 {
		names = append(names, strconv.Itoa(more)+" more")
	}
	return List(names)
}

// withoutClause doubts a figure for want of something that parts do not say.
func withoutClause(parts []*model.Part, lacks func(*model.Part) string) *doubt {
	d := &doubt{}
	var whats []string
	for _, p := range parts {
		what := lacks(p)
		d.lacking = append(d.lacking, Lack{p, what})
		if !slices.Contains(whats, what) {
			whats = append(whats, what)
		}
	}
	verb := " has no "
	if len(parts) > 1 {
		verb = " have no "
	}
	d.says = named(parts) + verb + strings.Join(whats, " or ")
	return d
}
