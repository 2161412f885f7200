package show_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/cmd/internal/show"
	"fairlead/lint/rules"
	"fairlead/solve/report/page"
)

const written = "# no-rope\n\nA rig \\*needs\\* a rope: `reeve a: b \\ c` says\nwhere it *runs*, see [the manual](manual) or <https://example.org>.\n\n" +
	"## It finds\n\n```rig\nanchor  head\n\nload    a-load-whose-line-is-wider-than-the-page-and-which-stays-as-it-is-whatever-the-width\n```\n\n" +
	"```text\nyard.rig:1:1: error: a sentence that is longer than the page is wide and so is wrapped, as text is [no-rope]\n  fix: add a rope\n```\n\n" +
	"- the first\n  item\n- the second item, which is so long that it does not fit on one line of the page\n\n1. one\n2. two\n"

func TestPage(t *testing.T) {
	var b strings.Builder
	require.NoError(t, show.Page(&b, written, "error", page.Paint{}))
	assert.Equal(t, `no-rope  error

  A rig *needs* a rope: `+"`reeve a: b \\ c`"+` says where it runs, see the manual or
  https://example.org.

It finds

    anchor  head

    load    a-load-whose-line-is-wider-than-the-page-and-which-stays-as-it-is-whatever-the-width

    yard.rig:1:1: error: a sentence that is longer than the page is wide and
        so is wrapped, as text is [no-rope]
      fix: add a rope

  - the first item
  - the second item, which is so long that it does not fit on one line of the
    page

  1. one
  2. two
`, b.String())
}

// Colour only repeats what the words say: without it a page has the same words.
func TestPageInColour(t *testing.T) {
	var plain, coloured strings.Builder
	require.NoError(t, show.Page(&plain, written, "", page.Paint{}))
	require.NoError(t, show.Page(&coloured, written, "", page.Colours()))
	assert.Contains(t, coloured.String(), "\x1b[1mIt finds\x1b[22m")
	assert.Equal(t, plain.String(), strings.NewReplacer("\x1b[1m", "", "\x1b[22m", "").Replace(coloured.String()))
}

func TestPageTakesNoCommand(t *testing.T) {
	assert.NotContains(t, show.PlainPage("# a\x1b[2J\n\nb\x1b[31m\n\n```\nc\x1b[31m\n```\n"), "\x1b")
}

// The pages that there are keep every word, and their prose stays on the page.
func TestPagesOfRules(t *testing.T) {
	for _, r := range rules.All() {
		text, _ := rules.Page(r.Name)
		plain := show.PlainPage(text)
		bare := regexp.MustCompile("(?m)^(```.*|#+)").ReplaceAllString(text, "")
		assert.Equal(t, strings.Fields(bare), strings.Fields(plain), r.Name)
		for _, line := range strings.Split(plain, "\n") {
			if !strings.HasPrefix(line, "    ") {
				assert.LessOrEqual(t, page.Width(line), page.Columns, "%s: %s", r.Name, line)
			}
		}
	}
}
