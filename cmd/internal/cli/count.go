package cli

import (
	"github.com/spf13/cobra"

	"fairlead/solve"
	"fairlead/solve/report"
)

// count counts the advantage of rigs aloud.
func (t *tool) count() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "count FILE...",
		Short: "the advantage counted aloud, step by step along the rope",
		Long: "Counts as an instructor does at the board: the pull is one, the rope carries the same on both " +
			"sides of every pulley, what meets at a moving part adds up. Each step stands beside the " +
			"piece of rope that it is about; at the end the way of the rope is the check.\n\n" + files,
		Example: "  fairlead count yard.rig",
	}
	t.solves(cmd, t.showCounts)
	return cmd
}

// showCounts writes the counts of rigs; origin says that they come from several
// files.
func (t *tool) showCounts(format string, results []*solve.Result, origin bool) error {
	var list []report.Counted
	for _, res := range results {
		list = append(list, report.CountOf(res))
	}
	if format == formatJSON {
		return report.CountJSON(t.out, list)
	}
	return report.CountText(t.out, list, origin, t.paint(t.out))
}
