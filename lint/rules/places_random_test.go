package rules

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/solve"
)

// randomTackle is a random tackle: a rope that goes to and fro between pulleys at the head and
// pulleys on the litter, some of which it passes more than once.
func randomTackle(d langtest.Dice) line {
	l := line{nodes: []string{"head"}, strokes: []string{`\`}}
	if d.UpTo(2) == 0 {
		l = line{nodes: []string{"litter"}, strokes: []string{"/"}}
	}
	for range 1 + d.UpTo(6) {
		name, stroke := "low", "/"
		if l.strokes[len(l.strokes)-1] == "/" {
			name, stroke = "top", `\`
		}
		name += fmt.Sprint(d.UpTo(2))
		if d.UpTo(6) == 0 {
			name += " (holds)"
		}
		l.nodes, l.strokes = append(l.nodes, name), append(l.strokes, stroke)
	}
	l.nodes = append(l.nodes, "team")
	return l
}

// efficiencies are those of the four pulleys of a random tackle.
type efficiencies map[string]int

func (e efficiencies) in(l line) string {
	text := "anchor head\nload litter\nhauler team\nrope fall\n"
	for _, name := range []string{"top0", "top1", "low0", "low1"} {
		on := "head"
		if strings.HasPrefix(name, "low") {
			on = "litter"
		}
		text += fmt.Sprintf("pulley %s on %s efficiency %d %%\n", name, on, e[name])
	}
	return text + "reeve fall: " + l.String() + "\n"
}

// exchanged gives the efficiencies of two pulleys to each other.
func (e efficiencies) exchanged(a, b string) efficiencies {
	other := efficiencies{}
	for name, eta := range e {
		other[name] = eta
	}
	other[a], other[b] = e[b], e[a]
	return other
}

// advantage is the actual one of a text; nil if there is none.
func advantage(text string) *solve.Force {
	rig := load.Text("yard.rig", text).Model.Rigs[0]
	main := solve.Rig(rig).Main()
	if rig.Incomplete || main == nil || !main.Actual.Known() || !main.Actual.Advantage.Known() {
		return nil
	}
	return &main.Actual.Advantage
}

// swappable says whether two pulleys of a line may be exchanged: both are passed equally
// often, and neither holds.
func swappable(l line, a, b string) bool {
	passes := map[string]int{}
	for _, n := range l.nodes {
		name, clause, _ := strings.Cut(n, " ")
		if (name == a || name == b) && clause != "" {
			return false
		}
		passes[name]++
	}
	return passes[a] > 0 && passes[a] == passes[b]
}

// What is said of two pulleys comes true if they are exchanged in the text, no other two
// win more, and where nothing is said no two win enough, or the exchange brings another
// finding.
func TestBestPulleyElsewhereOnRandomRigs(t *testing.T) {
	names := []string{"top0", "top1", "low0", "low1"}
	dice, said := langtest.Seeded(43), 0
	for range 200 {
		l, eta := randomTackle(dice), efficiencies{}
		for _, n := range names {
			eta[n] = []int{60, 75, 90, 95}[dice.UpTo(4)]
		}
		now := advantage(eta.in(l))
		if now == nil {
			continue
		}
		best, after := 0.03, ""
		for i, a := range names {
			for _, b := range names[:i] {
				text := eta.exchanged(a, b).in(l)
				if then := advantage(text); then != nil && swappable(l, a, b) && lint.Gain(*now, *then).Float() > best+1e-12 {
					best, after = lint.Gain(*now, *then).Float(), text
				}
			}
		}
		f, found := examined(eta.in(l))
		d := of("best-pulley-elsewhere", found)
		switch {
		case d != nil:
			said++
			require.NotEmpty(t, after, d.Message)
			require.Len(t, d.Fixes, 1)
			then := advantage(diag.Apply(f.File, d.Fixes[0].Edits))
			assert.Contains(t, d.Message, lint.Advantage(*now)+", with the two exchanged "+lint.Advantage(*then)+", "+lint.More(*now, *then))
			assert.Contains(t, d.Fixes[0].Gives, lint.Advantage(*then))
			assert.LessOrEqual(t, lint.Gain(*now, *then).Float(), best+1e-9)
		case after != "":
			_, others := examined(after)
			assert.Greater(t, len(others), len(found), "not said of:\n%s", eta.in(l))
		}
	}
	assert.Greater(t, said, 20)
}

// Whatever stands where: the rules bear it, and what they offer the text still bears.
func TestPlacesOnRandomRigs(t *testing.T) {
	dice, seen := langtest.Seeded(41), map[string]int{}
	for i := range 700 {
		text := decorated(dice, langtest.RandomRig(dice))
		if i%2 == 0 {
			text = efficiencies{"top0": 90, "top1": 60, "low0": 80, "low1": 90}.in(randomTackle(dice))
		}
		f, found := examined(text)
		for _, d := range found {
			for _, r := range places {
				if d.Rule != r.Name {
					continue
				}
				seen[d.Rule]++
				assert.Equal(t, strings.TrimSpace(d.Message), d.Message)
				assert.NotContains(t, d.Message, "%!")
				assert.NotEmpty(t, d.Subject)
				for _, fix := range d.Fixes {
					after, again := examined(diag.Apply(f.File, fix.Edits))
					assert.Empty(t, only("syntax", again), "%s\n%s", fix.Title, after.File.Text)
				}
			}
		}
	}
	for _, r := range places {
		if r != cordToRope && r != ropeOutsideDevice && r != threeWayCarabiner && r != moreBendsThanSheaves { // no diameters, hardly any two angles, no sheaves
			assert.Positive(t, seen[r.Name], r.Name)
		}
	}
}

// decorated makes other hardware of some pulleys of a rig, lets some hang in carabiners,
// and leads some ropes over an edge.
func decorated(dice langtest.Dice, text string) string {
	var b strings.Builder
	eta := func() string { return fmt.Sprintf(" efficiency %d %%", 50+5*dice.UpTo(10)) }
	for i, l := range strings.Split(text, "\n") {
		words := strings.Fields(l)
		switch {
		case strings.HasPrefix(l, "pulley ") && strings.Contains(l, " on head") && dice.UpTo(3) == 0:
			fmt.Fprintf(&b, "carabiner link%d on %s plain\n", i, words[3])
			l = strings.Replace(l, " on "+words[3], fmt.Sprintf(" on link%d", i), 1) + eta()
		case strings.HasPrefix(l, "pulley ") && dice.UpTo(3) == 0:
			l = "carabiner" + strings.TrimPrefix(l, "pulley") + eta()
		case strings.HasPrefix(l, "pulley ") && strings.Contains(l, " on ") && !strings.Contains(l, "mass") && dice.UpTo(6) == 0:
			l = "sling" + strings.TrimPrefix(l, "pulley")
		case strings.HasPrefix(l, "pulley "):
			l += eta()
		case strings.HasPrefix(l, "reeve ") && dice.UpTo(3) == 0:
			fmt.Fprintf(&b, "edge lip%d angle 120 deg friction 0.4\n", i)
			l = strings.Replace(l, " "+words[3]+" ", fmt.Sprintf(" %s lip%d %s ", words[3], i, words[3]), 1)
		case strings.HasPrefix(l, "reeve ") && dice.UpTo(2) == 0:
			l = strings.Replace(l, "top0 ", fmt.Sprintf("top0 (angle %d deg) ", 20*dice.UpTo(9)), 1)
		}
		b.WriteString(l + "\n")
	}
	return b.String()
}
