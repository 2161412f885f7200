package solve_test

import (
	"fmt"
	"strings"

	"fairlead/lang/langtest"
)

// drawnRig writes a small rig in which every part has a position and every slack
// rope a length: with knots, legs, stoppers and back-ties, as random rigs without
// positions have none.
func drawnRig(d langtest.Dice) string {
	g := &drawing{Dice: d, at: map[string]float64{}}
	g.parts()
	for i, n := 0, 1+d.UpTo(2); i < n; i++ {
		g.rope(fmt.Sprintf("rope%d", i))
	}
	for i, n := 0, d.UpTo(3); i < n; i++ {
		g.backTie(fmt.Sprintf("tie%d", i))
	}
	return g.text.String()
}

type drawing struct {
	langtest.Dice
	text        strings.Builder
	at          map[string]float64
	bends, ties []string
	count       int
}

func (g *drawing) line(format string, args ...any) { fmt.Fprintf(&g.text, format+"\n", args...) }

func (g *drawing) pick(names []string) string { return names[g.UpTo(len(names))] }

// part writes a part at a height from low to high, in half metres.
func (g *drawing) part(kind, name, clauses string, low, high int) {
	g.at[name] = float64(low+g.UpTo(high-low+1)) / 2
	g.line("%s %s%s at %g m", kind, name, clauses, g.at[name])
}

func (g *drawing) on(kind, name, on, clauses string) {
	g.at[name] = g.at[on]
	g.line("%s %s on %s%s", kind, name, on, clauses)
}

func (g *drawing) parts() {
	g.part("anchor", "head", "", 20, 30)
	g.part("anchor", "tree", "", 12, 40)
	fixed := []string{"head", "tree"}
	if g.UpTo(3) == 0 {
		g.part("focal", "master", "", 20, 26)
		g.line("leg left from head to master angle -20 deg\nleg right from tree to master angle 20 deg")
		fixed = append(fixed, "master")
	}
	for i := range 1 + g.UpTo(2) {
		g.on("pulley", fmt.Sprintf("top%d", i), g.pick(fixed), "")
		g.bends = append(g.bends, fmt.Sprintf("top%d", i))
	}
	slope := []string{"", "", "", "", " slope 35 deg friction 0.3", " slope 25 deg friction 0.8"}[g.UpTo(6)]
	g.part("load", "litter", fmt.Sprintf(" mass %d kg", 50+10*g.UpTo(8))+slope, 0, 6)
	g.ties = append(append(g.ties, fixed...), "litter", "litter")
	if g.UpTo(3) == 0 {
		g.part("counterweight", "stone", fmt.Sprintf(" mass %d kg", 20+10*g.UpTo(8)), 0, 16)
		g.ties = append(g.ties, "stone")
	}
	for i := range g.UpTo(3) {
		name := fmt.Sprintf("block%d", i)
		if g.UpTo(3) == 0 {
			g.on("pulley", name, "litter", "")
		} else {
			g.part("pulley", name, "", 4, 16)
		}
		g.bends, g.ties = append(g.bends, name), append(g.ties, name)
	}
	g.part("hauler", "team", "", 0, 30)
}

// rope writes a rope whose strokes follow from the positions of its nodes.
func (g *drawing) rope(name string) {
	last := g.pick(g.ties)
	line := last
	add := func(next, clause string) {
		if g.at[next] == g.at[last] { // no strand: a loop there would have no slack
			return
		}
		stroke := map[bool]string{true: "/", false: `\`}[g.at[next] > g.at[last]]
		if g.UpTo(4) == 0 {
			line += " " + stroke + " " + g.grip((g.at[next]+g.at[last])/2)
		}
		line += " " + stroke + " " + next + clause
		last = next
	}
	for range g.UpTo(4) {
		switch g.UpTo(5) {
		case 0:
			add(g.knotOn(g.pick(g.ties)), "")
		default:
			add(g.pick(g.bends), []string{"", "", " (holds)"}[g.UpTo(3)])
		}
	}
	end := "team"
	if g.UpTo(4) == 0 {
		end = g.pick(g.ties)
	}
	if g.UpTo(4) == 0 || g.at[end] == g.at[last] {
		g.count++
		end = fmt.Sprintf("stop%d", g.count)
		g.at[end] = g.at[last] - float64(1+g.UpTo(8))/2
		g.line("knot %s at %g m", end, g.at[end])
	}
	add(end, "")
	g.line("rope %s\nreeve %s: %s", name, name, line)
}

func (g *drawing) knotOn(part string) string {
	g.count++
	name := fmt.Sprintf("knot%d", g.count)
	g.on("knot", name, part, "")
	return name
}

// grip writes a hitch at a height, often with a pulley on it for later ropes.
func (g *drawing) grip(at float64) string {
	g.count++
	name := fmt.Sprintf("grab%d", g.count)
	g.at[name] = at
	g.line("hitch %s at %g m", name, at)
	if g.UpTo(2) == 0 {
		g.on("pulley", "runner-"+name, name, "")
		g.bends = append(g.bends, "runner-"+name)
	}
	return name
}

// backTie writes a slack rope between two parts, sometimes one that runs on taut.
func (g *drawing) backTie(name string) {
	from, to := g.pick(g.ties), g.pick(g.ties)
	for g.at[from] == g.at[to] {
		to = g.pick([]string{"head", "tree", "litter"})
		from = g.pick([]string{"head", "tree", "litter"})
	}
	long := abs(g.at[from]-g.at[to]) + float64(1+g.UpTo(8))/4
	line := from + " ~ " + to
	if g.UpTo(3) == 0 {
		knot := g.knotOn(to)
		end := g.pick([]string{"head", "tree", "litter"})
		if g.at[end] != g.at[knot] {
			stroke := map[bool]string{true: "/", false: `\`}[g.at[end] > g.at[knot]]
			line = from + " ~ " + knot + " " + stroke + " " + end
			long += abs(g.at[end] - g.at[knot])
		}
	}
	g.line("rope %s length %g m\nreeve %s: %s", name, long, name, line)
}

func abs(f float64) float64 { return max(f, -f) }
