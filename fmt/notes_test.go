package rigfmt_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	rigfmt "fairlead/fmt"
	"fairlead/lang/markdown"
	"fairlead/lang/source"
)

// notes formats a document twice and requires that the second time changes nothing.
func notes(t require.TestingT, text string) string {
	format := func(text string) string {
		n := markdown.Read(text)
		out, problems := rigfmt.FormatNotes(source.NewNotes("notes.md", n.Text, text), n)
		require.Empty(t, problems)
		return out
	}
	out := format(text)
	require.Equal(t, out, format(out), "the second time changes something")
	return out
}

func TestFormatNotes(t *testing.T) {
	cases := []struct{ name, text, want string }{
		{"a block", "Text  \n\n```rig\nanchor   head\nload litter\n\n\nreeve r:litter / head\n```\n\n * x\n",
			"Text  \n\n```rig\nanchor  head\nload    litter\n\nreeve r: litter / head\n```\n\n * x\n"},
		{"in a quote", "> ```rig\n> load litter   mass 80kg\n>   \n> rope  r\n> ```\n",
			"> ```rig\n> load  litter  mass 80 kg\n>\n> rope  r\n> ```\n"},
		{"in a list", "- x\n\n  ```rig\n  load litter   mass 80kg\n  \n  rope  r\n  ```\n",
			"- x\n\n  ```rig\n  load  litter  mass 80 kg\n\n  rope  r\n  ```\n"},
		{"each block on its own", "```rig\nload l\n```\n```rig\ncounterweight c\n```\n",
			"```rig\nload  l\n```\n```rig\ncounterweight  c\n```\n"},
		{"CRLF", "```rig\r\nload  l mass 80kg\r\n```\r\n", "```rig\r\nload  l  mass 80 kg\r\n```\r\n"},
		{"no closing fence", "```rig\nload l mass 80kg", "```rig\nload  l  mass 80 kg"},
		{"no notation", "# Title\n\n```\nload   l\n```\n", "# Title\n\n```\nload   l\n```\n"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, notes(t, c.text)) })
	}
}

func TestNotesWithAnErrorStay(t *testing.T) {
	const text = "```rig\nload   l\n```\n\n> ```rig\n> load l mas 80 kg\n> ```\n"
	n := markdown.Read(text)
	f := source.NewNotes("notes.md", n.Text, text)
	out, problems := rigfmt.FormatNotes(f, n)
	assert.Equal(t, text, out)
	require.Len(t, problems, 1)
	assert.Equal(t, "mas", problems[0].Place.Text())
	assert.Equal(t, 5, f.Line(problems[0].Place.Span.Start))
}

// Whatever stands around the blocks is not touched.
func TestNotesAroundTheBlocksStay(t *testing.T) {
	outside := []string{"", "text  ", "> quote", "- item", "    code", "\ttab", "# é 🪢", "***", "| a | b |"}
	rapid.Check(t, func(t *rapid.T) {
		around := func() string {
			return strings.Join(rapid.SliceOf(rapid.SampledFrom(outside)).Draw(t, "around"), "\n") + "\n\n"
		}
		before, after := around(), around()
		if strings.Contains(before, "- item") || strings.Contains(before, "> quote") {
			before += "A paragraph.\n\n" // ends them
		}
		got := notes(t, before+"```rig\nload   l mass 80kg\n```\n\n"+after)
		require.Equal(t, before+"```rig\nload  l  mass 80 kg\n```\n\n"+after, got)
	})
}
