package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"

	"github.com/spf13/cobra"

	"fairlead/lang/load"
)

// standardInput is the argument that stands for it.
const standardInput = "-"

// inputs are the files that a command reads.
type inputs struct {
	// as is the name that standard input goes by.
	as string
	// policy is the file of house rules for all files; empty for the nearest of each.
	policy string
}

// attach adds to a command what reading files needs.
func (in *inputs) attach(cmd *cobra.Command) {
	cmd.Flags().StringVar(&in.as, "as", "", "the `NAME` that standard input goes by")
	cmd.ValidArgsFunction = rigFiles
	cmd.Args = func(_ *cobra.Command, args []string) error {
		switch {
		case len(args) == 0:
			return misused("name a file or a folder, or - for standard input")
		case in.as != "" && !slices.Contains(args, standardInput):
			return misused("--as names standard input, but - is not among the files")
		}
		return nil
	}
}

// attachPolicy adds to a command which house rules hold.
func (in *inputs) attachPolicy(cmd *cobra.Command) {
	cmd.Flags().StringVar(&in.policy, "policy", "", "the `FILE` of house rules for all files, in place of the nearest policy.rig of each")
	// The only error is a flag that does not exist.
	_ = cmd.MarkFlagFilename("policy", "rig")
	cmd.PreRunE = func(*cobra.Command, []string) error { return holdsHouseRules(in.policy) }
}

// holdsHouseRules says what is wrong with a file that was named for its house rules: with
// other rules than those that were asked for, no answer would be right.
func holdsHouseRules(file string) error {
	if file == "" {
		return nil
	}
	if at, err := os.Stat(file); err == nil && at.IsDir() {
		return misused("--policy takes a file, and %s is a folder", file)
	}
	loaded, err := load.Loader{}.Paths([]string{file})
	switch {
	case err != nil:
		return named(err)
	case len(loaded) == 1 && len(loaded[0].Model.Policies) == 0 && len(loaded[0].Problems) == 0:
		return misused("%s has no house rules: no line begins with policy, require or rule", file)
	}
	return nil
}

// read reads the files in the order of the arguments. What cannot be read is left
// out, and the error names it.
func (in *inputs) read(args []string, stdin io.Reader) ([]*load.Loaded, error) {
	loaded, err := load.Loader{Stdin: stdin, As: in.as, Policy: in.policy}.Paths(args)
	return loaded, named(err)
}

// named gives file errors as "PATH: REASON", each on a line.
func named(err error) error {
	if several, ok := err.(interface{ Unwrap() []error }); ok {
		var list []error
		for _, one := range several.Unwrap() {
			list = append(list, named(one))
		}
		return errors.Join(list...)
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		return fmt.Errorf("%s: %w", at.Path, at.Err)
	}
	return err
}

// outcome gives the error that ends a command: files that could not be read
// weigh more than what was found.
func outcome(unread error, found bool) error {
	switch {
	case unread != nil:
		return unread
	case found:
		return errFound
	}
	return nil
}

func rigsIn(loaded []*load.Loaded) int {
	n := 0
	for _, l := range loaded {
		n += len(l.Model.Rigs)
	}
	return n
}
