package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"fairlead/solve/report"
	"fairlead/solve/report/page"
)

// about stands at the top of the tool's own help.
const about = "Fairlead reads haul rigs written in plain text: what hangs where, and how each rope " +
	"runs. It computes what such a rig does and finds what is wrong with it."

const files = "FILE is a rig file, Markdown notes with rig blocks, a folder (all of both below it), or - for standard input."

const statuses = "Exit status: 0 nothing found, 1 something found, 2 could not run."

// help writes the help of a command.
func (t *tool) help(cmd *cobra.Command, _ []string) {
	out := cmd.OutOrStdout()
	paragraph := func(words string) {
		fmt.Fprintln(out, strings.Join(page.Wrap(words, page.Columns), "\n"))
	}
	if !cmd.HasParent() {
		paragraph(about)
		fmt.Fprintln(out)
		listCommands(cmd)
		fmt.Fprintln(out)
		paragraph(report.Caution)
		fmt.Fprintln(out)
		paragraph("One command more closely: fairlead COMMAND --help. " + statuses)
		return
	}
	fmt.Fprintln(out, t.paint(t.out).Set(page.Strong, "fairlead "+cmd.Use)+"  "+cmd.Short)
	for _, p := range strings.Split(cmd.Long, "\n\n") {
		fmt.Fprintln(out)
		paragraph(p)
	}
	fmt.Fprintln(out)
	listFlags(cmd)
	fmt.Fprintf(out, "\nFor example\n%s\n", cmd.Example)
}

// listCommands writes one line for each command.
func listCommands(root *cobra.Command) {
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			fmt.Fprintf(root.OutOrStdout(), "  fairlead %s  %s\n", page.Left(c.Name(), len("completion")), c.Short)
		}
	}
}

// listFlags writes one entry for each flag, its words beside it.
func listFlags(cmd *cobra.Command) {
	type entry struct{ name, usage string }
	var entries []entry
	width := 0
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if f.Name == "help" || f.Hidden {
			return
		}
		word, usage := pflag.UnquoteUsage(f)
		e := entry{strings.TrimSpace("--" + f.Name + " " + word), usage}
		if word != "" && f.NoOptDefVal != "" { // a value that may be left out stands after =
			e.name = "--" + f.Name + "[=" + word + "]"
		}
		entries = append(entries, e)
		width = max(width, page.Width(e.name))
	})
	for _, e := range entries {
		for i, line := range page.Wrap(e.usage, page.Columns-width-4) {
			if i > 0 {
				e.name = ""
			}
			fmt.Fprintf(cmd.OutOrStdout(), "  %s  %s\n", page.Left(e.name, width), line)
		}
	}
}

// helpCommand is "fairlead help COMMAND", for those who try that first.
func helpCommand(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:    "help [COMMAND]",
		Short:  "how to use a command",
		Hidden: true,
		RunE: func(_ *cobra.Command, args []string) error {
			cmd, rest, err := root.Find(args)
			if err != nil || cmd == root && len(rest) > 0 {
				return unknownCommand(root, args[0])
			}
			return cmd.Help()
		},
	}
}
