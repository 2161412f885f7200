package solve_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/solve"
)

// Three to one, pulled up the line, and pulled down over a redirect.
const (
	pulledUp = "anchor head\nload litter\nhauler team\npulley top on head efficiency 90 % holds litter\nhitch grab\n" +
		"pulley runner on grab efficiency 90 %\nrope long\nreeve long: litter / grab / top \\ runner / team\n"
	pulledDown = "anchor head\nload litter\nhauler team\npulley top on head efficiency 90 % holds litter\nhitch grab\n" +
		"pulley runner on grab efficiency 90 %\npulley corner on head efficiency 90 %\nrope long\nreeve long: litter / grab / top \\ runner / corner \\ team\n"
)

// lastOf resolves the last rig of a text; ok is false if the text has an error.
func lastOf(text string) (rig *model.Rig, ok bool) {
	file, problems := resolve.File(syntax.Parse(source.New("test.rig", text)))
	for _, p := range problems {
		if p.Severity == diag.Error {
			return nil, false
		}
	}
	return file.Rigs[len(file.Rigs)-1], true
}

// stacked puts two rigs into one: the hauler of the first hauls the load of the second.
func stacked(a, b, hauler string) string {
	return "rig a\n" + a + "rig b\n" + b + "rig both\ninclude a as a\ninclude b as b\njoin a." + hauler + " to b.litter\n"
}

// byHand writes the same rig without include and join. The second one is turned over
// if the hauler of the first pulls down.
func byHand(a, b, hauler string, down bool) string {
	return renamed(a, "a-", hauler, false) + renamed(b, "b-", "", down)
}

