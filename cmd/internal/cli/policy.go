package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve/report"
	"fairlead/solve/report/page"
)

// policy says which house rules are in force.
func (t *tool) policy() *cobra.Command {
	in := &inputs{}
	cmd := &cobra.Command{
		Use:   "policy FILE...",
		Short: "the house rules in force for a file, and where each comes from",
		Long: "Lists the house rules that hold for a file: those that it has itself, those of the policy.rig in " +
			"its folder or the nearest above, and the usual ones under them. A line that a nearer one " +
			"takes the place of is shown too, and by which. Files with the same house rules are shown " +
			"together.\n\n" + files,
		Example: "  fairlead policy rigs/yard.rig\n  fairlead policy --policy examples/house-rules/rescue-team.rig rigs/",
	}
	format := addFormat(cmd)
	in.attach(cmd)
	in.attachPolicy(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		loaded, unread := in.read(args, t.in)
		houses := housesOf(loaded)
		var err error
		if format.value == formatJSON {
			err = t.policyJSON(houses)
		} else {
			err = t.policyText(houses)
		}
		if err != nil {
			return err
		}
		return outcome(unread, false)
	}
	return cmd
}

// inHouse is files that have the same house rules.
type inHouse struct {
	files []*load.Loaded
	rules *house.Rules
}

// housesOf puts the files together that have the same house rules, in the order of the
// first of each: a policy file with those for which it holds.
func housesOf(loaded []*load.Loaded) []*inHouse {
	var list []*inHouse
	shared := map[*load.Loaded]*inHouse{}
	for _, l := range loaded {
		of, own := l.Policy, len(l.Model.Policies) > 0
		if slices.ContainsFunc(loaded, func(other *load.Loaded) bool { return other.Policy == l }) {
			of, own = l, false
		}
		if known := shared[of]; known != nil && !own {
			known.files = append(known.files, l)
			continue
		}
		h := &inHouse{files: []*load.Loaded{l}, rules: lint.HouseOf(l)}
		if !own {
			shared[of] = h
		}
		list = append(list, h)
	}
	return list
}

// policyText lists house rules, those nearest to the rig first: each line as written
// under its policy, and beside it why, or what took its place.
func (t *tool) policyText(houses []*inHouse) error {
	paint := t.paint(t.out)
	for i, h := range houses {
		if i > 0 {
			fmt.Fprintln(t.out)
		}
		var names []string
		for _, f := range h.files {
			names = append(names, page.Clean(f.File.Name))
		}
		for _, line := range page.Wrap(strings.Join(names, ", "), page.Columns) {
			fmt.Fprintln(t.out, paint.Set(page.Strong, line))
		}
		t.policyLines(h.rules.Lines())
	}
	return nil
}

// policyIndent is where the lines of a policy begin, under its name and after their
// numbers.
const policyIndent = 8

// policyLines writes the lines of all policies.
func (t *tool) policyLines(lines []*house.Line) {
	width := 0
	for _, l := range lines {
		width = max(width, page.Width(rule(l)))
	}
	width = min(width, page.Columns/2)
	var of *model.Policy
	for _, l := range nearestFirst(lines) {
		if l.Policy != of {
			of = l.Policy
			fmt.Fprintln(t.out)
			for _, words := range page.Wrap(heading(l), page.Columns-2) {
				t.line(words, 2, page.Plain)
			}
		}
		t.policyLine(l, width)
	}
}

// nearestFirst puts the policies nearest to the rig first: those of its own file, of its
// policy file, the usual ones. The lines of each stay in their order.
func nearestFirst(lines []*house.Line) []*house.Line {
	var list []*house.Line
	for end := len(lines); end > 0; {
		start := end
		for start > 0 && lines[start-1].Place.File == lines[end-1].Place.File {
			start--
		}
		list = append(list, lines[start:end]...)
		end = start
	}
	return list
}

// heading names the policy of a line.
func heading(l *house.Line) string {
	if l.Usual() {
		return "usual, where nothing above says otherwise"
	}
	words := page.Clean(l.Place.File.Name)
	if l.Policy.Name != "" {
		words = page.Clean(l.Policy.Name) + ", " + words
	}
	if l.Policy.Title != "" {
		words += ": " + page.Clean(l.Policy.Title)
	}
	return words
}

// rule gives the line as written, with single spaces.
func rule(l *house.Line) string { return page.Clean(strings.Join(strings.Fields(l.Written()), " ")) }

// policyLine writes one line with its number, and beside it why it is so.
func (t *tool) policyLine(l *house.Line, width int) {
	start := policyIndent + width + 2
	style, beside := page.Plain, page.Clean(l.Source())
	if l.Over != nil {
		style, beside = page.Faint, "replaced by "+place(l.Over)
	}
	number := ""
	if !l.Usual() {
		number = fmt.Sprintf("%4d", lineOf(l))
	}
	words := page.Wrap(rule(l), page.Columns-policyIndent)
	whys := page.Wrap(beside, page.Columns-start)
	for i := 0; i < max(len(words), len(whys)); i++ {
		var line page.Line
		if i == 0 {
			line.Put(2, number, page.Faint)
		}
		if i < len(words) {
			line.Put(policyIndent, words[i], style)
		}
		if i < len(whys) && page.Width(words[0]) <= width {
			line.Put(start, whys[i], page.Faint)
		}
		fmt.Fprintln(t.out, line.String(t.paint(t.out)))
	}
}

func (t *tool) line(words string, column int, style page.Style) {
	var line page.Line
	line.Put(column, words, style)
	fmt.Fprintln(t.out, line.String(t.paint(t.out)))
}

func lineOf(l *house.Line) int { return l.Place.File.Line(l.Place.Span.Start) + 1 }

// place says where a line stands.
func place(l *house.Line) string {
	return fmt.Sprintf("line %d of %s", lineOf(l), page.Clean(l.Place.File.Name))
}

// houseJSON is house rules in machine output.
type houseJSON struct {
	Files []string    `json:"files"`
	Lines []houseLine `json:"lines"`
}

// houseLine is one line of them; file and range are null for a usual one.
type houseLine struct {
	Written string        `json:"written"`
	Policy  string        `json:"policy"`
	File    *string       `json:"file"`
	Range   *report.Range `json:"range"`
	Source  string        `json:"source"`
	InForce bool          `json:"inForce"`
}

// policyJSON writes house rules for machines.
func (t *tool) policyJSON(houses []*inHouse) error {
	list := []houseJSON{}
	for _, h := range houses {
		one := houseJSON{Files: []string{}, Lines: []houseLine{}}
		for _, f := range h.files {
			one.Files = append(one.Files, f.File.Name)
		}
		for _, l := range nearestFirst(h.rules.Lines()) {
			line := houseLine{Written: l.Written(), Policy: l.Policy.Name, Source: l.Source(), InForce: l.Over == nil}
			if !l.Usual() {
				file, at := report.FileName(l.Place), report.RangeOf(l.Place)
				line.File, line.Range = &file, &at
			}
			one.Lines = append(one.Lines, line)
		}
		list = append(list, one)
	}
	return report.Encode(t.out, struct {
		Version int         `json:"version"`
		Houses  []houseJSON `json:"houses"`
	}{1, list})
}
