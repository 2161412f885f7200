package lint_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lint"
)

// Fixes change the tokens that they mean and nothing else: line breaks, comments
// and blanks of the author's stay.
func TestFixesOfReevingLines(t *testing.T) {
	for _, c := range []struct{ name, parts, title, line, want string }{
		{"moved", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter / top \\ grab \\ runner / team", "litter / grab / top \\ runner / team"},
		{"moved with its clauses", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter / top \\ grab (holds litter) \\ runner / team", "litter / grab (holds litter) / top \\ runner / team"},
		{"moved off a line of its own", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter / top\n  \\ grab\n  \\ runner / team", "litter / grab / top\n  \\ runner / team"},
		{"moved off a line that ends in CR LF", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter / top\r\n  \\ grab\r\n  \\ runner / team", "litter / grab / top\r\n  \\ runner / team"},
		{"moved off the start of a line", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter / top\n  \\ grab \\ runner / team", "litter / grab / top\n  \\ runner / team"},
		{"moved off the end of a line", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter / top \\ grab\n  \\ runner / team", "litter / grab / top\n  \\ runner / team"},
		{"moved from beside comments", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter / top  # the head\n  # beyond\n  \\ grab  # the tractor\n  \\ runner / team",
			"litter / grab / top  # the head\n  # beyond\n  # the tractor\n  \\ runner / team"},
		{"moved from between strokes on other lines", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter / top \\\n  grab \\\n  runner / team", "litter / grab / top\n  \\\n  runner / team"},
		{"moved without blanks", "pulley top on head holds litter\nhitch grab", "set grab on litter / top",
			"litter/top\\grab\\runner/team", "litter / grab/top\\runner/team"},
		{"turned by a clause of its own", "pulley top on head holds litter\nhitch grab", "turn grab round: take out holds team",
			"litter / grab (holds team) / top \\ runner / team", "litter / grab / top \\ runner / team"},
		{"turned, its other clauses stay", "pulley top on head holds litter\nhitch grab", "turn grab round: take out holds team",
			"litter / grab (holds team  efficiency 90 %) / top \\ runner / team", "litter / grab (efficiency 90 %) / top \\ runner / team"},
		{"turned against the part's clause", "pulley top on head holds litter\nhitch grab holds team", "turn grab round: write (holds litter)",
			"litter / grab / top \\ runner / team", "litter / grab (holds litter) / top \\ runner / team"},
		{"a capture turned", "pulley top on head\nhitch grab", "turn top round: write (holds litter)",
			"litter / grab / top (holds team) \\ runner / team", "litter / grab / top (holds litter) \\ runner / team"},
		{"a capture turned beside other clauses", "pulley top on head holds team\nhitch grab", "turn top round: write (holds litter)",
			"litter / grab / top (efficiency 90 %) \\ runner / team", "litter / grab / top (efficiency 90 % holds litter) \\ runner / team"},
		{"a capture added", "pulley top on head\nhitch grab", "let top hold: write top (holds)",
			"litter / grab / top \\ runner / team", "litter / grab / top (holds) \\ runner / team"},
		{"a capture added to clauses", "pulley top on head\nhitch grab", "let top hold: write top (holds)",
			"litter / grab / top (angle 10 deg) \\ runner / team", "litter / grab / top (angle 10 deg holds) \\ runner / team"},
	} {
		t.Run(c.name, func(t *testing.T) {
			before := "anchor head\nload litter\nhauler team\n" + c.parts + "\npulley runner on grab\nrope long\nreeve long: "
			files, found := examine(before + c.line + "\n")
			got := langtest.Fixed(t, files[0].File, found, c.title)
			assert.Equal(t, before+c.want+"\n", got)
			_, left := examine(got)
			for _, d := range left {
				assert.NotEqual(t, diag.Error, d.Severity, d.Message)
			}
		})
	}
}

// path gives the nodes and strokes of a rope as they are read.
func path(r *model.Rope) []string {
	var list []string
	for i, n := range r.Nodes {
		list = append(list, n.Place.Text())
		if i < len(r.Strokes) {
			list = append(list, r.Strokes[i].String())
		}
	}
	return list
}

// A hitch that is moved leaves every other token of its line in place, however the
// line is broken and commented.
func TestMovesKeepTheRestOfTheLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawnLine(t)
		f := load.Text("yard.rig", text)
		require.Len(t, f.Model.Rigs, 1)
		rope := f.Model.Rigs[0].Ropes[0]
		var grips []int
		for i, n := range rope.Nodes {
			if n.Role == model.Grip && rope.RunsOn(i) {
				grips = append(grips, i)
			}
		}
		if len(grips) == 0 {
			t.Skip("no grip between equal strokes")
		}
		node := rapid.SampledFrom(grips).Draw(t, "node")
		stroke := rapid.SampledFrom([]int{node - 1, node}).Draw(t, "stroke taken out")
		to := rapid.IntRange(0, len(rope.Strokes)-1).Draw(t, "into")
		want := path(rope)
		moved := []string{want[2*node], want[2*to+1]}
		edits := lint.TakeOut(rope, node, stroke)
		if to == node || to == node-1 {
			want = append(want[:2*node-1:2*node-1], want[2*node+1:]...)
		} else {
			edits = append(edits, lint.SetIn(rope, to, moved[0]))
			at := 2*to + 1
			want = append(want[:at:at], append([]string{moved[1], moved[0]}, want[at:]...)...)
			if to < node {
				node++
			}
			want = append(want[:2*node-1:2*node-1], want[2*node+1:]...)
		}
		got := diag.Apply(f.File, edits)
		after := load.Text("yard.rig", got)
		require.Empty(t, errorsIn(after), "%s\nbecomes\n%s", text, got)
		assert.Equal(t, want, path(after.Model.Rigs[0].Ropes[0]), "%s\nbecomes\n%s", text, got)
		assert.Equal(t, strings.Count(text, "#"), strings.Count(got, "#"), "comments stay")
	})
}

func errorsIn(f *load.Loaded) []string {
	var list []string
	for _, d := range f.Problems {
		if d.Severity == diag.Error && (d.Rule == "syntax" || d.Rule == "unknown-statement") {
			list = append(list, d.Message)
		}
	}
	return list
}

// drawnLine makes a rig with one rope, broken and commented at random.
func drawnLine(t *rapid.T) string {
	nodes := []string{"p", "g (holds end)", "h", "p (angle 10 deg)", "g"}
	gap := func() string {
		return rapid.SampledFrom([]string{" ", "  ", "\n  ", " # why\n\t", "\n# between\n"}).Draw(t, "gap")
	}
	var b strings.Builder
	b.WriteString("anchor head\nanchor end\npulley p on head\nhitch g\nclamp h\nrope r\nreeve r: head")
	for range rapid.IntRange(2, 7).Draw(t, "nodes") {
		fmt.Fprintf(&b, "%s%s%s%s", gap(), rapid.SampledFrom([]string{"/", "\\"}).Draw(t, "stroke"), " ",
			rapid.SampledFrom(nodes).Draw(t, "node"))
	}
	b.WriteString(" / end\n")
	return b.String()
}
