package model

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/source"
)

// line makes a rope of named parts: "a / b \ c".
func line(text string) *Rope {
	r := &Rope{Line: &Part{Name: "rope"}}
	for i, word := range strings.Fields(text) {
		if i%2 == 1 {
			r.Strokes = append(r.Strokes, map[string]Stroke{"/": Up, `\`: Down, "~": Slack}[word])
			continue
		}
		r.Nodes = append(r.Nodes, Node{Part: &Part{Name: word}})
	}
	r.StrokePlaces = make([]source.Place, len(r.Strokes))
	return r
}

func told(r *Rope) string {
	var words []string
	for i, n := range r.Nodes {
		words = append(words, n.Name())
		if i < len(r.Strokes) {
			words = append(words, r.Strokes[i].String())
		}
	}
	return strings.Join(words, " ")
}

func TestRopesAreChangedInCopies(t *testing.T) {
	const drawn = `load / grab / top \ runner / team`
	r := line(drawn)
	grab := r.Nodes[1]
	out := r.Without(1, 0)
	assert.Equal(t, `load / top \ runner / team`, told(out))
	assert.Equal(t, `load / top \ grab \ runner / team`, told(out.With(1, grab)))
	assert.Equal(t, `load / top \ runner / grab / team`, told(out.With(2, grab)))
	assert.Equal(t, `load / other / top \ runner / team`, told(r.Instead(1, Node{Part: &Part{Name: "other"}})))
	assert.Equal(t, drawn, told(r), "the rope itself stays")
	rig := &Rig{Ropes: []*Rope{r, line("a / b")}}
	assert.Equal(t, `load / top \ runner / team`, told(rig.Reeved(r, out).Ropes[0]))
	assert.Len(t, rig.Reeved(r, nil).Ropes, 1)
	assert.Same(t, r, rig.Ropes[0])
}

func TestEndsOfRuns(t *testing.T) {
	r := line(`load / top \ team ~ tie \ runner / tie`)
	r.Nodes[5].Part = r.Nodes[3].Part
	first, last, open := r.Run(1)
	assert.Equal(t, []any{0, 2, true}, []any{first, last, open})
	first, last, _ = r.Run(4)
	assert.Equal(t, []int{3, 5}, []int{first, last})
	assert.Equal(t, FirstSide, r.EndAt(1, r.Nodes[0].Part))
	assert.Equal(t, LastSide, r.EndAt(1, r.Nodes[2].Part))
	assert.Equal(t, NoSide, r.EndAt(4, r.Nodes[3].Part), "at both")
	assert.Equal(t, NoSide, r.EndAt(4, r.Nodes[0].Part))
	closed := &Rope{Nodes: r.Nodes[:2], Strokes: []Stroke{Up, Down}, Loop: true}
	_, _, open = closed.Run(0)
	assert.False(t, open)
	assert.Equal(t, NoSide, closed.EndAt(1, closed.Nodes[0].Part))
}
