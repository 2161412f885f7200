package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"fairlead/cmd/internal/show"
	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/solve"
)

// results writes solved rigs to standard output in a format; origin says that
// they come from several files.
type results func(format string, list []*solve.Result, origin bool) error

// solves makes a command read files, solve their rigs and write the results. The
// errors of the texts go to standard error and make the exit status 1.
func (t *tool) solves(cmd *cobra.Command, write results) {
	in := &inputs{}
	format := addFormat(cmd)
	in.attach(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		loaded, unread := in.read(args, t.in)
		faults := errorsIn(loaded)
		if err := t.showFaults(faults); err != nil {
			return err
		}
		solved := solveAll(loaded)
		if err := write(format.value, solved, len(loaded) > 1); err != nil {
			return err
		}
		if len(solved) == 0 && format.value == formatText && unread == nil {
			fmt.Fprintln(t.out, "no rig found")
		}
		return outcome(unread, len(faults) > 0)
	}
}

// solveAll solves the rigs of all files in their order.
func solveAll(loaded []*load.Loaded) []*solve.Result {
	var results []*solve.Result
	for _, l := range loaded {
		for _, r := range l.Model.Rigs {
			results = append(results, solve.Rig(r))
		}
	}
	return results
}

// errorsIn lists the errors in the text of all files.
func errorsIn(loaded []*load.Loaded) []diag.Diagnostic {
	var list []diag.Diagnostic
	for _, l := range loaded {
		for _, d := range l.Problems {
			if d.Severity == diag.Error {
				list = append(list, d)
			}
		}
	}
	return list
}

// showFaults writes the errors of a text to standard error, so that the results
// on standard output stay clean.
func (t *tool) showFaults(faults []diag.Diagnostic) error {
	return show.Text(t.errs, faults, t.paint(t.errs))
}
