package cli

import (
	"github.com/spf13/cobra"
)

// completion writes the script that makes a shell complete our names.
func (t *tool) completion() *cobra.Command {
	shells := []string{"bash", "zsh", "fish", "powershell"}
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "commands, files and rule names at the Tab key",
		Long: "Prints a script for bash, zsh, fish or powershell. Once the shell has read it, the Tab key " +
			"completes commands, settings, rig files and rule names.",
		Example: "  source <(fairlead completion bash)\n" +
			"  fairlead completion fish > ~/.config/fish/completions/fairlead.fish",
		ValidArgs: shells,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return misused("name one shell: bash, zsh, fish or powershell")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			root := cmd.Root()
			switch args[0] {
			case "bash":
				return root.GenBashCompletionV2(t.out, true)
			case "zsh":
				return root.GenZshCompletion(t.out)
			case "fish":
				return root.GenFishCompletion(t.out, true)
			case "powershell":
				return root.GenPowerShellCompletionWithDesc(t.out)
			}
			return misused("there is no script for %s; there is one for bash, zsh, fish and powershell", args[0])
		},
	}
}

// rigFiles completes rig files, and folders on the way to them.
func rigFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"rig"}, cobra.ShellCompDirectiveFilterFileExt
}
