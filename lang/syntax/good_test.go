package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// goodCases are texts without a fault and what is read of them.
var goodCases = []struct{ text, reads string }{
	// Parts.
	{"anchor head", "anchor head"},
	{"anchor  head\tstrength 30 kN", "anchor head [strength 30 kN]"},
	{"anchor head strength 30kN", "anchor head [strength 30 kN]"},
	{"pulley top bearing-pulley on head", "pulley top model bearing-pulley on head"},
	{"pulley top strength 36 kN on head holds", "pulley top on head [strength 36 kN, holds]"},
	{"pulley top holds litter on head", "pulley top on head [holds litter]"},
	{"pulley top efficiency 0.85 to 0.95", "pulley top [efficiency 0.85 to 0.95]"},
	{"pulley top efficiency 85 to 95%", "pulley top [efficiency 85 to 95 %]"},
	{"device brake efficiency 60 % lowering 40 % holds takes 9 to 11 mm", "device brake [efficiency 60 % lowering 40 %, holds, takes 9 to 11 mm]"},
	{"leg left from tree to master angle -30 deg strut", "leg left [from tree, to master, angle -30 deg, strut]"},
	{"leg right angle 30 to 40 deg to master from tree", "leg right [angle 30 to 40 deg, to master, from tree]"},
	{"hitch grab prusik cord 8 mm wraps 3 slips 7 to 9 kN", "hitch grab model prusik [cord 8 mm, wraps 3, slips 7 to 9 kN]"},
	{"rope long material polyamide at 3 m length 60 m", "rope long [material polyamide, at 3 m, length 60 m]"},
	{"hauler team on raft people 2 to 3", "hauler team on raft [people 2 to 3]"},
	{"load litter mass -0.5 t", "load litter [mass -0.5 t]"},
	{"focal master at 1.25 m", "focal master [at 1.25 m]"},
	// Names of every script, compared after NFC, and words of claims as names.
	{"anchor e\u0301tai", "anchor \u00e9tai"},
	{"anchor 树-2 on भार", "anchor 树-2 on भार"},
	{"pulley over on by", "pulley over on by"},
	{"pulley t on in", "pulley t on in"},
	{"pulley low.top on low.head_2", "pulley low.top on low.head_2"},
	// Reeving lines.
	{`reeve long: litter / grab / top \ runner / team`, `long: litter / grab / top \ runner / team`},
	{`reeve long : a ~ b`, `long: a ~ b`},
	{`reeve strap: a / b \ loop`, `strap: a / b \ loop`},
	{`reeve tie: tail / a \ tail`, `tie: tail / a \ tail`},
	{"reeve long: a (figure-eight) / b (angle 90 deg holds a) \\ c (holds) / d (share 40 to 60 %)",
		"long: a tied figure-eight / b [angle 90 deg, holds a] \\ c [holds] / d [share 40 to 60 %]"},
	{`reeve x: a ( retains 70 % bowline ) / b (share 0.5 bowline)`, `x: a [retains 70 %] tied bowline / b [share 0.5] tied bowline`},
	// Continued lines.
	{"reeve a: b /\n c", "a: b / c"},
	{"reeve a: b\n / c \\ # one\n\t# two\n# three\nd\n\n# four", "a: b / c \\ d"},
	{"reeve a: b\r\n/ c\r\n\r\nanchor b\r\n", "a: b / c\nanchor b"},
	// Several rigs, libraries.
	{`rig r`, "rig r"},
	{`rig r "A \"title\" with \\ and # and ü"`, `rig r "A \"title\" with \\ and # and ü"`},
	{`use "stock.rig" # a comment`, `use "stock.rig"`},
	{"include a as low", "include a as low"},
	{"include a as b with litter mass 90 kg raise 3 m with team people 2 without knot-a without x",
		"include a as b with litter [mass 90 kg, raise 3 m] with team [people 2] without knot-a without x"},
	{"join low.team to high.litter", "join low.team + high.litter"},
	{"stock pulley twin efficiency 0.93 to 0.96 sheaves 2", "stock pulley twin [efficiency 0.93 to 0.96, sheaves 2]"},
	{"units kN m", "units kN m"},
	{"units ft lbf", "units ft lbf"},
	{"units daN", "units daN"},
	// Claims.
	{"expect advantage 3:1", "expect advantage  3:1"},
	{"expect advantage 5 : 2 by red-team", "expect advantage  5:2 by red-team"},
	{"expect advantage 2.5:1", "expect advantage  2.5:1"},
	{"expect advantage 3", "expect advantage  3:1"},
	{"expect actual advantage over 2.4", "expect actual advantage over 2.4:1"},
	{"expect pull under 300 N per person by team", "expect pull under 300 N per person by team"},
	{"expect load on head under 6 kN", "expect load of head under 6 kN"},
	{"expect load on head under 2.5", "expect load of head under 2.5"},
	{"expect load on head 2", "expect load of head 2"},
	{"expect load on head 2:3", "expect load of head 2:3"},
	{"expect load on head under 4 : 3 by team", "expect load of head under 4:3 by team"},
	{"expect factor over 8", "expect factor over 8"},
	{"expect factor of grab over 4", "expect factor of grab over 4"},
	{"expect travel 3 m per 1 m", "expect travel 3 m per 1 m"},
	{"expect class compound", "expect class class compound"},
	{"expect held", "expect held"},
	{"expect held when released", "expect held released"},
	{"expect not held when released without head", "expect not held of head released"},
	{"expect held without grab while hauling", "expect held of grab hauling"},
	{"expect stroke over 2 m", "expect stroke over 2 m"},
	{"expect lower hand under 200 N", "expect lower hand under 200 N"},
	{"expect finding redirect-loads-anchor at corner", "expect finding of corner rule redirect-loads-anchor"},
	{`accept slack-strand at tie because "Kept dry."`, `accept slack-strand at tie "Kept dry."`},
	{`accept slack-strand because "Kept dry."`, `accept slack-strand "Kept dry."`},
	// House rules.
	{`policy team "House rules"`, `policy team "House rules"`},
	{"require factor 10", "require factor 10"},
	{"require factor 4 for hitch", "require factor 4 for hitch"},
	{"require pull under 300 N per person", "require pull under 300 N per person"},
	{"require people times advantage under 18", "require people times advantage under 18"},
	{"require drop under 1 m", "require drop under 1 m"},
	{"rule carabiner-for-pulley off", "rule carabiner-for-pulley = off"},
}

