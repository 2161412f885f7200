package resolve

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// soundly checks what holds of every text, and gives what it means.
func soundly(t testing.TB, text string) (*model.File, []diag.Diagnostic) {
	t.Helper()
	f := source.New("yard.rig", text)
	file, found := meant(syntax.Parse(f))
	for _, d := range found {
		checkFinding(t, f, d)
	}
	for _, rig := range file.Rigs {
		checkRig(t, rig)
	}
	_, again := meant(syntax.Parse(f))
	if fmt.Sprint(found) != fmt.Sprint(again) {
		t.Fatal("a second run finds something else")
	}
	return file, found
}

func checkFinding(t testing.TB, f *source.File, d diag.Diagnostic) {
	whole := source.Span{End: len(f.Text)}
	places := []source.Place{d.Place}
	for _, r := range d.Related {
		switch {
		case r.Place.IsCopy():
			t.Fatalf("%s: %q has a related place that is no original", d.Rule, d.Message)
		case r.Place.File == f:
			places = append(places, r.Place)
		case !inLibrary(r.Place.File):
			t.Fatalf("%s: %q has a related place elsewhere", d.Rule, d.Message)
		}
	}
	for _, fix := range d.Fixes {
		last := 0
		edits := slices.Clone(fix.Edits)
		slices.SortFunc(edits, func(a, b diag.Edit) int { return a.Place.Span.Start - b.Place.Span.Start })
		for _, e := range edits {
			places = append(places, e.Place)
			if e.Place.Span.Start < last {
				t.Fatalf("edits of %q overlap", fix.Title)
			}
			last = e.Place.Span.End
		}
	}
	for _, p := range places {
		if p.File != f || !whole.Contains(p.Span) || p.Span.Start > p.Span.End {
			t.Fatalf("%s: %q has a place outside the file: %v", d.Rule, d.Message, p.Span)
		}
	}
	if d.Rule == "" || d.Message == "" || strings.Contains(d.Message, "%!") {
		t.Fatalf("not a finding: %+v", d)
	}
}

func checkRig(t testing.TB, rig *model.Rig) {
	for i, p := range rig.Parts {
		if p.Index != i || p.Root() == nil || p.Root().On != nil || rig.Part(p.Name) != p {
			t.Fatalf("part %s is not in order", p.Name)
		}
		if (p.Values.From == nil) != (p.Values.To == nil) {
			t.Fatalf("leg %s has one end", p.Name)
		}
		if p.Kind.IsFixed() && p.On != nil && !p.Fixed() {
			t.Fatalf("%s is fixed and moves", p.Name)
		}
	}
	for _, rope := range rig.Ropes {
		if rig.Part(rope.Line.Name) != rope.Line || !rope.Line.IsReeved() {
			t.Fatalf("rope %s is not a line of its rig", rope.Line.Name)
		}
		if !rope.Broken {
			checkRope(t, rope)
		} else if !rig.Incomplete {
			t.Fatalf("%s is broken and the rig complete", rope.Line.Name)
		}
	}
}

func checkRope(t testing.TB, rope *model.Rope) {
	strokes := len(rope.Nodes) - 1
	if rope.Loop {
		strokes++
	}
	if strokes < 1 || len(rope.Strokes) != strokes || len(rope.StrokePlaces) != strokes {
		t.Fatalf("%s has %d nodes and %d strokes", rope.Line.Name, len(rope.Nodes), len(rope.Strokes))
	}
	for i, n := range rope.Nodes {
		in, out := rope.Before(i), i
		end := in < 0 || out >= strokes || rope.Strokes[in] == model.Slack || rope.Strokes[out] == model.Slack
		if n.Role.Ends() != end {
			t.Fatalf("%s: node %d (%s) has role %d and is an end: %t", rope.Line.Name, i, n.Name(), n.Role, end)
		}
		if (n.Part == nil) != (n.Role == model.Loose) {
			t.Fatalf("%s: node %d has no part", rope.Line.Name, i)
		}
		if (n.Role == model.Capture || n.Role == model.Grip) && n.Holds == model.NoSide {
			t.Fatalf("%s: %s holds no side", rope.Line.Name, n.Name())
		}
		if n.Holds != model.NoSide && n.Role != model.Capture && n.Role != model.Grip && n.Role != model.Tied {
			t.Fatalf("%s: %s holds, role %d", rope.Line.Name, n.Name(), n.Role)
		}
	}
}

