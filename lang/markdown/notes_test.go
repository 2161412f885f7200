package markdown_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"fairlead/lang/markdown"
	"fairlead/lang/source"
)

func TestBlocks(t *testing.T) {
	cases := []struct {
		name, text string
		// contents are the notation of each block, prefixes what stands before its lines.
		contents, prefixes []string
	}{
		{"plain", "# T\n\n```rig\nanchor a\nload b\n```\nrest\n", []string{"anchor a\nload b\n"}, []string{""}},
		{"two", "```rig\nanchor a\n```\n\n~~~ rig\nload b\n~~~\n", []string{"anchor a\n", "load b\n"}, []string{"", ""}},
		{"in a quote", "> q\n>\n> ```rig\n> anchor a\n>\n> load b\n> ```\n", []string{"anchor a\n\nload b\n"}, []string{"> "}},
		{"in a list", "- item\n  ```rig\n  anchor a\n    load b\n\n  rope c\n  ```\n", []string{"anchor a\n  load b\n\nrope c\n"}, []string{"  "}},
		{"a list item that is a block", "1. ```rig\n   anchor a\n   ```\n", []string{"anchor a\n"}, []string{"   "}},
		{"a quote in a list", "- > ```rig\n  > anchor a\n  > ```\n", []string{"anchor a\n"}, []string{"  > "}},
		{"by a tab", "1. x\n\n\t~~~ rig\n\tanchor a\n\t~~~\n", []string{"anchor a\n"}, []string{"\t"}},
		{"first line blank", "> ```rig\n>\n> anchor a\n> ```\n", []string{"\nanchor a\n"}, []string{"> "}},
		{"not closed", "```rig\nanchor a", []string{"anchor a"}, []string{""}},
		{"empty", "> ```rig\n> ```\n", []string{""}, []string{"> "}},
		{"CRLF", "```rig\r\nanchor a\r\n```\r\nx", []string{"anchor a\r\n"}, []string{""}},
		{"after a byte order mark", "\uFEFF```rig\nanchor a\n```\n", []string{"anchor a\n"}, []string{""}},
		{"other info strings", "```rig wrong\nanchor a\n```\n```Rig\nanchor\n```\n```\nrig\n```\n", nil, nil},
		{"in a comment", "<!--\n```rig\nanchor a\n```\n-->\n", nil, nil},
		{"indented code", "    ```rig\n    anchor a\n    ```\n", nil, nil},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			n := markdown.Read(c.text)
			var contents, prefixes []string
			for _, b := range n.Blocks {
				contents, prefixes = append(contents, n.Content(b)), append(prefixes, b.Prefix)
			}
			assert.Equal(t, c.contents, contents)
			assert.Equal(t, c.prefixes, prefixes)
			assert.Equal(t, len(c.contents) > 0, markdown.HasRig(c.text))
			requireMasked(t, n)
			assert.Equal(t, c.text, n.Replace(contents), "what stays the same is not touched")
		})
	}
}

// requireMasked checks the masked text: as long, the same lines, the inside of the blocks
// at its place, all else blank.
func requireMasked(t require.TestingT, n *markdown.Notes) {
	require.Len(t, n.Text, len(n.Whole))
	inside := make([]bool, len(n.Whole))
	for _, b := range n.Blocks {
		for _, line := range b.Lines {
			require.True(t, b.Span.Contains(line))
			for i := line.Start; i < line.End; i++ {
				inside[i] = true
			}
		}
	}
	for i := range n.Whole {
		switch c := n.Whole[i]; {
		case inside[i] || c == '\n' || c == '\r':
			require.Equal(t, c, n.Text[i])
		default:
			require.Equal(t, byte(' '), n.Text[i])
		}
	}
}

// documents are built of lines that open and close things.
var pieces = []string{
	"```rig", "```", "~~~rig", "~~~", "> ```rig", "> ```", "- ```rig", "  ```", "anchor head", "> load x", "  rope r", "\trope r", "", ">", "text é 🪢",
	"1. item", "    code", "<!--", "-->", "# title", "```rig x", "\uFEFF", "> - ```rig", ">   pulley p",
}

func document(t *rapid.T) string {
	end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "end")
	lines := rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 20).Draw(t, "lines")
	text := strings.Join(lines, end)
	if rapid.Bool().Draw(t, "closed") {
		text += end
	}
	return text
}

func TestRandomDocumentsAreMaskedInPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := markdown.Read(document(t))
		requireMasked(t, n)
		contents := []string{}
		for _, b := range n.Blocks {
			contents = append(contents, n.Content(b))
		}
		require.Equal(t, n.Whole, n.Replace(contents))
	})
}

// What is written into the blocks of a document is read again from them, and nothing
// else has changed.
func TestReplacedContentsAreReadAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := markdown.Read(document(t))
		var contents []string
		for _, b := range n.Blocks {
			text := "anchor new\n\nload other\n"
			if len(b.Lines) == 0 || b.Span.End == len(n.Whole) { // nothing to write into, or no closing fence
				text = n.Content(b)
			}
			contents = append(contents, text)
		}
		after := markdown.Read(n.Replace(contents))
		var got []string
		for _, b := range after.Blocks {
			got = append(got, strings.ReplaceAll(after.Content(b), "\r\n", "\n"))
		}
		for i := range contents {
			contents[i] = strings.ReplaceAll(contents[i], "\r\n", "\n")
		}
		require.Equal(t, contents, got, "%q", n.Whole)
	})
}

func TestFit(t *testing.T) {
	const quote = "text\n> ```rig\n> anchor head\n> load litter\n> ```\nend\n"
	at := func(word string) int { return strings.Index(quote, word) }
	cases := []struct {
		name       string
		start, end int
		text       string
		want       string // empty: it does not fit
	}{
		{"a word", at("litter"), at("litter") + 6, "sack", "text\n> ```rig\n> anchor head\n> load sack\n> ```\nend\n"},
		{"a line after", at(" head") + 5, at(" head") + 5, "\nrope r", "text\n> ```rig\n> anchor head\n> rope r\n> load litter\n> ```\nend\n"},
		{"a line before", at("> load"), at("> load"), "rope r\n", "text\n> ```rig\n> anchor head\n> rope r\n> load litter\n> ```\nend\n"},
		{"before the notation of a line", at("load"), at("load"), "rope r\n", "text\n> ```rig\n> anchor head\n> rope r\n> load litter\n> ```\nend\n"},
		{"a line at the end", at("> ```\nend"), at("> ```\nend"), "rope r\n", "text\n> ```rig\n> anchor head\n> load litter\n> rope r\n> ```\nend\n"},
		{"a blank line", at("> load"), at("> load"), "\nrope r\n", "text\n> ```rig\n> anchor head\n>\n> rope r\n> load litter\n> ```\nend\n"},
		{"a line taken out", at("> load"), at("> ```\nend"), "", "text\n> ```rig\n> anchor head\n> ```\nend\n"},
		{"out of the block", at("end"), at("end"), "rope r\n", ""},
		{"over the fence", at("litter"), at("end"), "", ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			span, text, ok := markdown.Read(quote).Fit(source.Span{Start: c.start, End: c.end}, c.text)
			require.Equal(t, c.want != "", ok)
			if ok {
				assert.Equal(t, c.want, quote[:span.Start]+text+quote[span.End:])
			}
		})
	}
}

func TestIs(t *testing.T) {
	for name, want := range map[string]bool{"a.md": true, "in/B.MD": true, "c.markdown": true, "d.rig": false, "md": false, "e.md.rig": false} {
		assert.Equal(t, want, markdown.Is(name), name)
	}
}