func TestGood(t *testing.T) {
	for _, c := range goodCases {
		t.Run(c.text, func(t *testing.T) {
			for _, text := range []string{c.text, c.text + "\n", "\uFEFF# doc\n" + c.text + " # end\r\n"} {
				tree := parse(t, text)
				require.Empty(t, tree.Problems, "in %q", text)
				assert.Equal(t, c.reads, dumpTree(tree))
			}
		})
	}
}

func TestExamplesOfClausesAreGood(t *testing.T) {
	for _, c := range Clauses() {
		taken := false
		for _, k := range Kinds() {
			for _, word := range ClausesOf(k.Word) {
				if word == c.Word {
					taken = true
					tree := parse(t, k.Word+" x "+c.Example)
					require.Empty(t, tree.Problems)
				}
			}
		}
		if !taken {
			require.Contains(t, NodeClauses(), c.Word)
			require.Empty(t, parse(t, "reeve x: a ("+c.Example+") / b").Problems)
		}
	}
	for _, k := range Kinds() {
		require.Contains(t, exampleNames, k.Word)
		require.Empty(t, parse(t, kindExample(k.Word)).Problems)
	}
}

func TestReservedWordsAreNoNames(t *testing.T) {
	words := append(Statements(), "on", "at", "to", "from", "with", "without", "tail", "loop", "per", "because", "lowering")
	for _, k := range Kinds() {
		words = append(words, k.Word)
	}
	for _, c := range Clauses() {
		words = append(words, c.Word)
	}
	for _, word := range words {
		tree := parse(t, "anchor "+word)
		require.Len(t, tree.Problems, 1)
		assert.Equal(t, RuleReservedName, tree.Problems[0].Rule)
		assert.Equal(t, "anchor "+word, dumpTree(tree), "the part is there all the same")
		assert.True(t, tree.Statements[0].Faulty)
	}
}

func TestSpansOfAmounts(t *testing.T) {
	text := "device x efficiency 60 to 70 % lowering 0.4 strength 12kN"
	part := parse(t, text).Statements[0].Body.(*Part)
	at := func(a *Amount) []string {
		slice := func(start, end int) string { return text[start:end] }
		return []string{
			slice(a.Span.Start, a.Span.End), slice(a.LowSpan.Start, a.LowSpan.End),
			slice(a.HighSpan.Start, a.HighSpan.End), slice(a.UnitSpan.Start, a.UnitSpan.End),
		}
	}
	assert.Equal(t, []string{"60 to 70 %", "60", "70", "%"}, at(part.Clauses[0].Amount))
	assert.Equal(t, []string{"0.4", "0.4", "0.4", ""}, at(part.Clauses[0].Second))
	assert.Equal(t, []string{"12kN", "12", "12", "kN"}, at(part.Clauses[1].Amount))
	assert.Equal(t, "7/10", part.Clauses[0].Amount.High.String())
	assert.Equal(t, "2/5", part.Clauses[0].Second.Low.String())
	assert.Equal(t, "12000/1", part.Clauses[1].Amount.Low.String())
}
