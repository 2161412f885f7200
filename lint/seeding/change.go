package seeding

import (
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// Worked is a rig worked out: what a fault can change.
type Worked struct {
	File   *load.Loaded
	Rig    *model.Rig
	Result *solve.Result

	house  *house.Rules
	losses map[string]solve.Loss
}

// Work works a rig of a file out, by its name; nil if the file has none of it.
func Work(f *load.Loaded, rig string) *Worked {
	i := slices.IndexFunc(f.Model.Rigs, func(r *model.Rig) bool { return r.Name == rig })
	if i < 0 {
		return nil
	}
	w := &Worked{File: f, Rig: f.Model.Rigs[i], house: lint.HouseOf(f)}
	w.Result = solve.Rig(w.Rig)
	return w
}

// Change is what a fault changes of a rig, each in words.
type Change struct {
	// Worse is what the rig can no longer do or bear: it raises nothing, falls, asks more
	// of a part or a person than the house allows, or is no rig that can be read.
	Worse []string
	// Other is what is different without being wrong by itself, such as another advantage:
	// of that only what the author claims can tell whether it is meant.
	Other []string
}

// Harmless says whether nothing changes that the rig does or can bear.
func (c Change) Harmless() bool { return len(c.Worse) == 0 && len(c.Other) == 0 }

// Harmful says whether the rig is worse than it was.
func (c Change) Harmful() bool { return len(c.Worse) > 0 }

// comparison is the work of comparing two rigs.
type comparison struct {
	before, after *Worked
	Change
}

func (c *comparison) worse(format string, args ...any) {
	c.Worse = append(c.Worse, fmt.Sprintf(format, args...))
}

func (c *comparison) other(format string, args ...any) {
	c.Other = append(c.Other, fmt.Sprintf(format, args...))
}

// Compare says what is different in a rig after a fault; after is nil if there is no rig
// left. Figures that differ by less than a hundredth count as the same.
func Compare(before, after *Worked) Change {
	c := &comparison{before: before, after: after}
	if after == nil {
		c.worse("there is no rig left")
		return c.Change
	}
	if !c.legible() {
		return c.Change
	}
	c.status()
	c.staysUp()
	c.advantage()
	c.people()
	c.strengths()
	c.anchors()
	c.stroke()
	c.ropes()
	c.lowering()
	c.practice()
	return c.Change
}

// legible says whether the text has no error that it had not before.
func (c *comparison) legible() bool {
	known := map[string]bool{}
	for _, d := range c.before.File.Problems {
		known[d.Rule+d.Message] = true
	}
	for _, d := range c.after.File.Problems {
		if d.Severity == diag.Error && !known[d.Rule+d.Message] {
			c.worse("the text is wrong: %s", d.Message)
		}
	}
	return len(c.Worse) == 0
}

// hauls pairs the hauls of before and after by their people.
func (c *comparison) hauls(visit func(before, after *solve.Phase)) {
	for _, x := range c.before.Result.Hauls() {
		for _, y := range c.after.Result.Hauls() {
			if x.Hauler.Name == y.Hauler.Name {
				visit(x, y)
			}
		}
	}
}

func (c *comparison) status() {
	if len(c.after.Result.Hauls()) < len(c.before.Result.Hauls()) {
		c.worse("nobody hauls on a rope where somebody did")
	}
	c.hauls(func(x, y *solve.Phase) {
		switch {
		case x.Status == y.Status:
		case x.Status == solve.OK:
			c.worse("while %s hauls: %s", y.Hauler.Name, y.Status)
		default:
			c.other("while %s hauls: %s, not %s", y.Hauler.Name, y.Status, x.Status)
		}
	})
}

// advantage compares what the hauls give. Friction that costs more of the same ideal
// advantage is worse, another ideal advantage is just another one.
func (c *comparison) advantage() {
	gain := 0.03
	if l := c.after.house.Limit(house.Figure{Name: "gain"}); l != nil {
		gain, _ = l.Low.Float64()
	}
	c.hauls(func(x, y *solve.Phase) {
		if x.Ideal == nil || y.Ideal == nil {
			return
		}
		who := y.Hauler.Name
		if x.Class != y.Class {
			c.other("the rig is %s, not %s", y.Class, x.Class)
		}
		switch {
		case differs(x.Ideal, y.Ideal):
			c.other("%s hauls with %s, not %s", who, lint.Ratio(*y.Ideal), lint.Ratio(*x.Ideal))
		case x.Actual.Known() && y.Actual.Known() && y.Actual.Efficiency.Low.Float() < x.Actual.Efficiency.Low.Float()*(1-gain):
			c.worse("friction leaves %s %.3g of the ideal advantage, not %.3g", who,
				y.Actual.Efficiency.Low.Float(), x.Actual.Efficiency.Low.Float())
		}
		c.pull(x, y)
	})
}

func (c *comparison) pull(x, y *solve.Phase) {
	p, q := c.before.Result.PullNewtons(x), c.after.Result.PullNewtons(y)
	if p != nil && q != nil && differs(p.High, q.High) {
		c.other("%s pulls %.3g N, not %.3g N", y.Hauler.Name, q.High.Float(), p.High.Float())
	}
}

// people compares what the haulers give with what they must.
func (c *comparison) people() {
	c.hauls(func(x, y *solve.Phase) {
		if c.asksTooMuch(c.after, y) && !c.asksTooMuch(c.before, x) {
			c.worse("%s cannot pull so much", y.Hauler.Name)
		}
		if !c.allowed(c.after, y) && c.allowed(c.before, x) {
			c.worse("%s with that advantage can pull more than the house allows", y.Hauler.Name)
		}
	})
}

func (c *comparison) asksTooMuch(w *Worked, ph *solve.Phase) bool {
	people := ph.Hauler.Values.People
	if people == nil {
		return false
	}
	least := lp.FromRat(people.Low)
	if n, ok := w.Result.PeopleNeeded(ph); ok && lp.Int(n).Cmp(least) > 0 {
		return true
	}
	pull := w.Result.PullNewtons(ph)
	return pull != nil && least.Sign() > 0 && !w.house.PerPerson().Allows(pull.High.Quo(least))
}

func (c *comparison) allowed(w *Worked, ph *solve.Phase) bool {
	people := ph.Hauler.Values.People
	if people == nil || ph.Ideal == nil {
		return true
	}
	return w.house.Limit(house.Figure{Name: "people times advantage"}).Allows(lp.FromRat(people.High).Mul(*ph.Ideal))
}

// differs says whether two figures, both known, are apart by more than a hundredth.
func differs(x, y *lp.Num) bool {
	if x == nil || y == nil {
		return false
	}
	a, b := x.Float(), y.Float()
	return a-b > 0.01*max(a, -a, b, -b) || b-a > 0.01*max(a, -a, b, -b)
}
