package seeding_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lang/source"
	"fairlead/lint/seeding"
)

const board = `anchor  head             strength 30 kN
anchor  tree             strength 30 kN
load    litter           mass 160 kg  people 2
hauler  team             people 4  pull 200 N
tender  minder
pulley  top     on head  efficiency 92 %  holds litter  releasable
hitch   grab             cord 8 mm
pulley  runner  on grab  efficiency 92 %
device  plate   on tree  holds litter  takes 9 to 12 mm  releasable
rope    main             diameter 11 mm
rope    belay            diameter 11 mm

reeve main:  litter (figure-eight) / grab / top \ runner / team
reeve belay: litter / plate \ minder

expect advantage 3:1
accept redirect-loads-anchor at plate because "A sample."
`

// of gives the seeds of one kind by what was done.
func of(t *testing.T, kind string) map[string]seeding.Seed {
	t.Helper()
	list := map[string]seeding.Seed{}
	for _, s := range seeding.Of(load.Text("board.rig", board), "board") {
		if s.Kind.Name == kind {
			list[s.Done] = s
		}
	}
	require.NotEmpty(t, list, kind)
	return list
}

// line gives the seeded text's line that begins so.
func line(t *testing.T, s seeding.Seed, begins string) string {
	t.Helper()
	f := source.New("board.rig", s.Text())
	for i := range f.Line(len(f.Text)) + 1 {
		if text := f.Slice(f.LineSpan(i)); len(text) >= len(begins) && text[:len(begins)] == begins {
			return text
		}
	}
	return ""
}

func TestFaultsAsDrawn(t *testing.T) {
	for _, c := range []struct{ kind, done, begins, want string }{
		{"hitch-moved", `grab is set on top \ runner`, "reeve main", `reeve main:  litter (figure-eight) / top \ grab \ runner / team`},
		{"hitch-moved", `grab is set on litter / plate`, "reeve belay", `reeve belay: litter / grab / plate \ minder`},
		{"hitch-taken-off", "grab is not on main", "reeve main", `reeve main:  litter (figure-eight) / top \ runner / team`},
		{"grip-turned", "grab holds the side of team", "reeve main", `reeve main:  litter (figure-eight) / grab (holds team) / top \ runner / team`},
		{"capture-dropped", "top does not hold", "pulley  top", "pulley  top     on head  efficiency 92 %  releasable"},
		{"stroke-flipped", `top \ runner is drawn the other way`, "reeve main", `reeve main:  litter (figure-eight) / grab / top / runner / team`},
		{"strokes-swapped", "the strokes on the two sides of top are swapped", "reeve main", `reeve main:  litter (figure-eight) / grab \ top / runner / team`},
		{"nodes-swapped", "top and runner are swapped", "reeve main", `reeve main:  litter (figure-eight) / grab / runner \ top / team`},
		{"bend-taken-out", "main passes top by", "pulley  top", ""},
		{"line-turned-round", "main is written from team to litter", "reeve main", `reeve main:  team \ runner / top \ grab \ litter (figure-eight)`},
		{"redirect-added", "main is turned round at a pulley on head", "reeve main", `reeve main:  litter (figure-eight) / grab / top \ runner / corner \ team`},
		{"redirect-added", "main is turned round at a pulley on head", "pulley corner", `pulley corner on head efficiency 90 %`},
		{"belay-left-out", "belay is left out, with all that belongs to it", "device", ""},
		{"belay-left-out", "belay is left out, with all that belongs to it", "anchor  tree", ""},
		{"belay-left-out", "belay is left out, with all that belongs to it", "tender", ""},
		{"belay-left-out", "belay is left out, with all that belongs to it", "accept", ""},
		{"belay-left-out", "belay is left out, with all that belongs to it", "load", "load    litter           mass 160 kg  people 2"},
		{"belay-slack", "belay lies slack between litter and plate", "reeve belay", `reeve belay: litter ~ plate \ minder`},
		{"belay-on-main-anchor", "plate is on head, as the main line", "device", "device  plate   on head  holds litter  takes 9 to 12 mm  releasable"},
		{"belay-on-main-anchor", "plate is on head, as the main line", "anchor  tree", ""},
		{"end-untied", "main is not tied to litter", "reeve main", `reeve main:  tail / grab / top \ runner / team`},
		{"team-gone", "nobody hauls main", "reeve main", `reeve main:  litter (figure-eight) / grab / top \ runner / tail`},
		{"tie-moved", "main is tied to tree instead of litter", "reeve main", `reeve main:  tree (figure-eight) / grab / top \ runner / team`},
		{"clip-lost", "runner is clipped to nothing", "pulley  runner", "pulley  runner  efficiency 92 %"},
		{"clip-moved", "plate is on head instead of tree", "device", "device  plate   on head  holds litter  takes 9 to 12 mm  releasable"},
		{"pulley-to-carabiner", "top is a carabiner", "carabiner", "carabiner  top  on head  holds litter  efficiency 55 %  locking"},
		{"rope-on-textile", "runner is a sling", "sling", "sling  runner  on grab  strength 22 kN"},
		{"cord-thinned", "grab is tied of cord of 4 mm", "hitch", "hitch   grab             cord 4 mm"},
		{"cord-thickened", "grab is tied of cord as thick as main", "hitch", "hitch   grab             cord 11 mm"},
		{"rope-out-of-device", "belay is 18 mm thick, too thick for plate", "rope    belay", "rope    belay            diameter 18 mm"},
		{"knot-weakened", "main is tied to litter with an overhand knot", "reeve main", `reeve main:  litter (overhand) / grab / top \ runner / team`},
		{"overload", "litter has a mass of 800 kg", "load", "load    litter           mass 800 kg  people 2"},
		{"strength-cut", "head bears 1.5 kN", "anchor  head", "anchor  head             strength 1.5 kN"},
		{"people-sent-away", "team is one person", "hauler", "hauler  team             people 1  pull 200 N"},
		{"name-misspelt", "head is spelt haed", "pulley  top", "pulley  top     on haed  efficiency 92 %  holds litter  releasable"},
		{"part-left-out", "runner has no statement", "pulley  runner", ""},
		{"name-twice", "runner is called top too", "pulley  runner", ""},
		{"unit-mistaken", "grab says cord 8 m", "hitch", "hitch   grab             cord 8 m"},
	} {
		s, made := of(t, c.kind)[c.done]
		if assert.True(t, made, "%s: no %q", c.kind, c.done) {
			assert.Equal(t, c.want, line(t, s, c.begins), "%s: %s", c.kind, c.done)
		}
	}
}

