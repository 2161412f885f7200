package cli

import (
	"github.com/spf13/cobra"

	"fairlead/solve"
	"fairlead/solve/report"
)

// solve computes what rigs do.
func (t *tool) solve() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "solve FILE...",
		Short: "its advantage, and the force in every rope and part",
		Long: "Computes each rig: its advantage and how that is made, the force in every strand of every " +
			"rope, what the fixed points carry while the team hauls and while the rig holds, and " +
			"whether the load stays up when everyone lets go.\n\n" + files + "\n\n" + report.Caution,
		Example: "  fairlead solve yard.rig\n  cat yard.rig | fairlead solve --as yard.rig --format json -",
	}
	t.solves(cmd, t.showResults)
	return cmd
}

// showResults writes solved rigs; origin says that they come from several files.
func (t *tool) showResults(format string, results []*solve.Result, origin bool) error {
	if format == formatJSON {
		return report.JSON(t.out, results)
	}
	return report.Text(t.out, results, origin, t.paint(t.out))
}
