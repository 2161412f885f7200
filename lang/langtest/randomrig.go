package langtest

import (
	"fmt"
	"math/rand"
	"strings"
)

// Dice is what a random rig is drawn with.
type Dice interface {
	// UpTo gives a number from 0 to n-1.
	UpTo(n int) int
}

// Seeded makes dice of a seed: the same ones each time.
func Seeded(seed int64) Dice { return seeded{rand.New(rand.NewSource(seed))} }

type seeded struct{ *rand.Rand }

func (s seeded) UpTo(n int) int { return s.Intn(n) }

// RandomRig writes a rig of a few bodies and ropes. It is often useless, as drawn
// rigs are when a strand is wrong: that is what the solver must bear.
func RandomRig(d Dice) string {
	g := &rigWriter{Dice: d}
	g.parts()
	for i, n := 0, 1+d.UpTo(3); i < n; i++ {
		g.rope(fmt.Sprintf("rope%d", i))
	}
	return g.text.String()
}

type rigWriter struct {
	Dice
	text strings.Builder
	// bends can turn a rope, ties can end one; people holds the haulers.
	bends, ties, people []string
	grips               int
}

func (g *rigWriter) line(format string, args ...any) { fmt.Fprintf(&g.text, format+"\n", args...) }

func (g *rigWriter) parts() {
	for i, n := 0, 1+g.UpTo(2); i < n; i++ {
		g.line("anchor head%d", i)
		g.line("pulley top%d on head%d", i, i)
		g.bends = append(g.bends, fmt.Sprintf("top%d", i))
		g.ties = append(g.ties, fmt.Sprintf("head%d", i))
	}
	masses := g.UpTo(2) == 0
	mass := func() string {
		if !masses {
			return ""
		}
		return fmt.Sprintf(" mass %d kg", 10+10*g.UpTo(9))
	}
	g.line("load litter%s", mass())
	g.ties = append(g.ties, "litter", "litter")
	if g.UpTo(2) == 0 {
		g.line("counterweight stone%s", mass())
		g.ties = append(g.ties, "stone")
	}
	for i, n := 0, g.UpTo(3); i < n; i++ {
		on, own := "", ""
		if g.UpTo(3) == 0 {
			on = " on litter"
		}
		if masses && g.UpTo(3) == 0 {
			own = " mass 2 kg"
		}
		g.line("pulley block%d%s%s", i, on, own)
		g.bends = append(g.bends, fmt.Sprintf("block%d", i))
		g.ties = append(g.ties, fmt.Sprintf("block%d", i))
	}
	for i, n := 0, 1+g.UpTo(2); i < n; i++ {
		on := ""
		if g.UpTo(5) == 0 {
			on = " on litter"
		}
		g.line("hauler team%d%s", i, on)
		g.people = append(g.people, fmt.Sprintf("team%d", i))
	}
}

// rope writes one reeving line: a tie, some bends and grips, and an end.
func (g *rigWriter) rope(name string) {
	g.line("rope %s", name)
	stroke := []string{"/", `\`}[g.UpTo(2)]
	line := []string{g.ties[g.UpTo(len(g.ties))], stroke}
	for i, n := 0, g.UpTo(5); i < n; i++ {
		if g.UpTo(3) == 0 {
			line = append(line, g.grip(), stroke)
			continue
		}
		bend := g.bends[g.UpTo(len(g.bends))]
		if g.UpTo(4) == 0 {
			bend += " (holds)"
		}
		if g.UpTo(6) > 0 {
			stroke = map[string]string{"/": `\`, `\`: "/"}[stroke]
		}
		line = append(line, bend, stroke)
	}
	end := g.people[g.UpTo(len(g.people))]
	if g.UpTo(4) == 0 {
		end = g.ties[g.UpTo(len(g.ties))]
	}
	g.line("reeve %s: %s %s", name, strings.Join(line, " "), end)
}

// grip writes a hitch, often with a pulley on it that later ropes may use.
func (g *rigWriter) grip() string {
	name := fmt.Sprintf("grab%d", g.grips)
	g.grips++
	g.line("hitch %s", name)
	if g.UpTo(2) == 0 {
		g.line("pulley runner-%s on %s", name, name)
		g.bends = append(g.bends, "runner-"+name)
	}
	return name
}
