package rules

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lint"
)

// The sections of a page that its test reads.
const (
	finds  = "It finds"
	leaves = "It leaves alone"
	mended = "Mended"
)

// fileMark stands in the info string of a block that is a file which the rigs of the
// page can use.
const fileMark = "rig file="

// block is one fenced block of a page.
type block struct {
	section, info, text string
}

// page is a page cut into its blocks, with what stands between them.
type page struct {
	blocks []block
	// between has the lines before each block, and last those after the last one.
	between []string
}

// cutPage cuts a page at its fences.
func cutPage(text string) page {
	var p page
	var prose, body strings.Builder
	section, info, inside := "", "", false
	for _, line := range strings.SplitAfter(text, "\n") {
		word, fence := strings.CutPrefix(strings.TrimSpace(line), "```")
		switch {
		case fence && !inside:
			info, inside = word, true
		case fence:
			p.between = append(p.between, prose.String())
			p.blocks = append(p.blocks, block{section, info, body.String()})
			inside = false
			prose.Reset()
			body.Reset()
		case inside:
			body.WriteString(line)
		default:
			if title, ok := strings.CutPrefix(line, "## "); ok {
				section = strings.TrimSpace(title)
			}
			prose.WriteString(line)
		}
	}
	p.between = append(p.between, prose.String())
	return p
}

// String puts the page together again.
func (p page) String() string {
	var b strings.Builder
	for i, k := range p.blocks {
		fmt.Fprintf(&b, "%s```%s\n%s```\n", p.between[i], k.info, k.text)
	}
	return b.String() + p.between[len(p.between)-1]
}

// files gives the files of the page by their names.
func (p page) files() map[string]string {
	files := map[string]string{}
	for _, b := range p.blocks {
		if name, ok := strings.CutPrefix(b.info, fileMark); ok {
			files[name] = b.text
		}
	}
	return files
}

// in lists the blocks of a section but for its files.
func (p page) in(section string) []*block {
	var list []*block
	for i := range p.blocks {
		if p.blocks[i].section == section && !strings.HasPrefix(p.blocks[i].info, fileMark) {
			list = append(list, &p.blocks[i])
		}
	}
	return list
}

// examined lints a text that can use no other file.
func examined(text string) (*load.Loaded, []diag.Diagnostic) {
	f := load.Text("yard.rig", text)
	return f, lint.Run([]*load.Loaded{f}, All())
}

// examinedWith lints the rig of a page that can use some files.
func examinedWith(files map[string]string, text string) (*load.Loaded, []diag.Diagnostic) {
	f := load.Loader{Overlay: files}.Text("yard.rig", text)
	return f, lint.Run([]*load.Loaded{f}, All())
}

// short is the house of rigs that leave the belay out because they are about something
// else.
var short = load.Text("policy.rig", "policy drawn-short\nrule no-backup off\n")

// drawnShort lints a rig in that house.
func drawnShort(text string) (*load.Loaded, []diag.Diagnostic) {
	f := load.Text("yard.rig", text)
	f.Policy = short
	return f, lint.Run([]*load.Loaded{f}, All())
}

// only leaves the findings of one rule.
func only(rule string, found []diag.Diagnostic) []diag.Diagnostic {
	return slices.DeleteFunc(slices.Clone(found), func(d diag.Diagnostic) bool { return d.Rule != rule })
}

// printed gives findings in the form that editors' lists read, with their fixes.
func printed(f *load.Loaded, found []diag.Diagnostic) string {
	var b strings.Builder
	for _, d := range found {
		start := d.Place.Span.Start
		fmt.Fprintf(&b, "%s:%d:%d: %s: %s [%s]\n", f.File.Name, f.File.Line(start)+1, f.File.Column(start)+1,
			d.Severity, d.Message, d.Rule)
		for _, fix := range d.Fixes {
			b.WriteString("  fix: " + fix.Title)
			if fix.Gives != "" {
				b.WriteString("; " + fix.Gives)
			}
			b.WriteString("\n")
		}
	}
	return b.String()
}

