package report

import (
	"fmt"
	"slices"
	"strings"

	"fairlead/lang/quantity"
	"fairlead/solve"
	"fairlead/solve/count"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// voice says the steps of a count as an instructor says them aloud.
type voice struct {
	unit count.Unit
	// load is the name of the raised load.
	load string
	// apart says why pull and travel differ, before the pull; empty if unknown.
	apart string
	// length is the word of the unit of length.
	length string
}

func voiceOf(res *solve.Result, c *count.Count) voice {
	v := voice{unit: c.Unit, load: page.Clean(res.Reference.Name),
		length: unitOf(res.Rig, quantity.Length, "m").Word}
	switch {
	case c.Unit == count.OfLoad:
		v.apart = "other weights take part, so "
	case res.Reference.Values.Slope != nil:
		v.apart = "on its slope " + v.load + " does not count whole, so "
	}
	return v
}

// sentence says one step.
func (v voice) sentence(s count.Step) string {
	name := ""
	if s.Part != nil {
		name = page.Clean(s.Part.Name)
	}
	value := number(s.Value)
	switch s.Kind {
	case count.Pull:
		if v.unit == count.OfLoad {
			return fmt.Sprintf("%s counts as 1; %s pulls with %s.", v.load, name, value)
		}
		return fmt.Sprintf("%s pulls with %s.", name, value)
	case count.MovingBend:
		return fmt.Sprintf("Both sides of %s carry %s: it is pulled with %s.", name, value, number(s.Force))
	case count.FixedBend:
		return fmt.Sprintf("%s is fixed; the rope goes on with %s.", name, value)
	case count.Passes:
		return fmt.Sprintf("%s slides; the rope goes on with %s.", name, value)
	case count.Ends:
		return fmt.Sprintf("The rope ends at %s and pulls it with %s.", name, value)
	case count.Sum:
		return v.sum(s)
	case count.Total:
		return v.total(s)
	case count.Equations:
		return "The other forces depend on one another. With a letter for each rope, the balances are:"
	}
	return string(s.Kind)
}

// sum says what meets at a moving body and what its rope gets.
func (v voice) sum(s count.Step) string {
	switch {
	case s.Reaches:
		return fmt.Sprintf("%s: %s gets %s.", meet(s.Items), v.load, number(s.Value))
	case mixed(s.Items):
		return fmt.Sprintf("%s: that leaves %s for its next rope.", meet(s.Items), number(s.Value))
	}
	return fmt.Sprintf("%s: its next rope gets %s.", meet(s.Items), number(s.Value))
}

// total says what meets at the load.
func (v voice) total(s count.Step) string {
	if len(s.Items) == 1 && page.Clean(s.Items[0].Part.Name) == v.load {
		return fmt.Sprintf("%s gets %s.", v.load, number(s.Value))
	}
	return fmt.Sprintf("%s: %s gets %s.", meet(s.Items), v.load, number(s.Value))
}

// meet says the forces at one body: "runner is pulled with 2, the rope past grab
// carries 1". Where not all point one way, each says which way it points.
func meet(items []count.Item) string {
	var said []string
	for k, i := range items {
		said = append(said, strength(i, mixed(items), k == 0))
	}
	return page.List(said)
}

// mixed says whether some forces point up and some down.
func mixed(items []count.Item) bool {
	return slices.ContainsFunc(items, func(i count.Item) bool { return i.Value.Sign() != items[0].Value.Sign() })
}

// strength says one force at a body.
func strength(i count.Item, directed, first bool) string {
	name, value := page.Clean(i.Part.Name), number(i.Value.Abs())
	way := ""
	if directed {
		way = map[int]string{1: " up", -1: " down"}[i.Value.Sign()]
	}
	switch {
	case i.Weight:
		return name + " weighs " + value
	case i.Part.Kind.IsGrip() && first:
		return fmt.Sprintf("The rope past %s carries %s%s", name, value, way)
	case i.Part.Kind.IsGrip():
		return fmt.Sprintf("the rope past %s carries %s%s", name, value, way)
	}
	return fmt.Sprintf("%s is pulled%s with %s", name, way, value)
}

// fragment gives a piece of reeving line with the figures known so far right
// after their strokes: "top \1 runner /1 team".
func (v voice) fragment(f count.Fragment) string {
	if f.Rope == nil {
		return ""
	}
	name := func(node int) string { return page.Clean(f.Rope.Nodes[node].Name()) }
	var b strings.Builder
	for i, s := range f.Strokes {
		switch {
		case i == 0:
			b.WriteString(name(s))
		case f.Rope.After(f.Strokes[i-1]) != s:
			b.WriteString(" … " + name(s))
		}
		b.WriteString(" " + f.Rope.Strokes[s].String())
		if f.Known[i] != nil {
			b.WriteString(onStroke(*f.Known[i]))
		}
		b.WriteString(" " + name(f.Rope.After(s)))
	}
	return b.String()
}

// onStroke gives a figure that follows its stroke; a fraction's bar is not to be
// taken for another stroke.
func onStroke(n lp.Num) string {
	s := number(n)
	if strings.Contains(s, "/") {
		return "(" + s + ")"
	}
	return s
}

// equations writes what cannot be counted on: the letters, the balances, and
// their solution.
func (v voice) equations(s count.Step) []string {
	if s.Kind != count.Equations {
		return nil
	}
	var lines []string
	var solution []string
	for i, u := range s.Unknowns {
		bare := u.Line
		bare.Known = make([]*lp.Num, len(bare.Strokes))
		lines = append(lines, letter(i)+" in "+v.fragment(bare))
		solution = append(solution, letter(i)+" = "+number(u.Value))
	}
	for _, e := range s.Equations {
		lines = append(lines, bodies([]*solve.Body{e.Body})+": "+equation(e))
	}
	return append(lines, "so "+strings.Join(solution, ", "))
}

// letter names the n-th unknown: a to z, then a1 and on.
func letter(n int) string {
	l := string(rune('a' + n%26))
	if n >= 26 {
		l += fmt.Sprint(n / 26)
	}
	return l
}

func equation(e count.Equation) string {
	var b strings.Builder
	for i, t := range e.Terms {
		sign := " + "
		if t.Factor.Sign() < 0 {
			sign = " - "
		}
		if i == 0 {
			sign = map[bool]string{true: "-", false: ""}[t.Factor.Sign() < 0]
		}
		b.WriteString(sign)
		if size := t.Factor.Abs(); size.Cmp(lp.Int(1)) != 0 {
			b.WriteString(number(size) + " ")
		}
		b.WriteString(letter(t.Unknown))
	}
	return b.String() + " = " + number(e.Constant)
}

// closing says the result, the check by travel, and what the fixed points carry.
func (v voice) closing(c *count.Count) []string {
	lines := []string{v.check(c)}
	if len(c.Fixed) > 0 {
		var carried []string
		for _, f := range c.Fixed {
			atMost := ""
			if f.AtMost {
				atMost = "at most "
			}
			carried = append(carried, page.Clean(f.Part.Name)+" carries "+atMost+span(f.Load, number))
		}
		lines = append(lines, page.List(carried)+".")
	}
	if c.Open {
		lines = append(lines, "The ropes can share these forces in more than one way; counted is the middle.")
	}
	return lines
}

// check compares the count with the way of rope and load.
func (v voice) check(c *count.Count) string {
	if c.Travel == nil {
		return "The load rises at no fixed rate, so there is no check by travel."
	}
	rope, load := number(*c.Travel), "1"
	if exact := c.Travel.Rat(); exact != nil && len(exact.RatString()) <= 15 {
		rope, load = exact.Num().String(), exact.Denom().String()
	}
	travel := fmt.Sprintf("%s %s of rope hauled, %s %s raised", rope, v.length, load, v.length)
	if c.Force == nil || c.Force.Cmp(*c.Travel) != 0 {
		return fmt.Sprintf("By travel %s; %sthe pull is %s of the load.", travel, v.apart, number(c.Force.Inv()))
	}
	return fmt.Sprintf("%s to %s. Check by travel: %s.", rope, load, travel)
}
