package report

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// incomplete stands above a rig of which an error left something out.
const incomplete = "Something in error is left out below: this is not the whole rig."

// noHaul says why a rig has no haul at all; empty if it has one.
func noHaul(res *solve.Result) string {
	switch {
	case res.Status == solve.Unsolved:
		return "not solved: there is no load or no rope to compute with"
	case len(res.Hauls()) == 0:
		return "no advantage: nobody hauls on a rope of this rig"
	}
	return ""
}

// outcome says in one sentence what comes of a phase that raises nothing.
func outcome(p *solve.Phase) string {
	who := "the haul"
	if p.Hauler != nil {
		who = page.Clean(p.Hauler.Name)
	}
	switch p.Status {
	case solve.Falls:
		return sinking(p, who)
	case solve.RunsUp:
		return bodies(moving(p.Ray, +1)) + " " + agree(moving(p.Ray, +1), "runs", "run") +
			" away upward while " + who + " hauls: heavier weights pull the other way"
	case solve.Unbalanced:
		return bodies(moving(p.Ray, 0)) + " " + agree(moving(p.Ray, 0), "has", "have") +
			" no balance while " + who + " hauls: nothing holds against it"
	case solve.Jammed:
		return jam(p.Jam, who)
	case solve.RaisesNothing:
		return who + " raises nothing: the rope runs and the load does not rise"
	}
	return who + ": " + string(p.Status)
}

func sinking(p *solve.Phase, who string) string {
	down := moving(p.Ray, -1)
	if len(p.Ray) == 0 || len(down) == 0 {
		return "not held while " + who + " hauls"
	}
	s := bodies(down) + " " + agree(down, "is", "are") + " not held while " + who + " hauls"
	if up := p.Unpinned; len(up) > 0 {
		s += ": nothing pulls " + bodies(up) + " back"
	}
	return s
}

func jam(j *solve.Jam, who string) string {
	if j == nil {
		return "jammed: " + who + " cannot move the rope"
	}
	name := func(node int) string { return page.Clean(j.Rope.Nodes[node].Name()) }
	return "jammed: " + page.Clean(j.Rope.Line.Name) + " is fast between " + name(j.From) + " and " +
		name(j.To) + ", so " + who + " cannot move it"
}

// released says in words what happens when everyone lets go.
func released(res *solve.Result, s scale) string {
	stay := res.Released
	far := dropped(stay.Drop, s)
	if stay.Answer != solve.Held && stay.LoadsStay() {
		return heldBy(res.Hold()) + "; " + bodies(stay.Sinking) + " " +
			agree(stay.Sinking, "slides", "slide") + " down by " + agree(stay.Sinking, "its", "their") + " own weight"
	}
	switch stay.Answer {
	case solve.Held:
		return heldBy(res.Hold()) + grounded(stay.Grounded)
	case solve.Caught:
		if far == "" {
			far = "by the slack"
		}
		return "drops " + far + ", then is caught" + through(stay.Catching)
	case solve.Jams:
		return strings.TrimSpace("not held: drops "+far) + " until parts jam" + meeting(stay.Meeting)
	case solve.Down:
		if len(stay.Sinking) == 0 {
			return "falls"
		}
		return "falls: " + bodies(stay.Sinking) + " " + agree(stay.Sinking, "goes", "go") + " down"
	}
	return "unknown"
}

// grounded names the loads that the friction of the ground alone keeps.
func grounded(list []*solve.Body) string {
	if len(list) == 0 {
		return ""
	}
	return "; " + bodies(list) + " by ground friction alone"
}

func through(strands []solve.Strand) string {
	var names []string
	for _, s := range strands {
		names = append(names, strandName(s))
	}
	if len(names) == 0 {
		return ""
	}
	return " by " + page.List(names)
}

func meeting(pairs [][2]*model.Part) string {
	var met []string
	for _, pair := range pairs {
		met = append(met, page.Clean(pair[0].Name)+" meets "+page.Clean(pair[1].Name))
	}
	if len(met) == 0 {
		return ""
	}
	return ", " + page.List(met)
}

// heldBy names the grips that hold hands off, and those that carry nothing yet
// but can take over.
func heldBy(p *solve.Phase) string {
	if p == nil {
		return "held"
	}
	var now, too []string
	for _, g := range grips(p) {
		switch name := page.Clean(g.part.Name); {
		case !g.force.Known():
		case !g.force.Value.IsZero():
			now = append(now, name)
		case !g.force.Most().IsZero():
			too = append(too, name)
		}
	}
	if len(now) == 0 {
		return "held"
	}
	s := "held by " + page.List(now)
	if len(too) > 0 {
		s += "; " + page.List(too) + " can take it too"
	}
	return s
}

// strandName gives a strand as it is written: "top \ runner".
func strandName(s solve.Strand) string {
	from, to := s.Rope.Nodes[s.Index], s.Rope.Nodes[s.Rope.After(s.Index)]
	return page.Clean(from.Name()) + " " + s.Rope.Strokes[s.Index].String() + " " + page.Clean(to.Name())
}

// moving gives the bodies that move the given way along a ray: up, down, or,
// for 0, either.
func moving(ray []solve.Motion, way int) []*solve.Body {
	var list []*solve.Body
	for _, m := range ray {
		if s := m.Rise.Sign(); s != 0 && (way == 0 || s == way) {
			list = append(list, m.Body)
		}
	}
	return list
}

// bodies names bodies by what a rigger looks at: their loads, else their first part.
func bodies(moved []*solve.Body) string {
	var names []string
	for _, b := range moved {
		if len(b.Loads) == 0 {
			names = append(names, page.Clean(b.Parts[0].Name))
		}
		for _, p := range b.Loads {
			names = append(names, page.Clean(p.Name))
		}
	}
	return page.List(names)
}

func agree(bodies []*solve.Body, one, many string) string {
	if len(bodies) == 1 && len(bodies[0].Loads) < 2 {
		return one
	}
	return many
}