// renamed writes the statements of a rig with other names: without its hauler, whose ends
// go to the second rig's load, or, if none is named, with a knot for its load.
func renamed(rig, prefix, hauler string, turn bool) string {
	var out strings.Builder
	for _, line := range strings.Split(strings.TrimSpace(rig), "\n") {
		words := strings.Fields(line)
		switch {
		case words[0] == "hauler" && words[1] == hauler:
			continue
		case words[0] == "load" && hauler == "":
			words = []string{"knot", "litter"}
		}
		for i := 1; i < len(words); i++ {
			name := strings.Trim(words[i], ":()")
			switch {
			case words[i] == "/" && turn:
				words[i] = `\`
			case words[i] == `\` && turn:
				words[i] = "/"
			case name == hauler && words[0] == "reeve":
				words[i] = "b-litter"
			case i == 1, words[0] == "reeve" && !strings.ContainsAny(words[i], `/\~(`), words[i-1] == "on", words[i-1] == "holds":
				words[i] = prefix + words[i]
			}
		}
		fmt.Fprintln(&out, strings.Join(words, " "))
	}
	return out.String()
}

// sameRig checks that a joined rig and one written by hand do the same in every respect.
func sameRig(t require.TestingT, joined, written *model.Rig, text string) *solve.Result {
	a, b := solve.Rig(joined), solve.Rig(written)
	dashed := func(name string) string { return strings.Replace(name, ".", "-", 1) }
	require.Equal(t, b.Status, a.Status, text)
	require.Equal(t, b.Released.Answer, a.Released.Answer, text)
	require.Len(t, a.Phases, len(b.Phases), text)
	for i, ph := range a.Phases {
		other := b.Phases[i]
		assert.Equal(t, other.Status, ph.Status, text)
		assert.Equal(t, other.Class, ph.Class, text)
		assert.Equal(t, fmt.Sprint(other.Ideal), fmt.Sprint(ph.Ideal), text)
		require.Len(t, ph.Strands, len(other.Strands), text)
		for k, s := range ph.Strands {
			assert.Equal(t, figures(other.Strands[k].Force), figures(s.Force), "%s of %s in\n%s", s.Rope.Line.Name, ph.Name, text)
		}
		require.Len(t, ph.Parts, len(other.Parts), text)
		for k, p := range ph.Parts {
			assert.Equal(t, other.Parts[k].Part.Name, dashed(p.Part.Name), text)
			assert.Equal(t, figures(other.Parts[k].Force), figures(p.Force), "%s in\n%s", p.Part.Name, text)
		}
	}
	for k, p := range joined.Parts {
		assert.Equal(t, b.Without(written.Parts[k]).Answer, a.Without(p).Answer, "without %s in\n%s", p.Name, text)
	}
	return a
}

func figures(f solve.Force) string {
	if !f.Known() {
		return "unknown"
	}
	return fmt.Sprint(f.Value, f.Low, f.High)
}

// ratios gives the ratios of the stages that change the force.
func ratios(ph *solve.Phase) []string {
	var list []string
	for _, s := range ph.Stages {
		if r := s.Ratio.String(); r != "1" {
			list = append(list, r)
		}
	}
	return list
}

func TestNineToOneByJoin(t *testing.T) {
	for _, c := range []struct {
		a, b string
		down bool
	}{{pulledUp, pulledUp, false}, {pulledDown, pulledUp, true}, {pulledUp, pulledDown, false}, {pulledDown, pulledDown, true}} {
		text := stacked(c.a, c.b, "team")
		joined, ok := lastOf(text)
		require.True(t, ok, text)
		res := sameRig(t, joined, read(t, byHand(c.a, c.b, "team", c.down)), text)
		ph := haul(t, res)
		assert.Equal(t, solve.OK, ph.Status)
		assert.Equal(t, "9", ph.Ideal.String())
		assert.Equal(t, solve.Compound, ph.Class)
		assert.Equal(t, []string{"3", "3"}, ratios(ph))
		assert.Equal(t, solve.Held, res.Released.Answer)
	}
	// Without redirects it is the rig of two hitches on one rope: 7.3441 of 9 is left.
	joined, _ := lastOf(stacked(pulledUp, pulledUp, "team"))
	ph := haul(t, solve.Rig(joined))
	assert.Equal(t, "73441/10000", ph.Actual.Advantage.Value.String())
}

func TestTwentySevenToOneByJoin(t *testing.T) {
	text := "rig a\n" + pulledDown + "rig all\ninclude a as x\ninclude a as y\ninclude a as z\njoin x.team to y.litter\njoin y.team to z.litter\n"
	joined, ok := lastOf(text)
	require.True(t, ok)
	ph := haul(t, solve.Rig(joined))
	assert.Equal(t, "27", ph.Ideal.String())
	assert.Equal(t, []string{"3", "3", "3"}, ratios(ph))
	assert.Equal(t, []model.Stroke{model.Up, model.Up, model.Down, model.Up, model.Down}, joined.Ropes[2].Strokes, "turned over twice")
}

// pullsDown says which way the one hauler of a drawn rig pulls all its ropes; fit is
// false if there is no such hauler, or if it pulls both ways.
func pullsDown(rig *model.Rig) (down, fit bool) {
	ways := map[model.Stroke]bool{}
	for _, p := range rig.Parts {
		if p.Kind == model.Hauler && (p.Name != "team0" || p.On != nil) {
			return false, false
		}
	}
	for _, r := range rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role == model.Hauled {
				ways[r.Strokes[i-1]] = true
			}
		}
	}
	return ways[model.Down], len(ways) == 1
}

// Any two rigs that fit, joined, are the rig that one would write by hand; and where
// both raise their loads, the advantage is the product of theirs.
func TestRandomRigsJoined(t *testing.T) {
	random := langtest.Seeded(7)
	census, products := map[solve.Status]int{}, 0
	turned := 0
	for range 3000 {
		pair := [2]string{langtest.RandomRig(random), langtest.RandomRig(random)}
		if joinPair(t, pair, census, &products, &turned); t.Failed() {
			return
		}
	}
	t.Log(census, "turned over:", turned)
	assert.Greater(t, turned, 100)
	assert.Greater(t, len(census), 5)
}

// Rigs that raise their loads make a rig that raises it by the product.
func TestUsefulRigsJoined(t *testing.T) {
	random := langtest.Seeded(11)
	census, products, turned := map[solve.Status]int{}, 0, 0
	const pairs = 300
	for range pairs {
		if joinPair(t, [2]string{usefulRig(random), usefulRig(random)}, census, &products, &turned); t.Failed() {
			return
		}
	}
	assert.Equal(t, map[solve.Status]int{solve.OK: pairs}, census)
	assert.Equal(t, pairs, products)
	assert.Greater(t, turned, pairs/4)
}

// usefulRig writes a rig that raises its load: a tackle of some passes, or a hitch and a
// tackle, perhaps with a redirect before the hauler and a slack line beside it.
func usefulRig(d langtest.Dice) string {
	parts := []string{"anchor head", "load litter", "hauler team0", "pulley upper on head", "pulley lower on litter", "rope fall"}
	var line []string
	switch d.UpTo(3) {
	case 0: // beginning at the load
		line = []string{"litter", "/", "upper", `\`, "lower", "/"}
	case 1: // beginning at the head
		line = []string{"head", `\`, "lower", "/"}
	case 2:
		parts = append(parts, "hitch grab", "pulley runner on grab")
		line = []string{"litter", "/", "grab", "/", "upper", `\`, "runner", "/"}
	}
	for range d.UpTo(3) {
		line = append(line, "upper", `\`, "lower", "/")
	}
	if d.UpTo(2) == 0 {
		parts = append(parts, "pulley corner on head")
		line = append(line, "corner", `\`)
	}
	if d.UpTo(3) == 0 {
		parts = append(parts, "anchor rear", "rope guy", "reeve guy: rear ~ litter")
	}
	return strings.Join(parts, "\n") + "\nreeve fall: " + strings.Join(append(line, "team0"), " ") + "\n"
}

func TestDrawnRigsJoined(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		products, turned := 0, 0
		dice := rapidDice{t}
		joinPair(t, [2]string{langtest.RandomRig(dice), langtest.RandomRig(dice)}, map[solve.Status]int{}, &products, &turned)
	})
}

func joinPair(t require.TestingT, pair [2]string, census map[solve.Status]int, products, turned *int) {
	a, b := read(t, pair[0]), read(t, pair[1])
	down, fit := pullsDown(a)
	if !fit {
		return
	}
	text := stacked(pair[0], pair[1], "team0")
	joined, ok := lastOf(text)
	written, same := lastOf(byHand(pair[0], pair[1], "team0", down))
	require.Equal(t, same, ok, text)
	if !ok { // a weight without mass beside one that has some
		return
	}
	res := sameRig(t, joined, written, text)
	census[res.Status]++
	if down {
		*turned++
	}
	if strings.Contains(pair[0]+pair[1], "mass") || strings.Contains(pair[0]+pair[1], "counterweight") {
		return
	}
	lower, upper := solve.Rig(a).Main(), solve.Rig(b).Main()
	if lower == nil || upper == nil || lower.Ideal == nil || upper.Ideal == nil || len(solve.Rig(b).Hauls()) > 1 {
		return
	}
	whole := res.Main()
	require.NotNil(t, whole, text)
	require.NotNil(t, whole.Ideal, text)
	assert.Equal(t, lower.Ideal.Mul(*upper.Ideal).String(), whole.Ideal.String(), text)
	*products++
}
