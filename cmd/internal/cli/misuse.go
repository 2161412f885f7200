package cli

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// flagMisuse says in our own words what is wrong with a flag.
func flagMisuse(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var value *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		name, known := unknown.GetSpecifiedName(), flagNames(cmd)
		if unknown.GetSpecifiedShortnames() != "" {
			return misused("%s has no setting -%s; its settings are written out: %s",
				cmd.CommandPath(), name, strings.Join(known, ", "))
		}
		return misused("%s has no setting --%s%s", cmd.CommandPath(), name, hint("--"+name, known))
	case errors.As(err, &bare):
		return misused("--%s needs a value", bare.GetFlag().Name)
	case errors.As(err, &value):
		return misused("--%s cannot be %q: %s", value.GetFlag().Name, value.GetValue(), value.Unwrap())
	}
	return misused("%s", err)
}

// flagNames lists the settings that a command takes, as they are written.
func flagNames(cmd *cobra.Command) []string {
	var names []string
	note := func(f *pflag.Flag) { names = append(names, "--"+f.Name) }
	cmd.LocalFlags().VisitAll(note)
	cmd.InheritedFlags().VisitAll(note)
	return names
}
