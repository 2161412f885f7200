package cli

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"fairlead/cmd/internal/show"
	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/solve/report/page"
)

// linting is what "lint" does with what it finds.
type linting struct {
	format, failOn      *choice
	fix, diff, accepted bool
}

// lint finds what is wrong with rigs.
func (t *tool) lint() *cobra.Command {
	in := &inputs{}
	l := &linting{failOn: newChoice(diag.Error.String(), diag.Warning.String(), diag.Advice.String())}
	cmd := &cobra.Command{
		Use:   "lint FILE...",
		Short: "what is wrong with a rig, and how to mend it",
		Long: "Solves every rig and says what is wrong with it: a rope that is fast, a grip on the wrong " +
			"strand, a load that nothing holds, a claim that does not come true. Each finding names " +
			"its place, its rule and, where one is proved to work, the way to mend it.\n\n" +
			"With --fix, makes the fixes that are proved: each is made in memory, the whole file is examined " +
			"again, and it stays only if its finding is gone and nothing as grave has come. Where there are several " +
			"ways, the choice is yours. From standard input, the mended text goes to standard output and " +
			"the report to standard error.\n\n" + files,
		Example: "  fairlead lint yard.rig\n  fairlead lint --fix --diff yard.rig\n" +
			"  fairlead lint --accepted rigs/\n  fairlead lint --fail-on warning --format json rigs/",
	}
	l.format = addFindingsFormat(cmd)
	addChoice(cmd.Flags(), cmd, l.failOn, "fail-on", "how grave a finding must be to make the exit status 1")
	cmd.Flags().BoolVar(&l.fix, "fix", false, "mend the files, and say what was done and what is left")
	cmd.Flags().BoolVar(&l.diff, "diff", false, "with --fix, only show what it would change")
	cmd.Flags().BoolVar(&l.accepted, "accepted", false,
		"list what the rigs accept, with the reasons, and what they expect; exit status 1 if a claim meets nothing")
	in.attach(cmd)
	in.attachPolicy(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := l.judge(args); err != nil {
			return err
		}
		loaded, unread := in.read(args, t.in)
		switch {
		case l.accepted:
			return t.listAccepted(l, loaded, unread)
		case l.diff:
			return t.showMending(l, loaded, unread)
		case l.fix:
			return t.mend(l, loaded, unread, args[0] == standardInput)
		}
		return t.examine(l, loaded, unread)
	}
	return cmd
}

// judge refuses settings that contradict one another.
func (l *linting) judge(args []string) error {
	notText := l.format.value != formatText
	isFile := func(arg string) bool { return arg != standardInput }
	switch {
	case l.diff && !l.fix:
		return misused("--diff shows what --fix would change: write both")
	case l.fix && l.accepted:
		return misused("choose one of --fix and --accepted")
	case l.diff && notText:
		return misused("--diff shows changes as text: leave out --format")
	case l.accepted && notText && l.format.value != formatJSON:
		return misused("--accepted has the formats text and json only")
	case l.fix && slices.Contains(args, standardInput) && slices.ContainsFunc(args, isFile):
		return misused("--fix takes either files or standard input")
	}
	return nil
}

// fails says whether a finding is grave enough to make the exit status 1.
func (l *linting) fails(findings []diag.Diagnostic) bool {
	threshold, _ := diag.SeverityNamed(l.failOn.value)
	return slices.ContainsFunc(findings, func(d diag.Diagnostic) bool { return d.Severity >= threshold })
}

// examine writes what is found in files to standard output.
func (t *tool) examine(l *linting, loaded []*load.Loaded, unread error) error {
	// House rules that are wrong themselves hold for less than their author thinks.
	all := slices.Concat(loaded, load.Policies(loaded))
	found := lint.Examine(all, rules.All())
	var err error
	switch l.format.value {
	case formatJSON:
		err = show.JSON(t.out, found.Findings)
	case formatBrief:
		err = show.Brief(t.out, found.Findings)
	case formatSARIF:
		err = show.SARIF(t.out, sarifRun(all, found, unread))
	default:
		if unread == nil || len(loaded) > 0 { // who saw no file found nothing out
			err = t.showFindings(loaded, found)
		}
	}
	if err != nil {
		return err
	}
	return outcome(unread, l.fails(found.Findings))
}

// showFindings writes findings as text.
func (t *tool) showFindings(loaded []*load.Loaded, found lint.Outcome) error {
	paint := t.paint(t.out)
	if err := show.Text(t.out, found.Findings, paint); err != nil {
		return err
	}
	total := show.Total(found.Findings, show.Sum{
		Rigs: rigsIn(loaded), Mendable: mendable(loaded, found.Findings), Accepted: found.Accepted,
	})
	_, err := fmt.Fprintln(t.out, paint.Set(page.Strong, total))
	return err
}

// sarifRun is what a run on files found, with what the program knows of its rules.
func sarifRun(files []*load.Loaded, found lint.Outcome, failed error) show.Run {
	run := show.Run{Found: found, Rules: rules.All(), Version: built(), Failed: failed}
	for _, f := range files {
		run.Files = append(run.Files, f.File)
	}
	run.Page = func(rule string) string {
		text, _ := rules.Page(rule)
		return text
	}
	return run
}

// listAccepted writes what the rigs accept and expect.
func (t *tool) listAccepted(l *linting, loaded []*load.Loaded, unread error) error {
	found := lint.Examine(loaded, rules.All())
	open := slices.ContainsFunc(found.Acceptances, func(a lint.Acceptance) bool { return a.State != lint.Met }) ||
		slices.ContainsFunc(found.Expectations, func(e lint.Expectation) bool { return e.State != lint.Met })
	if l.format.value == formatJSON {
		if err := show.AcceptedJSON(t.out, found); err != nil {
			return err
		}
		return outcome(unread, open)
	}
	paint := t.paint(t.out)
	if err := show.Accepted(t.out, found, paint); err != nil {
		return err
	}
	fmt.Fprintln(t.out, paint.Set(page.Strong, show.AcceptedTotal(found, rigsIn(loaded))))
	return outcome(unread, open)
}
