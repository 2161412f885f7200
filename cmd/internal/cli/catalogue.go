package cli

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"fairlead/lint/rules"
)

// toRule finds the links from one page to another.
var toRule = regexp.MustCompile(`\]\(([a-z-]+)\.md\)`)

// catalogue writes the pages of all rules as one Markdown document, group by group,
// with a table of contents.
func catalogue() string {
	var b strings.Builder
	b.WriteString("# Fairlead: the rules of the linter\n")
	groups := slices.DeleteFunc(rules.Groups(), func(g rules.Group) bool { return len(g.Rules) == 0 })
	for _, g := range groups {
		fmt.Fprintf(&b, "\n%s\n\n", g.Title)
		for _, r := range g.Rules {
			fmt.Fprintf(&b, "- [%s](#%s) (%s): %s\n", r.Name, r.Name, r.Severity, r.Summary)
		}
	}
	for _, g := range groups {
		fmt.Fprintf(&b, "\n## %s\n", g.Title)
		for _, r := range g.Rules {
			text, _ := rules.Page(r.Name)
			fmt.Fprintf(&b, "\n%s", toRule.ReplaceAllString(deeper(text), "](#$1)"))
		}
	}
	return b.String()
}

// deeper sets the headings of a page two levels down: under those of the document and
// of the group.
func deeper(markdown string) string {
	var b strings.Builder
	code := false
	for _, line := range strings.SplitAfter(markdown, "\n") {
		if strings.HasPrefix(line, "```") {
			code = !code
		}
		if !code && strings.HasPrefix(line, "#") {
			b.WriteString("##")
		}
		b.WriteString(line)
	}
	return b.String()
}
