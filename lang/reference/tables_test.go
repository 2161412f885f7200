package reference_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/lang/quantity"
	"fairlead/lang/reference"
	"fairlead/lang/resolve"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/lint/rules"
)

// TestTables compares every generated table of the pages with what the program
// knows, and writes it with -update.
func TestTables(t *testing.T) {
	tables := map[string]func(*testing.T) string{
		"units": unitTable, "kinds": kindTable, "clauses": clauseTable, "reserved": reservedWords,
		"rules": ruleTable, "claims": claimTable, "meaning": meaningTable, "text": textTable,
		"figures": figureTable, "usual": usualRules,
	}
	for _, page := range reference.Pages() {
		text := page.Text
		for name, table := range tables {
			begin := "<!-- generated: " + name + " -->\n"
			before, rest, found := strings.Cut(text, begin)
			if !found {
				continue
			}
			_, after, closed := strings.Cut(rest, "<!-- end -->")
			require.True(t, closed, "%s: the table %s has no end", page.Name, name)
			text = before + begin + "\n" + table(t) + "\n<!-- end -->" + after
			delete(tables, name)
		}
		if text != page.Text {
			langtest.Golden(t, page.Name, text)
		}
	}
	for name := range tables {
		t.Errorf("no page has the table %s", name)
	}
}

// table writes rows of cells as Markdown.
func table(head string, rows ...string) string {
	columns := strings.Count(head, "|") + 1
	lines := append([]string{"| " + head + " |", "|" + strings.Repeat(" --- |", columns)}, rows...)
	return strings.Join(lines, "\n") + "\n"
}

func row(cells ...string) string { return "| " + strings.Join(cells, " | ") + " |" }

// code sets words as code, with commas between.
func code(words ...string) string {
	set := make([]string, len(words))
	for i, w := range words {
		set[i] = "`" + w + "`"
	}
	return strings.Join(set, ", ")
}

func kindTable(*testing.T) string {
	var rows []string
	for _, k := range syntax.Kinds() {
		rows = append(rows, row(code(k.Word), k.Meaning, code(k.Clauses...)))
	}
	return table("kind | meaning | clauses", rows...)
}

func figureTable(*testing.T) string {
	bounds := map[syntax.Bound]string{syntax.Floor: "at least", syntax.Ceiling: "at most", syntax.Band: "between"}
	var rows []string
	for _, f := range syntax.Figures() {
		rows = append(rows, row(code(f.Name), f.Meaning, bounds[f.Bound], code(f.Example)))
	}
	return table("figure | meaning | bound | example", rows...)
}

// usualRules shows the usual rules, each with its source.
func usualRules(*testing.T) string {
	var rows []string
	for _, p := range house.Usual() {
		for _, q := range p.Requires {
			rows = append(rows, row(code(q.Place.Text()), q.Source))
		}
	}
	return table("rule | where it comes from", rows...)
}

func clauseTable(*testing.T) string {
	var rows []string
	for _, c := range syntax.Clauses() {
		example := c.Example
		if example == "" {
			example = c.Word
		}
		if c.Second != "" {
			example += "`, `" + example + " " + c.Second + " 60 %"
		}
		rows = append(rows, row(code(c.Word), followedBy(c), "`"+example+"`", takers(c.Word)))
	}
	return table("clause | what follows | example | taken by", rows...)
}

// followedBy says in words what follows the word of a clause.
func followedBy(c syntax.Clause) string {
	switch c.Shape {
	case syntax.Flag:
		return "nothing"
	case syntax.Count:
		return "a whole number, or a range of two"
	case syntax.Name:
		return "the name of a part"
	case syntax.MaybeName:
		return "nothing, or the name of a part"
	case syntax.FreeWord:
		return "a word"
	}
	var units []string
	for _, d := range c.Dimensions {
		units = append(units, dimensionWord(d))
	}
	return strings.Join(units, " or ")
}

func dimensionWord(d quantity.Dimension) string {
	return map[quantity.Dimension]string{
		quantity.None: "a plain number", quantity.Mass: "a mass", quantity.Force: "a force",
		quantity.Length: "a length", quantity.Angle: "an angle", quantity.Ratio: "a per cent",
	}[d]
}

// takers says what takes a clause: kinds, every kind, a node.
func takers(word string) string {
	var list []string
	for _, k := range syntax.Kinds() {
		if slices.Contains(syntax.ClausesOf(k.Word), word) {
			list = append(list, "`"+k.Word+"`")
		}
	}
	if len(list) == len(syntax.Kinds()) {
		list = []string{"every kind"}
	}
	if slices.Contains(syntax.NodeClauses(), word) {
		list = append(list, "a node")
	}
	return strings.Join(list, ", ")
}

func unitTable(*testing.T) string {
	var rows []string
	for _, d := range []quantity.Dimension{quantity.Mass, quantity.Force, quantity.Length, quantity.Angle, quantity.Ratio} {
		var words, factors []string
		for _, u := range quantity.Units() {
			if u.Dimension != d {
				continue
			}
			words = append(words, u.Word)
			exact := strings.TrimRight(strings.TrimRight(u.SI.FloatString(16), "0"), ".")
			factors = append(factors, fmt.Sprintf("1 %s = %s%s", u.Word, exact, siWord(d)))
		}
		rows = append(rows, row(dimensionWord(d), code(words...), strings.Join(factors, "; ")))
	}
	return table("quantity | units | inside", rows...)
}

func siWord(d quantity.Dimension) string {
	return map[quantity.Dimension]string{
		quantity.Mass: " kg", quantity.Force: " N", quantity.Length: " m", quantity.Angle: " deg",
	}[d]
}

// reservedWords lists the words that cannot be names, in the vocabulary's order.
func reservedWords(t *testing.T) string {
	var words []string
	for _, s := range syntax.Statements() {
		words = append(words, s)
	}
	for _, k := range syntax.Kinds() {
		words = append(words, k.Word)
	}
	for _, c := range syntax.Clauses() {
		words = append(words, c.Word)
		if c.Second != "" {
			words = append(words, c.Second)
		}
	}
	words = append(words, syntax.Structure()...)
	seen := map[string]bool{}
	var list []string
	for _, w := range words {
		require.True(t, syntax.Reserved(w), w)
		if !seen[w] {
			seen[w] = true
			list = append(list, w)
		}
	}
	return code(list...) + "\n"
}

// The findings of a file, by what must be known to make them: the solved rig, all
// other findings, what the text means, or its words alone.
func ruleTable(*testing.T) string {
	return findingTable(func(r *lint.Rule) bool { return r.Check != nil })
}

func claimTable(*testing.T) string {
	return findingTable(func(r *lint.Rule) bool { return named(lint.ClaimRules(), r) })
}

func meaningTable(*testing.T) string {
	return findingTable(func(r *lint.Rule) bool { return r.Check == nil && resolved(r) })
}

func textTable(*testing.T) string {
	return findingTable(func(r *lint.Rule) bool { return named(lint.TextRules(), r) && !resolved(r) })
}

func named(list []*lint.Rule, r *lint.Rule) bool {
	return slices.ContainsFunc(list, func(of *lint.Rule) bool { return of.Name == r.Name })
}

func resolved(r *lint.Rule) bool {
	return slices.ContainsFunc(resolve.Rules(), func(of resolve.Rule) bool { return of.Name == r.Name })
}

func findingTable(is func(*lint.Rule) bool) string {
	var rows []string
	for _, r := range rules.All() {
		if is(r) {
			rows = append(rows, row(code(r.Name), r.Severity.String(), r.Summary))
		}
	}
	return table("finding | severity | what is wrong", rows...)
}
