package cli

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/agnivade/levenshtein"
	"github.com/spf13/cobra"

	"fairlead/solve/report/page"
)

// The exit statuses.
const (
	exitClean = 0 // nothing found
	exitFound = 1 // something found: a fault, a file that is not in standard style
	exitError = 2 // could not run: bad usage, a file that cannot be read
)

// errFound ends a command that has found and shown something.
var errFound = errors.New("found")

// usageError is a wrong use of the command line.
type usageError struct{ message string }

func (e usageError) Error() string { return e.message }

func misused(format string, args ...any) error {
	return usageError{fmt.Sprintf(format, args...)}
}

// tool is one run of the command line.
type tool struct {
	in        io.Reader
	out, errs *stream
	color     *choice
}

// Run runs the command line and gives its exit status.
func Run(args []string, in io.Reader, out, errs io.Writer) int {
	t := &tool{in: in, out: newStream(out), errs: newStream(errs), color: colorChoice()}
	root := t.root()
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(t.out)
	root.SetErr(t.errs)
	cmd, err := root.ExecuteC()
	if flushed := t.out.Flush(); flushed != nil && (err == nil || errors.Is(err, errFound)) {
		err = fmt.Errorf("the output could not be written: %w", flushed)
	}
	status := t.status(cmd, err)
	_ = t.errs.Flush() // nowhere left to say so
	return status
}

// status gives the exit status of an error, and says what went wrong.
func (t *tool) status(cmd *cobra.Command, err error) int {
	switch {
	case err == nil:
		return exitClean
	case errors.Is(err, errFound):
		return exitFound
	}
	for _, line := range strings.Split(err.Error(), "\n") {
		fmt.Fprintf(t.errs, "fairlead: %s\n", page.Clean(line))
	}
	var misuse usageError
	if errors.As(err, &misuse) {
		fmt.Fprintf(t.errs, "See %s --help.\n", cmd.CommandPath())
	}
	return exitError
}

// root builds the command tree.
func (t *tool) root() *cobra.Command {
	root := &cobra.Command{
		Use:               "fairlead",
		Short:             "haul rigs in plain text: their advantage, the count behind it, their faults",
		Args:              cobra.ArbitraryArgs,
		SilenceErrors:     true,
		SilenceUsage:      true,
		CompletionOptions: cobra.CompletionOptions{DisableDefaultCmd: true},
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return cmd.Help()
			}
			return unknownCommand(cmd, args[0])
		},
	}
	addChoice(root.PersistentFlags(), root, t.color, "color", "when to colour the output")
	root.SetFlagErrorFunc(flagMisuse)
	root.SetHelpFunc(t.help)
	root.SetUsageFunc(func(cmd *cobra.Command) error { t.help(cmd, nil); return nil })
	cobra.EnableCommandSorting = false // help lists the commands as here
	root.AddCommand(t.lint(), t.watch(), t.serve(), t.solve(), t.count(), t.format(), t.rules(), t.stock(), t.policy(), t.version(), t.completion())
	root.SetHelpCommand(helpCommand(root))
	return root
}

func unknownCommand(root *cobra.Command, name string) error {
	var names []string
	for _, c := range root.Commands() {
		names = append(names, c.Name())
	}
	return misused("there is no command %s%s", name, hint(name, names))
}

// hint gives " (did you mean …?)" where a name is near one of the known ones, or is how
// the only one begins.
func hint(name string, known []string) string {
	best, distance := "", 3
	var begun []string
	for _, k := range known {
		if strings.HasPrefix(k, name) {
			begun = append(begun, k)
		}
	}
	if len(begun) == 1 {
		known = begun
		distance = len(begun[0])
	}
	for _, k := range known {
		if d := levenshtein.ComputeDistance(name, k); d < distance && d < len(k) {
			best, distance = k, d
		}
	}
	if best == "" {
		return ""
	}
	return " (did you mean " + best + "?)"
}
