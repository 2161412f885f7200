package seeding

import (
	"fmt"
	"slices"

	"fairlead/lang/model"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// strengths compares what each part bears with what it carries.
func (c *comparison) strengths() {
	before := map[string]solve.Rating{}
	for _, r := range c.before.Result.Ratings() {
		before[r.Part.Name] = r
	}
	for _, r := range c.after.Result.Ratings() {
		was, known := before[r.Part.Name]
		switch {
		case r.Factor == nil:
		case !c.after.bears(r) && (!known || was.Factor == nil || c.before.bears(was)):
			c.worse("%s has a factor of %.3g", r.Part.Name, r.Factor.Float())
		case known && differs(was.Factor, r.Factor):
			c.other("%s has a factor of %.3g, not %.3g", r.Part.Name, r.Factor.Float(), was.Factor.Float())
		}
	}
}

// bears says whether a part carries less than it bears, and with the factor that the house
// asks for.
func (w *Worked) bears(r solve.Rating) bool {
	return r.Factor.Cmp(lp.Int(1)) >= 0 && w.house.Factor(r.Part.Kind).Allows(*r.Factor)
}

// stroke compares how far the load goes, and what each stroke gives back.
func (c *comparison) stroke() {
	c.hauls(func(x, y *solve.Phase) {
		p, q := x.Stroke, y.Stroke
		if !p.Known() || !q.Known() || p.Rise == nil || q.Rise == nil {
			return
		}
		if differs(p.Rise, q.Rise) {
			c.other("a stroke raises %.3g m, not %.3g m", q.Rise.Float(), p.Rise.Float())
		}
		if q.Rise.Sign() <= 0 && p.Rise.Sign() > 0 {
			c.worse("%s and %s meet at the start", q.First.Lower.Name, q.First.Upper.Name)
			return
		}
		if reaches(p.Raise) && q.Raise != nil && !reaches(q.Raise) {
			c.worse("the raise ends after %.3g m of %.3g m", q.Raise.Reached.Float(), q.Raise.Height.Float())
		}
		if c.after.givesBack(q) && !c.before.givesBack(p) {
			c.worse("%.3g m of each stroke of %.3g m are given back", q.SetBack.Float(), q.Rise.Float())
		}
		if c.after.runsOutFirst(q) && !c.before.runsOutFirst(p) {
			c.worse("%s meets %s long before the next stage is at its end", q.First.Lower.Name, q.First.Upper.Name)
		}
	})
}

func reaches(r *solve.Raise) bool { return r != nil && r.Reached.Cmp(r.Height) >= 0 }

func (w *Worked) givesBack(s *solve.Stroke) bool {
	limit := w.house.Limit(house.Figure{Name: "set-back"})
	return s.Rise.Sign() > 0 && !limit.Allows(s.SetBack.Quo(*s.Rise))
}

// runsOutFirst says whether the stage that is reset first gives less of the next one's
// rise than the house wants.
func (w *Worked) runsOutFirst(s *solve.Stroke) bool {
	var rises []*lp.Num
	for _, p := range s.Pairs {
		if p.Resettable && p.Meets != nil {
			rises = append(rises, p.Meets)
		}
	}
	if len(rises) < 2 || rises[1].Sign() <= 0 {
		return false
	}
	return !w.house.Limit(house.Figure{Name: "stage"}).Allows(rises[0].Quo(*rises[1]))
}

// ropes compares the rope needed with the rope there is.
func (c *comparison) ropes() {
	before := map[string]solve.RopeNeed{}
	for _, n := range c.before.Result.Rope {
		before[n.Rope.Line.Name] = n
	}
	for _, n := range c.after.Result.Rope {
		was, known := before[n.Rope.Line.Name]
		if n.Short && known && !was.Short {
			c.worse("%s is too short: it takes %.3g m", n.Rope.Line.Name, n.Needed.Float())
		}
	}
}

// practice compares what no figure of the solved rig says, but everyone is taught: cord
// to rope, rope to device, gates that lock, ropes on metal, edges that do not cut.
func (c *comparison) practice() {
	before := c.before.malpractice()
	known := map[string]bool{}
	for _, says := range before {
		known[says] = true
	}
	for _, says := range c.after.malpractice() {
		if !known[says] {
			c.worse("%s", says)
		}
	}
}

// malpractice lists what is against good practice, each as a sentence.
func (w *Worked) malpractice() []string {
	var list []string
	passes := map[*model.Part]int{}
	for _, r := range w.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Part == nil {
				continue
			}
			if says := w.misfit(r, n); says != "" {
				list = append(list, says)
			}
			if n.Role != model.Bend && n.Role != model.Capture {
				continue
			}
			passes[n.Part]++
			if w.isLoaded(r, i) {
				list = append(list, harshBends(n.Part)...)
			}
		}
	}
	for _, p := range w.below() {
		list = append(list, fmt.Sprintf("%s stands below a load that one loss drops", p.Name))
	}
	for _, p := range w.Rig.Parts {
		if s := p.Values.Sheaves; s != nil && int64(passes[p]) > s.High.Num().Int64() {
			list = append(list, fmt.Sprintf("%s has no sheave for each pass", p.Name))
		}
		if p.Kind == model.Carabiner && !p.Values.Locking && w.drops(solve.Loss{Stay: w.Result.Without(p)}) {
			list = append(list, fmt.Sprintf("%s holds the load and does not lock", p.Name))
		}
	}
	return list
}

