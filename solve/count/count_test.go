package count_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/solve"
	"fairlead/solve/count"
	"fairlead/solve/lp"
)

func counted(t *testing.T, text string) *count.Count {
	file, problems := resolve.File(syntax.Parse(source.New("test.rig", text)))
	require.Empty(t, problems)
	res := solve.Rig(file.Rigs[0])
	c := count.Of(res, res.Main())
	require.NotNil(t, c, res.Status)
	return c
}

// outline writes a count step by step in a short form.
func outline(c *count.Count) string {
	var out strings.Builder
	for _, s := range c.Steps {
		fmt.Fprintf(&out, "%s", s.Kind)
		if s.Part != nil {
			fmt.Fprintf(&out, " %s", s.Part.Name)
		}
		if s.Body != nil {
			fmt.Fprintf(&out, " of %s", s.Body.Parts[0].Name)
		}
		fmt.Fprintf(&out, " %v", s.Value)
		if s.Kind == count.MovingBend {
			fmt.Fprintf(&out, " force %v", s.Force)
		}
		for _, i := range s.Items {
			fmt.Fprintf(&out, ", %s %v", i.Part.Name, i.Value)
		}
		for _, e := range s.Equations {
			fmt.Fprintf(&out, "; %s:", e.Body.Parts[0].Name)
			for _, term := range e.Terms {
				fmt.Fprintf(&out, " %v·x%d", term.Factor, term.Unknown)
			}
			fmt.Fprintf(&out, " = %v", e.Constant)
		}
		for i, u := range s.Unknowns {
			fmt.Fprintf(&out, "; x%d = %v", i, u.Value)
		}
		if s.Reaches {
			out.WriteString(" reaches the load")
		}
		out.WriteString(" |")
		for i, stroke := range s.Line.Strokes {
			if i == 0 {
				fmt.Fprintf(&out, " %s", s.Line.Rope.Nodes[stroke].Name())
			}
			fmt.Fprintf(&out, " %s", s.Line.Rope.Strokes[stroke])
			if known := s.Line.Known[i]; known != nil {
				fmt.Fprintf(&out, "%v", *known)
			}
			fmt.Fprintf(&out, " %s", s.Line.Rope.Nodes[s.Line.Rope.After(stroke)].Name())
		}
		out.WriteString("\n")
	}
	return out.String()
}

func TestCountOfThreeToOne(t *testing.T) {
	c := counted(t, `
anchor head
load litter
hauler team
pulley top on head holds
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team
`)
	assert.Equal(t, `pull team 1 | runner /1 team
moving-bend runner of grab 1 force 2 | top \1 runner /1 team
fixed-bend top 1 | grab /1 top \1 runner
sum of grab 3, grab 1, runner 2 reaches the load | litter /3 grab /1 top
`, outline(c))
}

func TestCountOfFiveToOne(t *testing.T) {
	c := counted(t, `
anchor head
anchor rear
load litter
hauler team
pulley top on head holds
hitch grab
pulley runner on grab
pulley block
rope long
rope second
reeve long: litter / grab / top \ block / team
reeve second: rear \ runner / block
`)
	assert.Equal(t, `pull team 1 | block /1 team
moving-bend block of block 1 force 2 | top \1 block /1 team
fixed-bend top 1 | grab /1 top \1 block
sum of block 2, block 2 | runner /2 block
moving-bend runner of grab 2 force 4 | rear \2 runner /2 block
ends rear 2 | rear \2 runner
sum of grab 5, grab 1, runner 4 reaches the load | litter /5 grab /1 top
`, outline(c))
}

func TestCountOfALoop(t *testing.T) {
	c := counted(t, `
anchor beam
pulley top on beam
pulley fly
ring hook
load crate on hook
pulley low on hook
hauler team
rope long
rope whip
reeve long: hook / top \ fly
reeve whip: fly \ low / fly \ team
`)
	assert.Equal(t, `pull team 1 | fly \1 team
moving-bend fly of fly 1 force 2 | low /1 fly \1 team
moving-bend low of hook 1 force 2 | fly \1 low /1 fly
ends fly of fly 1 | fly \1 low
sum of fly 3, fly -3 | top \3 fly
fixed-bend top 3 | hook /3 top \3 fly
total of hook 5, hook 3, low 2 | hook /3 top
`, outline(c))
}

func TestCountWithCounterweight(t *testing.T) {
	c := counted(t, `
anchor head
load litter mass 2 kg
counterweight stone mass 1 kg
hauler team
rope long
rope tag
reeve long: litter / head \ stone
reeve tag: stone \ team
`)
	assert.Equal(t, `pull team 1/2 | stone \1/2 team
ends stone of stone 1/2 | stone \1/2 team
sum of stone 1, stone -1/2, stone -1/2 | head \1 stone
fixed-bend head 1 | litter /1 head \1 stone
total of litter 1, litter 1 | litter /1 head
`, outline(c))
}

// Equations are rare; this rig, drawn at random, needs them.
func TestCountWithEquations(t *testing.T) {
	c := counted(t, `
anchor head
pulley top on head
load litter mass 90 kg
counterweight stone mass 30 kg
hauler team
hitch lower-grab
hitch upper-grab
hitch hand-grab
rope back
rope swing
rope main
reeve back: head / lower-grab / upper-grab / top \ stone
reeve swing: litter / top / top \ litter
reeve main: litter / hand-grab / team
`)
	found := false
	for _, s := range c.Steps {
		for _, e := range s.Equations {
			found = true
			sum := lp.Num{}
			for _, term := range e.Terms {
				sum = sum.Add(term.Factor.Mul(s.Unknowns[term.Unknown].Value))
			}
			assert.Zero(t, sum.Cmp(e.Constant), "balance of %s", e.Body.Parts[0].Name)
		}
	}
	assert.True(t, found)
}

// Whatever the rig, a count in pulls ends at its advantage, by force and by travel.
func TestRandomCountsEndAtTheAdvantage(t *testing.T) {
	dice, counts := langtest.Seeded(3), 0
	for range 4000 {
		text := langtest.RandomRig(dice)
		file, _ := resolve.File(syntax.Parse(source.New("test.rig", text)))
		res := solve.Rig(file.Rigs[0])
		c := count.Of(res, res.Main())
		if c == nil || c.Unit != count.OfPull {
			continue
		}
		counts++
		last := c.Steps[len(c.Steps)-1]
		require.NotNil(t, c.Travel, text)
		assert.Zero(t, c.Force.Cmp(*c.Travel), text)
		assert.Zero(t, last.Value.Cmp(*c.Force), "%s\n%s", text, outline(c))
	}
	assert.Greater(t, counts, 100)
}
