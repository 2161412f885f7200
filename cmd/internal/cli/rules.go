package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"fairlead/lint/rules"
	"fairlead/solve/report"
	"fairlead/solve/report/page"
)

// ruleLine is one rule in machine output.
type ruleLine struct {
	Name     string `json:"name"`
	Severity string `json:"severity"`
	Summary  string `json:"summary"`
}

// rules lists the rules, or prints the page of one.
func (t *tool) rules() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "rules [NAME]",
		Short: "what lint looks for, and why it matters",
		Long: "Without a name, lists every rule with its severity. With one, prints its page: what it finds, " +
			"why it matters, a rig that has the fault, a near one that has not, and the mended rig.",
		Example:           "  fairlead rules\n  fairlead rules no-capture",
		ValidArgsFunction: ruleNames,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return misused("name one rule at a time")
			}
			return nil
		},
	}
	format := addFormat(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		switch {
		case len(args) == 1:
			return t.rulePage(args[0])
		case format.value == formatJSON:
			return report.Encode(t.out, struct {
				Version int        `json:"version"`
				Rules   []ruleLine `json:"rules"`
			}{1, ruleLines()})
		}
		return t.listRules()
	}
	return cmd
}

func ruleLines() []ruleLine {
	lines := []ruleLine{}
	for _, r := range rules.All() {
		lines = append(lines, ruleLine{r.Name, r.Severity.String(), r.Summary})
	}
	return lines
}

func (t *tool) listRules() error {
	widest := 0
	lines := ruleLines()
	for _, r := range lines {
		widest = max(widest, page.Width(r.Name))
	}
	const severities = len("warning")
	start := widest + 2 + severities + 2
	for _, r := range lines {
		for i, words := range page.Wrap(r.Summary, page.Columns-start) {
			var l page.Line
			if i == 0 {
				l.Put(0, r.Name, page.Strong)
				l.Put(widest+2, r.Severity, page.Plain)
			}
			l.Put(start, words, page.Plain)
			fmt.Fprintln(t.out, l.String(t.paint(t.out)))
		}
	}
	return nil
}

// rulePage prints the page of one rule as it is kept: Markdown reads well as text.
func (t *tool) rulePage(name string) error {
	text, ok := rules.Page(name)
	if !ok {
		var names []string
		for _, r := range rules.All() {
			names = append(names, r.Name)
		}
		return misused("there is no rule %s%s", name, hint(name, names))
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