// below lists the people who stand below a load that a single loss drops.
func (w *Worked) below() []*model.Part {
	var list []*model.Part
	for _, p := range w.Rig.Parts {
		at, known := w.Result.Position(p)
		if p.Kind != model.Hauler || !known {
			continue
		}
		for _, load := range w.Rig.Parts {
			y, known := w.Result.Position(load)
			if known && load.Kind == model.Load && at.Cmp(y) < 0 && slices.ContainsFunc(values(w.everyLoss()), w.drops) {
				list = append(list, p)
				break
			}
		}
	}
	return list
}

// misfit says in a sentence how a rope does not fit a hitch or device; empty if it does.
func (w *Worked) misfit(r *model.Rope, n model.Node) string {
	rope, cord, takes := r.Line.Values.Diameter, n.Part.Values.Cord, n.Part.Values.Takes
	switch {
	case rope == nil:
	case cord != nil && n.Role == model.Grip && rope.Low.Sign() > 0:
		ratio := lp.FromRat(cord.Middle()).Quo(lp.FromRat(rope.Middle()))
		if !w.house.Limit(house.Figure{Name: "cord"}).Allows(ratio) {
			return fmt.Sprintf("the cord of %s is %.3g of its rope", n.Part.Name, ratio.Float())
		}
	case takes != nil && (rope.Low.Cmp(takes.Low) < 0 || rope.High.Cmp(takes.High) > 0):
		return fmt.Sprintf("%s does not take %s", n.Part.Name, r.Line.Name)
	}
	return ""
}

// harshBends says what is wrong with a rope that bends under load round such a part.
func harshBends(p *model.Part) []string {
	v := p.Values
	switch {
	case p.Kind.IsLine():
		return []string{p.Name + " is textile, and a loaded rope runs over it"}
	case p.Kind == model.Edge && !v.Padded && v.Efficiency == nil:
		return []string{p.Name + " is a bare edge under a loaded rope"}
	}
	return nil
}

// isLoaded says whether a rope at a node may carry anything in any phase.
func (w *Worked) isLoaded(r *model.Rope, node int) bool {
	for _, ph := range w.Result.Every() {
		for _, s := range ph.Strands {
			if s.Rope == r && (s.Index == node || s.Index == r.Before(node)) && s.Most().Sign() > 0 {
				return true
			}
		}
	}
	return false
}
