package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"fairlead/cmd/internal/show"
	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/solve/report/page"
)

// lint finds what is wrong with rigs.
func (t *tool) lint() *cobra.Command {
	in := &inputs{}
	failOn := newChoice(diag.Error.String(), diag.Warning.String(), diag.Advice.String())
	cmd := &cobra.Command{
		Use:   "lint FILE...",
		Short: "what is wrong with a rig, and how to mend it",
		Long: "Solves every rig and says what is wrong with it: a rope that is fast, a grip on the wrong " +
			"strand, a load that nothing holds, a claim that does not come true. Each finding names " +
			"its place, its rule and, where one is proved to work, the way to mend it.\n\n" + files,
		Example: "  fairlead lint yard.rig\n  fairlead lint --fail-on warning --format json rigs/",
	}
	format := addFindingsFormat(cmd)
	addChoice(cmd.Flags(), cmd, failOn, "fail-on", "how grave a finding must be to make the exit status 1")
	in.attach(cmd)
	in.attachPolicy(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		loaded, unread := in.read(args, t.in)
		// House rules that are wrong themselves hold for less than their author thinks.
		found := lint.Examine(append(loaded, load.Policies(loaded)...), rules.All())
		if err := t.showFindings(format.value, found, rigsIn(loaded)); err != nil {
			return err
		}
		threshold, _ := diag.SeverityNamed(failOn.value)
		return outcome(unread, worst(found.Findings, threshold))
	}
	return cmd
}

// showFindings writes findings to standard output.
func (t *tool) showFindings(format string, found lint.Outcome, rigs int) error {
	switch format {
	case formatJSON:
		return show.JSON(t.out, found.Findings)
	case formatBrief:
		return show.Brief(t.out, found.Findings)
	}
	paint := t.paint(t.out)
	if err := show.Text(t.out, found.Findings, paint); err != nil {
		return err
	}
	_, err := fmt.Fprintln(t.out, paint.Set(page.Strong, show.Total(found.Findings, found.Accepted, rigs)))
	return err
}

// worst says whether a finding is at least as grave as a threshold.
func worst(findings []diag.Diagnostic, threshold diag.Severity) bool {
	for _, d := range findings {
		if d.Severity >= threshold {
			return true
		}
	}
	return false
}
