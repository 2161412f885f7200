package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"fairlead/cmd/internal/show"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/solve/report"
	"fairlead/solve/report/page"
)

// ruleLine is one rule in machine output.
type ruleLine struct {
	Name     string `json:"name"`
	Group    string `json:"group"`
	Severity string `json:"severity"`
	Summary  string `json:"summary"`
	// Page is there when the rule was asked for by name.
	Page string `json:"page,omitempty"`
}

// rules lists the rules, or prints the page of one.
func (t *tool) rules() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "rules [NAME]",
		Short: "what lint looks for, and why it matters",
		Long: "Without a name, lists every rule with its severity, in groups. With one, prints its page: what it " +
			"finds, why it matters, a rig that has the fault, a near one that has not, and the mended rig. " +
			"As markdown, the page as it is kept, or without a name all pages in one document.",
		Example:           "  fairlead rules\n  fairlead rules no-capture\n  fairlead rules --format markdown",
		ValidArgsFunction: ruleNames,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return misused("name one rule at a time")
			}
			return nil
		},
	}
	format := newChoice(formatText, formatJSON, formatMarkdown)
	addChoice(cmd.Flags(), cmd, format, "format", "text for people, json for machines, markdown for a document")
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if len(args) == 1 {
			return t.rulePage(args[0], format.value)
		}
		switch format.value {
		case formatJSON:
			return t.rulesJSON(ruleLines())
		case formatMarkdown:
			_, err := fmt.Fprint(t.out, catalogue())
			return err
		}
		return t.listRules()
	}
	return cmd
}

func ruleLines() []ruleLine {
	lines := []ruleLine{}
	for _, g := range rules.Groups() {
		for _, r := range g.Rules {
			lines = append(lines, ruleLine{Name: r.Name, Group: g.Title, Severity: r.Severity.String(), Summary: r.Summary})
		}
	}
	return lines
}

func (t *tool) rulesJSON(lines []ruleLine) error {
	return report.Encode(t.out, struct {
		Version int        `json:"version"`
		Rules   []ruleLine `json:"rules"`
	}{1, lines})
}

// listRules writes a line for each rule, group by group.
func (t *tool) listRules() error {
	const left, severities = 2, len("warning")
	widest := 0
	lines := ruleLines()
	for _, r := range lines {
		widest = max(widest, page.Width(r.Name))
	}
	start := left + widest + 2 + severities + 2
	group := ""
	for _, r := range lines {
		if r.Group != group {
			if group != "" {
				fmt.Fprintln(t.out)
			}
			group = r.Group
			fmt.Fprintln(t.out, t.paint(t.out).Set(page.Strong, group))
		}
		for i, words := range page.Wrap(r.Summary, page.Columns-start) {
			var l page.Line
			if i == 0 {
				l.Put(left, r.Name, page.Plain)
				l.Put(left+widest+2, r.Severity, page.Faint)
			}
			l.Put(start, words, page.Plain)
			fmt.Fprintln(t.out, l.String(t.paint(t.out)))
		}
	}
	return nil
}

// rulePage prints the page of one rule.
func (t *tool) rulePage(name, format string) error {
	text, ok := rules.Page(name)
	if !ok {
		return misused("there is no rule %s%s", name, hint(name, lint.Names(rules.All())))
	}
	for _, r := range ruleLines() {
		if r.Name != name {
			continue
		}
		switch format {
		case formatJSON:
			r.Page = text
			return t.rulesJSON([]ruleLine{r})
		case formatText:
			return show.Page(t.out, text, r.Severity, t.paint(t.out))
		}
	}
	_, err := fmt.Fprint(t.out, text)
	return err
}

// ruleNames completes the names of rules, each with its summary.
func ruleNames(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var names []string
	for _, r := range rules.All() {
		names = append(names, r.Name+"\t"+r.Summary)
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}