// of gives the first finding of a rule.
func of(rule string, found []diag.Diagnostic) *diag.Diagnostic {
	for i := range found {
		if found[i].Rule == rule {
			return &found[i]
		}
	}
	return nil
}

// tooLong makes the rigs that have no room on their page.
var tooLong = map[string]func() string{"too-large": func() string {
	var b strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&b, "pulley p%d\n", i)
	}
	for i := range 101 {
		fmt.Fprintf(&b, "rig r%d\n", i)
	}
	return b.String()
}, "not-computed-yet": func() string {
	return tackle(200, false) + strings.Repeat("expect held without head\n", 300)
}}

func TestPages(t *testing.T) {
	for _, r := range All() {
		t.Run(r.Name, func(t *testing.T) {
			text, ok := Page(r.Name)
			require.True(t, ok, "%s.md is missing", r.Name)
			assert.True(t, strings.HasPrefix(text, "# "+r.Name+"\n\n"), "a page begins with the rule's name")
			assert.Contains(t, text, "\n## Why it matters\n")
			p := cutPage(text)
			require.Equal(t, text, p.String(), "the page is cut and put together without loss")
			checkFinds(t, r, p)
			checkLeaves(t, r, p)
			checkMended(t, r, p)
			if now := p.String(); langtest.Updating() && now != text {
				require.NoError(t, os.WriteFile(r.Name+".md", []byte(now), 0o644))
			}
		})
	}
}

// checkFinds examines every rig that the rule fires in, each with what the rule finds
// below it.
func checkFinds(t *testing.T, r *lint.Rule, p page) {
	blocks := p.in(finds)
	if text, ok := tooLong[r.Name]; ok {
		_, found := examined(text())
		assert.NotNil(t, of(r.Name, found))
		require.Empty(t, blocks)
		return
	}
	require.NotEmpty(t, blocks, "the page shows no rig that the rule finds")
	require.Zero(t, len(blocks)%2, "each rig is followed by what comes out")
	for i := 0; i < len(blocks); i += 2 {
		rig, out := blocks[i], blocks[i+1]
		require.Equal(t, []string{"rig", "text"}, []string{rig.info, out.info})
		f, found := examinedWith(p.files(), rig.text)
		require.NotNil(t, of(r.Name, found), "not found in:\n%s\nbut:\n%s", rig.text, printed(f, found))
		found = only(r.Name, found)
		if langtest.Updating() {
			out.text = printed(f, found)
		}
		assert.Equal(t, out.text, printed(f, found))
	}
}

// checkLeaves examines the near misses: the rule finds nothing in them, and no rule an
// error.
func checkLeaves(t *testing.T, r *lint.Rule, p page) {
	blocks := p.in(leaves)
	require.NotEmpty(t, blocks, "the page shows no near miss")
	for _, b := range blocks {
		f, found := examinedWith(p.files(), b.text)
		assert.Empty(t, printed(f, only(r.Name, found)), "in:\n%s", b.text)
		for _, d := range found {
			assert.Less(t, d.Severity, diag.Error, "%s", d.Message)
		}
	}
}

// checkMended makes the first fix of the rule in the first rig that has one and
// compares the text with that on the page.
func checkMended(t *testing.T, r *lint.Rule, p page) {
	blocks := p.in(mended)
	var want string
	for i, b := range p.in(finds) {
		if i%2 == 1 || want != "" {
			continue
		}
		f, found := examinedWith(p.files(), b.text)
		for _, d := range found {
			if d.Rule == r.Name && len(d.Fixes) > 0 && want == "" {
				want = diag.Apply(f.File, d.Fixes[0].Edits)
			}
		}
	}
	if want == "" {
		require.Empty(t, blocks, "the page shows a mended rig, but no fix is offered")
		return
	}
	require.Len(t, blocks, 1, "the page does not show the mended rig:\n%s", want)
	if langtest.Updating() {
		blocks[0].text = want
	}
	assert.Equal(t, blocks[0].text, want)
	f, found := examinedWith(p.files(), want)
	assert.Nil(t, of(r.Name, found), "the fix does not mend:\n%s", printed(f, found))
}
