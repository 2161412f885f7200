package report

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/load"
	"fairlead/solve"
)

// speak solves the first rig of a text.
func speak(t *testing.T, text string) *Speech {
	t.Helper()
	l := load.Text("speech.rig", text)
	require.Empty(t, l.Problems)
	return SpeechOf(solve.Rig(l.Model.Rigs[0]))
}

const spokenRig = `anchor head strength 30 kN
load litter mass 180 kg
hauler team people 3
pulley top on head efficiency 92 % holds litter
hitch grab
pulley runner on grab efficiency 92 %
rope long
reeve long: litter / grab / top \ runner / team
`

func TestSpeechSaysWhatTextSays(t *testing.T) {
	s := speak(t, spokenRig)
	assert.Equal(t, "3:1 simple, 2.77 with friction, pull 0.638 kN, 0.213 kN for each of 3; hands off: held by top", s.Line())
	assert.Equal(t, "3:1", s.Advantage())
	rig := s.res.Rig
	assert.Equal(t, "1.77 kN", s.Strand(rig.Ropes[0], 0))
	assert.Equal(t, "1.77 kN (count 3) hauling, 1.77 kN held", s.StrandInPhases(rig.Ropes[0], 0))
	assert.Equal(t, "0.638 kN (count 1) hauling, nothing held", s.StrandInPhases(rig.Ropes[0], 3))
	for name, want := range map[string]string{
		"head":   "carries 1.13 kN hauling, 1.77 kN held: 16 times under its strength",
		"grab":   "grips 1.23 kN hauling",
		"team":   "pulls 0.638 kN hauling",
		"litter": "weighs 1.77 kN",
	} {
		assert.Equal(t, want, s.Part(rig.Part(name)))
	}
	assert.Equal(t, "if it fails: falls", s.Without(rig.Part("head")))
	assert.Equal(t, "if it fails: held", s.Without(rig.Part("grab")))
	assert.Empty(t, s.Without(rig.Part("litter")))
}

func TestSpeechOfWhatDoesNotHaul(t *testing.T) {
	s := speak(t, "anchor head\nload litter\nhauler team\npulley top on head holds\nhitch grab\npulley runner on grab\nrope long\n"+
		"reeve long: litter / top \\ grab \\ runner / team\n")
	assert.Equal(t, "team raises nothing: the rope runs and the load does not rise; hands off: held by top", s.Line())
	assert.Empty(t, s.Advantage())
	nobody := speak(t, "anchor head\nload litter\nrope long\nreeve long: litter / head\n")
	assert.Equal(t, "no advantage: nobody hauls on a rope of this rig; hands off: held", nobody.Line())
}

func TestSpeechWithoutMassCounts(t *testing.T) {
	s := speak(t, "anchor head\nload litter\nhauler team\npulley top on head holds\nhitch grab\npulley runner on grab\nrope long\n"+
		"reeve long: litter / grab / top \\ runner / team ~ tail\n")
	rope := s.res.Rig.Ropes[0]
	var said []string
	for i := range rope.Strokes {
		said = append(said, s.Strand(rope, i))
	}
	assert.Equal(t, []string{"3", "1", "1", "1", ""}, said)
}

func TestSpeechOfSeveralHaulers(t *testing.T) {
	s := speak(t, "anchor head\nload litter mass 50 kg\nhauler red\nhauler blue\npulley a on litter\npulley b on litter\nrope long\nrope short\n"+
		"reeve long: head \\ a / red\nreeve short: head \\ b / blue\n")
	assert.Contains(t, s.Advantage(), " by red")
	assert.Contains(t, s.Advantage(), " by blue")
	assert.Contains(t, s.Line(), "; blue ")
	belayed := speak(t, "anchor head\nanchor tree\nload litter mass 50 kg\nhauler red\nhauler blue\npulley a on head holds litter\npulley b on tree holds litter\n"+
		"rope long\nrope short\nreeve long: litter / a \\ red\nreeve short: litter / b \\ blue\n")
	for _, r := range belayed.res.Rig.Ropes {
		assert.Equal(t, "0.490 kN", belayed.Strand(r, 0), "%s in the haul in which it carries", r.Line.Name)
	}
}
