package reference_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	rigfmt "fairlead/fmt"
	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/reference"
	"fairlead/lint"
	"fairlead/lint/rules"
)

// block is one fenced block of notation in a page.
type block struct {
	// name is the page and the line of the block's first line, line that line.
	name string
	text string
	// file is the name under which later blocks of the page use it; empty for none.
	file string
	// wrong are the rules that must report something in it, and no others.
	wrong []string
}

// blocks gives the blocks of a page whose info string begins with "rig".
func blocks(t *testing.T, page reference.Page) []block {
	t.Helper()
	var list []block
	var open *block
	fenced := false
	for i, line := range strings.SplitAfter(page.Text, "\n") {
		info, fence := strings.CutPrefix(line, "```")
		switch {
		case fence && fenced:
			if open != nil {
				list = append(list, *open)
			}
			open, fenced = nil, false
		case fence:
			fenced = true
			if words := strings.Fields(info); len(words) > 0 && words[0] == "rig" {
				open = &block{name: fmt.Sprintf("%s:%d.rig", page.Name, i+2)}
				open.read(t, page, words[1:])
			}
		case open != nil:
			open.text += line
		}
	}
	require.False(t, fenced, "%s: a fence is not closed", page.Name)
	return list
}

// read reads the marks of a block.
func (b *block) read(t *testing.T, page reference.Page, words []string) {
	t.Helper()
	for _, word := range words {
		key, value, ok := strings.Cut(word, "=")
		require.True(t, ok, "%s: %q is no mark of a block", page.Name, word)
		switch key {
		case "wrong":
			b.wrong = append(b.wrong, value)
		case "file":
			b.name, b.file = value, value
		default:
			require.Fail(t, "no mark of a block", "%s: %q", page.Name, word)
		}
	}
}

// short is the house of the blocks, which leave the belay out, as the overview says.
var short = load.Text("policy.rig", "policy manual\nrule no-backup off\n")

// TestBlocks lints every block: one without a mark has no finding at all, its
// claims hold; one with marks has findings of exactly those rules. All are in
// the standard style.
func TestBlocks(t *testing.T) {
	count := 0
	for _, page := range reference.Pages() {
		files := map[string]string{}
		for _, b := range blocks(t, page) {
			count++
			t.Run(b.name, func(t *testing.T) {
				file := load.Loader{Overlay: files}.Text(b.name, b.text)
				file.Policy = short
				found := lint.Run([]*load.Loaded{file}, rules.All())
				var names []string
				for _, d := range found {
					names = append(names, d.Rule)
				}
				assert.ElementsMatch(t, b.wrong, names, "%s", said(found))
				formatted, problems := rigfmt.Format(file.File)
				if len(problems) == 0 {
					assert.Equal(t, formatted, b.text, "not in the standard style")
				}
			})
			if b.file != "" {
				files[b.file] = b.text
			}
		}
	}
	assert.Greater(t, count, 20, "the blocks were not found")
}

func said(found []diag.Diagnostic) string {
	var b strings.Builder
	for _, d := range found {
		fmt.Fprintf(&b, "line %d: %s [%s]\n", d.Place.File.Line(d.Place.Span.Start)+1, d.Message, d.Rule)
	}
	return b.String()
}