// Every kind of fault is made in the corpus, every seed changes the text in its own way,
// and all that it points to lies in the seeded text.
func TestSeedsOfTheCorpus(t *testing.T) {
	made := map[*seeding.Kind]int{}
	for _, f := range corpus(t) {
		name := f.Model.Rigs[0].Name
		texts := map[string]bool{f.File.Text: true}
		list := seeding.Of(f, name)
		for _, s := range list {
			text := s.Text()
			assert.False(t, texts[text], "%s: %s: %s", name, s.Kind.Name, s.Done)
			texts[text] = true
			made[s.Kind]++
			places := s.Places(s.Load())
			assert.NotEmpty(t, places)
			for _, p := range places {
				assert.True(t, 0 <= p.Start && p.Start <= p.End && p.End <= len(text), "%s: %s: %v", name, s.Done, p)
			}
		}
		again := seeding.Of(f, name)
		require.Len(t, again, len(list))
		for i := range list {
			require.Equal(t, list[i].Text(), again[i].Text(), "the same seeds each time")
		}
	}
	for _, k := range seeding.Kinds() {
		assert.NotZero(t, made[k], "%s is never made", k.Name)
	}
	assert.Nil(t, seeding.Of(load.Text("board.rig", board), "no-such-rig"))
}

func TestSampleSpreadsEvenly(t *testing.T) {
	list := seeding.Of(load.Text("board.rig", board), "board")
	few := seeding.Sample(list, 2)
	counts := map[*seeding.Kind]int{}
	for _, s := range few {
		counts[s.Kind]++
	}
	for k, n := range counts {
		assert.LessOrEqual(t, n, 2, k.Name)
	}
	assert.Len(t, seeding.Sample(list, len(list)), len(list))
	first := slices.IndexFunc(few, func(s seeding.Seed) bool { return s.Kind.Name == "strength-cut" })
	assert.Equal(t, []string{"head bears 1.5 kN", "tree bears 1.5 kN"}, []string{few[first].Done, few[first+1].Done})
}

func TestStripTakesClaimsOut(t *testing.T) {
	bare := seeding.Strip(load.Text("board.rig", board)).File.Text
	assert.NotContains(t, bare, "expect")
	assert.Contains(t, bare, "accept redirect-loads-anchor")
	assert.Contains(t, bare, "reeve belay")
}

// A finding points to the fault by its part, by its own or a related place, or by a fix.
func TestAt(t *testing.T) {
	s := of(t, "stroke-flipped")[`top \ runner is drawn the other way`]
	seeded := s.Load()
	places := s.Places(seeded)
	at := func(text string) source.Place {
		start := len(s.Text()) - len(s.Text()[indexOf(t, s.Text(), text):])
		return seeded.File.At(source.Span{Start: start, End: start + len(text)})
	}
	assert.True(t, s.At(diag.Diagnostic{Subject: "top"}, places))
	assert.True(t, s.At(diag.Diagnostic{Also: []string{"runner"}}, places))
	assert.True(t, s.At(diag.Diagnostic{Place: at("top / runner")}, places))
	assert.True(t, s.At(diag.Diagnostic{Related: []diag.Related{{Place: at("pulley  top")}}}, places))
	assert.True(t, s.At(diag.Diagnostic{Fixes: []diag.Fix{{Edits: []diag.Edit{{Place: at("runner / team")}}}}}, places))
	assert.False(t, s.At(diag.Diagnostic{Subject: "plate", Place: at("litter / plate")}, places))
	assert.False(t, s.At(diag.Diagnostic{}, places), "nowhere is not at the start of the text")
}

// Whatever the rig, the edits of a seed do not overlap, and it can be worked out.
func TestSeedsOfRandomRigs(t *testing.T) {
	for i := range int64(60) {
		f := load.Text("random.rig", langtest.RandomRig(langtest.Seeded(i)))
		before := seeding.Work(f, "random")
		require.NotNil(t, before)
		for _, s := range seeding.Sample(seeding.Of(f, "random"), 2) {
			for k := 1; k < len(s.Edits); k++ {
				require.LessOrEqual(t, s.Edits[k-1].Place.Span.End, s.Edits[k].Place.Span.Start, "%s in\n%s", s.Done, f.File.Text)
			}
			seeding.Compare(before, seeding.Work(s.Load(), "random"))
		}
	}
}
