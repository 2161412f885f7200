package seeding

import (
	"fmt"
	"slices"

	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
)

// staysUp compares the whistle test and the loss of each part. That one more part can drop
// a load on which everything hung already is not worse.
func (c *comparison) staysUp() {
	x, y := c.before.Result.Released, c.after.Result.Released
	switch {
	case x.Answer == y.Answer:
	case lint.Weaker(y.Answer, x.Answer):
		c.worse("hands off: %s, not %s", y.Answer, x.Answer)
		return // every loss lets it fall then
	default:
		c.other("hands off: %s, not %s", y.Answer, x.Answer)
	}
	before, after := c.before.everyLoss(), c.after.everyLoss()
	alone := slices.ContainsFunc(values(before), c.before.drops)
	for _, key := range keys(after) {
		l := after[key]
		was, known := before[key]
		switch {
		case !c.after.drops(l) || known && c.before.drops(was):
		case known || !alone:
			c.worse("%s: %s", key, l.Answer)
		}
	}
	for _, key := range keys(before) {
		if l, left := after[key]; c.before.drops(before[key]) && (!left || !c.after.drops(l)) {
			c.other("%s: no longer %s", key, before[key].Answer)
		}
	}
}

// everyLoss gives all single losses by what they are called.
func (w *Worked) everyLoss() map[string]solve.Loss {
	if w.losses == nil {
		w.losses = map[string]solve.Loss{}
		for _, l := range w.Result.Losses() {
			name := fmt.Sprintf("without the %s %s", l.Kind, l.Part.Name)
			if l.Rope != nil {
				name += " of " + l.Rope.Line.Name
			}
			w.losses[name] = l
		}
	}
	return w.losses
}

// drops says whether a loss lets a load come down further than the house allows. A drop
// that nobody knows is not allowed.
func (w *Worked) drops(l solve.Loss) bool {
	switch {
	case l.LoadsStay():
		return false
	case l.Answer == solve.Caught && l.Drop != nil && l.Drop.Most() != nil:
		limit := w.house.Limit(house.Figure{Name: "drop"})
		return limit == nil || !limit.Allows(*l.Drop.Most())
	}
	return true
}

func keys(m map[string]solve.Loss) []string {
	var list []string
	for k := range m {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}

func values(m map[string]solve.Loss) []solve.Loss {
	var list []solve.Loss
	for _, k := range keys(m) {
		list = append(list, m[k])
	}
	return list
}

// lowering compares what comes down when hands give rope, and what they must hold.
func (c *comparison) lowering() {
	hand := func(l *solve.Phase) *solve.Force {
		if l.Actual.Known() {
			return &l.Actual.Pull
		}
		return nil
	}
	for _, x := range c.before.Result.Lowers {
		for _, y := range c.after.Result.Lowers {
			if x.Hauler.Name != y.Hauler.Name {
				continue
			}
			h := hand(y)
			switch {
			case c.after.tooWeak(y) && !c.before.tooWeak(x):
				c.worse("%s must hold more than the house allows while lowering", y.Hauler.Name)
			case x.Status == solve.Lowers && y.Status == solve.StaysUp:
				c.worse("%s cannot lower it", y.Hauler.Name)
			case x.Status != y.Status:
				c.other("lowering: %s, not %s", y.Status, x.Status)
			case hand(x) != nil && h != nil && differs(hand(x).High, h.High):
				c.other("the hand of %s holds %.3g of the load, not %.3g", y.Hauler.Name, h.High.Float(), hand(x).High.Float())
			}
		}
	}
}

// tooWeak says whether hands must hold more while lowering than the house allows.
func (w *Worked) tooWeak(l *solve.Phase) bool {
	hand := w.Result.PullNewtons(l)
	return l.Status == solve.Lowers && hand != nil && !w.house.Limit(house.Figure{Name: "lower hand"}).Allows(*hand.High)
}

// anchors compares the forces on the fixed points together, and the angles of their legs.
func (c *comparison) anchors() {
	x, y := c.before.onAnchors(), c.after.onAnchors()
	same := c.before.Result.Main() != nil && c.after.Result.Main() != nil &&
		!differs(c.before.Result.Main().Ideal, c.after.Result.Main().Ideal)
	switch {
	case y > x*1.2 && same:
		c.worse("the anchors carry %.3g of the load, not %.3g, for the same advantage", y, x)
	case y > x*1.01 || y < x*0.99:
		c.other("the anchors carry %.3g of the load, not %.3g", y, x)
	}
	limit := house.Figure{Name: "anchor angle"}
	if l := c.after.house.Limit(limit); l != nil {
		most, _ := l.High.Float64()
		for name, angle := range c.after.legAngles() {
			if was, known := c.before.legAngles()[name]; angle > most && known && was <= most {
				c.worse("the legs of %s open %.3g deg", name, angle)
			}
		}
	}
}

// onAnchors gives the sum of the worst loads of all anchors, in fractions of the load.
func (w *Worked) onAnchors() float64 {
	sum := 0.0
	for _, p := range w.Rig.Parts {
		if p.Kind != model.Anchor {
			continue
		}
		worst := 0.0
		for _, ph := range w.Result.Every() {
			if parts, _ := ph.Loads(); len(parts) > p.Index {
				worst = max(worst, parts[p.Index].Most().Float())
			}
		}
		sum += worst
	}
	return sum
}

// legAngles gives the widest angle between two legs of each focal point.
func (w *Worked) legAngles() map[string]float64 {
	low, high := map[string]float64{}, map[string]float64{}
	for _, p := range w.Rig.Parts {
		if to := p.Values.To; to != nil && p.Values.Angle != nil {
			angle, _ := p.Values.Angle.Middle().Float64()
			low[to.Name], high[to.Name] = min(low[to.Name], angle), max(high[to.Name], angle)
		}
	}
	for name := range high {
		high[name] -= low[name]
	}
	return high
}
