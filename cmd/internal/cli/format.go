package cli

import (
	"errors"
	"fmt"
	"slices"

	"github.com/aymanbagabas/go-udiff"
	"github.com/spf13/cobra"

	rigfmt "fairlead/fmt"
	"fairlead/lang/diag"
	"fairlead/lang/load"
)

// formatting is what "fmt" does with the formatted text.
type formatting struct {
	write, check, diff bool
}

// format sets files in standard style.
func (t *tool) format() *cobra.Command {
	in := &inputs{}
	f := formatting{}
	cmd := &cobra.Command{
		Use:   "fmt FILE...",
		Short: "the file in standard style",
		Long: "Sets files in standard style: parts in columns, clauses in order, reeving lines aligned. " +
			"Meaning and comments stay. Prints the result, unless a setting says otherwise. A file " +
			"with an error in its text is left as it is, and the error is shown.\n\n" + files,
		Example: "  fairlead fmt --write yard.rig\n  fairlead fmt --check rigs/",
	}
	cmd.Flags().BoolVar(&f.write, "write", false, "write the result back to the file")
	cmd.Flags().BoolVar(&f.check, "check", false, "list the files that would change; exit status 1 if there is one")
	cmd.Flags().BoolVar(&f.diff, "diff", false, "show what would change; exit status 1 if anything would")
	in.attach(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := f.judge(args); err != nil {
			return err
		}
		loaded, unread := in.read(args, t.in)
		found, errs := false, []error{unread}
		for _, l := range loaded {
			bad, err := t.formatFile(l, f)
			found, errs = found || bad, append(errs, err)
		}
		return outcome(errors.Join(errs...), found)
	}
	return cmd
}

// judge refuses settings that contradict one another.
func (f formatting) judge(args []string) error {
	chosen := 0
	for _, on := range []bool{f.write, f.check, f.diff} {
		if on {
			chosen++
		}
	}
	switch {
	case chosen > 1:
		return misused("choose one of --write, --check and --diff")
	case f.write && slices.Contains(args, standardInput):
		return misused("standard input cannot be written back: leave out --write")
	}
	return nil
}

// formatFile formats one file; found says that something counts as found: an
// error in it, or a difference that was asked for.
func (t *tool) formatFile(l *load.Loaded, f formatting) (found bool, err error) {
	text, problems := formatted(l)
	if len(problems) > 0 {
		return true, t.showFaults(problems)
	}
	changes := text != l.File.Whole
	switch {
	case f.write:
		if !changes {
			return false, nil
		}
		return false, replace(l.File, text)
	case f.check:
		if changes {
			fmt.Fprintln(t.out, l.File.Name)
		}
		return changes, nil
	case f.diff:
		fmt.Fprint(t.out, udiff.Unified(l.File.Name, l.File.Name, l.File.Whole, text))
		return changes, nil
	}
	_, err = fmt.Fprint(t.out, text)
	return false, err
}

// formatted gives a file in the standard style: of notes, the blocks.
func formatted(l *load.Loaded) (string, []diag.Diagnostic) {
	if l.Notes != nil {
		return rigfmt.FormatNotes(l.File, l.Notes)
	}
	return rigfmt.Format(l.File)
}
