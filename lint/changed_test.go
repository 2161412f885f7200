package lint_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lint"
)

// changeable are rigs whose hitches hold this and that end, on one rope or several.
var changeable = map[string]string{
	"holds the first end": `anchor head
load litter
hauler team
pulley top on head holds litter
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team
`,
	"names its end at the node, the part's clause another": `anchor head
load litter
hauler team
pulley top on head holds litter
hitch grab holds team
pulley runner on grab
rope long
reeve long: litter / top \ grab (holds litter) \ runner / team
`,
	"names its end in its statement": `anchor head
load litter
hauler team
pulley top on head holds litter
hitch grab holds litter
pulley runner on grab
rope long
rope spare
reeve long: litter / top \ grab \ runner / team
reeve spare: head \ tail
`,
	"two runs": `anchor head
anchor tree
load litter
hauler team
tender minder
pulley top on head holds litter
hitch grab
pulley runner on grab
device plate on tree holds litter
rope long
reeve long: litter / grab / top \ runner / team ~ minder / plate \ litter
`,
	"a closed line": `anchor head
load litter
hauler team
pulley wheel on head
pulley low on litter
hitch grab
rope ring
rope whip
reeve ring: wheel \ low / grab / loop
reeve whip: grab / team
`,
}

// What is looked at on the model is what the text gives once it is changed.
func TestChangesOfTheModelAreThoseOfTheText(t *testing.T) {
	seen := map[string]int{}
	probe := &lint.Rule{Name: "probe", Check: func(p *lint.Pass) {
		check := func(kind string, changed *model.Rig, edits ...diag.Edit) {
			trial, ok := p.Try(edits...)
			if !ok {
				return
			}
			o, ok := p.Look(changed)
			if !assert.True(t, ok) {
				return
			}
			seen[kind]++
			text := diag.Apply(p.Rig.Place.File, edits)
			assert.Equal(t, trial.Status, o.Status, text)
			assert.Equal(t, trial.Released(), o.Released(), text)
			assert.Equal(t, trial.Rises(), o.Rises(), text)
		}
		for _, r := range p.Rig.Ropes {
			for i, n := range r.Nodes {
				if edit, _, ok := p.Turn(r, i); ok {
					check("turned", p.Turned(r, i), edit)
				}
				if n.Role == model.Bend {
					check("holding", p.Holding(r, i), lint.LetHold(r, i))
				}
				if n.Role != model.Grip {
					continue
				}
				for _, to := range p.Rig.Ropes {
					for k, s := range to.Strokes {
						if s == model.Slack || to == r && (k == i || k == r.Before(i)) {
							continue
						}
						if rig, ok := p.Moved(n.Part, r, i, to, k); ok {
							check("moved", rig, append(lint.TakeOut(r, i, r.Before(i)), lint.SetIn(to, k, n.Place.Text()))...)
						} else {
							seen["refused"]++
						}
						if rig, ok := p.Moved(n.Part, nil, 0, to, k); ok {
							check("set in", rig, lint.SetIn(to, k, n.Part.Name))
						}
					}
				}
			}
		}
	}}
	for _, text := range changeable {
		lint.Run([]*load.Loaded{load.Text("yard.rig", text)}, []*lint.Rule{probe})
	}
	t.Log(seen)
	for _, kind := range []string{"turned", "holding", "moved", "refused", "set in"} {
		assert.Positive(t, seen[kind], kind)
	}
}
