package cli

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/solve"
	"fairlead/solve/report"
)

// solve computes what rigs do.
func (t *tool) solve() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "solve FILE...",
		Short: "what it does: advantage, forces, what holds it, how far it goes",
		Long: "Computes each rig: its advantage, ideal and with friction, and how that is made; the pull and the " +
			"people it takes; the force in every strand of every rope; what the anchors carry hauling, held and " +
			"lowering, and how far the weakest part is from its strength; whether the load stays up when " +
			"everyone lets go, and when one part fails; how far a stroke goes and how much rope it takes. " +
			"What a figure needs and the rig does not say is named.\n\n" + files + "\n\n" + report.Caution,
		Example: "  fairlead solve yard.rig\n  fairlead solve --raise \"12 m\" yard.rig\n" +
			"  cat yard.rig | fairlead solve --as yard.rig --format json -",
	}
	height := &height{}
	cmd.Flags().Var(height, "raise", "counts strokes and resets for this `HEIGHT`, such as \"12 m\", as if the load said it")
	t.solves(cmd, func(format string, results []*solve.Result, origin bool) error {
		results, unclear := height.raised(results)
		if err := t.showResults(format, results, origin); err != nil {
			return err
		}
		return unclear
	})
	return cmd
}

// showResults writes solved rigs; origin says that they come from several files.
func (t *tool) showResults(format string, results []*solve.Result, origin bool) error {
	if format == formatJSON {
		return report.JSON(t.out, results)
	}
	return report.Text(t.out, results, origin, t.paint(t.out))
}

// height is the value of --raise; unset without one.
type height struct{ *quantity.Quantity }

// String gives the height as it was written.
func (h *height) String() string {
	if h.Quantity == nil {
		return ""
	}
	return h.Quantity.String()
}

// Set takes a number and a unit of length, with or without a space between them.
func (h *height) Set(text string) error {
	text = strings.TrimSpace(text)
	number := strings.TrimRight(text, "abcdefghijklmnopqrstuvwxyz")
	q, ok := quantity.New(strings.TrimSpace(number), "", strings.TrimPrefix(text, number))
	if !ok || q.Dimension != quantity.Length || q.Low.Sign() <= 0 {
		return errors.New(`it takes a height such as "12 m" or "40 ft"`)
	}
	h.Quantity = &q
	return nil
}

// Type gives what help calls the value.
func (h *height) Type() string { return "HEIGHT" }

// raised solves rigs again as if their loads said "raise". The error names those
// that do not show which of several loads is meant; they stay as they are.
func (h *height) raised(results []*solve.Result) ([]*solve.Result, error) {
	if h.Quantity == nil {
		return results, nil
	}
	var unclear []error
	list := make([]*solve.Result, len(results))
	for i, res := range results {
		list[i] = res
		load, several := raisable(res.Rig)
		switch {
		case several:
			unclear = append(unclear, misused("rig %s has several loads: write raise at the one that --raise is for", res.Rig.Name))
		case load != nil:
			load.Values.Raise = h.Quantity
			list[i] = solve.Rig(res.Rig)
		}
	}
	return list, errors.Join(unclear...)
}

// raisable gives the load that a height is for: the one that says "raise", else the
// only one that moves. Several says that there is a choice.
func raisable(rig *model.Rig) (load *model.Part, several bool) {
	for _, p := range rig.Parts {
		switch {
		case p.Kind != model.Load || !p.Moves():
		case p.Values.Raise != nil:
			return p, false
		case load == nil:
			load = p
		case p.Root() != load.Root():
			several = true
		}
	}
	return load, several
}