var names = []string{"a", "b", "cc", "head", "litter", "team", "top", "long", "hed", "low.team"}

// statement draws one statement, good or bad.
func statement() *rapid.Generator[string] {
	name := rapid.SampledFrom(names)
	var kinds []string
	for _, k := range syntax.Kinds() {
		kinds = append(kinds, k.Word)
	}
	clause := rapid.SampledFrom([]string{"", "", " holds", " holds a", " efficiency 92 %", " mass 80 kg", " at 3 m", " at -1 m",
		" strength 0 kN", " angle 90 deg", " sideways", " from head", " to cc", " efficiency 0.9 to 0.8", " weight 1 N", " friction 0.2", " bogus"})
	node := rapid.SampledFrom([]string{"", "", "", " (holds)", " (holds a)", " (angle 120 deg)", " (angle 400 deg)", " (sideways)", " (share 10 %)", " (bowline)", " (bolwine)"})
	return rapid.Custom(func(t *rapid.T) string {
		switch rapid.IntRange(0, 9).Draw(t, "what") {
		case 0, 1, 2, 3, 4:
			s := rapid.SampledFrom(kinds).Draw(t, "kind") + " " + name.Draw(t, "name")
			s += rapid.SampledFrom([]string{"", "", "", " prusik", " prusk", " class-b", " p"}).Draw(t, "model")
			if rapid.Bool().Draw(t, "clipped") {
				s += " on " + name.Draw(t, "on")
			}
			return s + clause.Draw(t, "clause") + clause.Draw(t, "clause")
		case 5, 6, 7:
			s := "reeve " + name.Draw(t, "rope") + ": " + name.Draw(t, "node") + node.Draw(t, "in")
			for range rapid.IntRange(1, 6).Draw(t, "strokes") {
				s += " " + rapid.SampledFrom([]string{"/", `\`, "~", "/", `\`}).Draw(t, "stroke") + " " +
					rapid.SampledFrom(append([]string{"tail", "loop"}, names...)).Draw(t, "node") + node.Draw(t, "in")
			}
			return s
		case 8:
			return "rig " + name.Draw(t, "rig")
		}
		return rapid.SampledFrom([]string{"expect held without a", "expect advantage 3:1 by team", "accept no-capture at top because \"x\"",
			"include a as low", "include b as high with top holds litter", "include a as cc without top", "include stage as up with litter at 2 m",
			"join low.team to high.litter", "join cc.litter to up.litter", "join up.team to low.top", "join team to up.litter",
			"use \"x.rig\"", "use \"stages.rig\"", "use \"round.rig\"", "stock pulley p strength 1 kN", "policy p", "rule x off",
			"puley top on head", "reeve : a", "", "# note", "units N"}).Draw(t, "other")
	})
}

func TestRandomTexts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := rapid.SliceOfN(statement(), 1, 25).Draw(t, "lines")
		soundly(failing{TB: &testing.T{}, to: t}, strings.Join(lines, "\n")+"\n")
	})
}

// The order of statements is free: whatever the order of the lines, the same
// things are found, but for duplicates and circles, whose first member is theirs.
func TestOrderOfStatementsIsFree(t *testing.T) {
	for _, c := range allMarked {
		if strings.Contains(c.text, "rig ") || strings.Contains(c.text, "duplicate") ||
			strings.Contains(c.text, "clip-circle") || strings.Contains(c.text, "used-twice") || strings.Contains(c.text, "policy") || strings.Contains(c.text, "#") {
			continue
		}
		m := langtest.Read(t, c.name, c.text)
		lines := strings.Split(strings.TrimRight(m.File.Text, "\n"), "\n")
		want := inWords(t, lines)
		for range 3 {
			rand.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
			assert.Equal(t, want, inWords(t, lines), c.name)
		}
	}
}

// inWords gives what is found in some lines, sorted, each with the text of its place.
func inWords(t *testing.T, lines []string) []string {
	_, found := soundly(t, strings.Join(lines, "\n")+"\n")
	var out []string
	for _, d := range found {
		out = append(out, d.Rule+" at "+d.Place.Text())
	}
	slices.Sort(out)
	return out
}

// failing lets rapid see the failures of a check written for testing.
type failing struct {
	testing.TB
	to *rapid.T
}

func (f failing) Helper()                   {}
func (f failing) Fatal(args ...any)         { f.to.Fatal(args...) }
func (f failing) Fatalf(s string, a ...any) { f.to.Fatalf(s, a...) }
