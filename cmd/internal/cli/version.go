package cli

import (
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// version says which build this is.
func (t *tool) version() *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "which version this is",
		Long:    "Prints the version, and the state of the source that it was built from where that is known.",
		Example: "  fairlead version",
		Args:    noArguments,
		RunE: func(*cobra.Command, []string) error {
			fmt.Fprintln(t.out, "fairlead "+built())
			return nil
		},
	}
}

func noArguments(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return misused("%s takes no arguments", cmd.Name())
	}
	return nil
}

// built gives the version that the Go tool wrote into the program.
func built() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown version"
	}
	version, revision, changed := info.Main.Version, "", ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision":
			revision = " " + s.Value[:min(12, len(s.Value))]
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = " with changes"
		}
	}
	if version == "" || version == "(devel)" {
		version = "development version"
	}
	return version + revision + changed
}
