package cli

import (
	"github.com/spf13/cobra"

	"fairlead/cmd/internal/lsp"
)

// serve is the language server.
func (t *tool) serve() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "serve",
		Short: "a language server for editors, over standard input and output",
		Long: "Speaks the Language Server Protocol (3.17 or later) with an editor over standard input and output: " +
			"findings while you type with their fixes, figures in the text, the meaning of what is under the " +
			"cursor, completion, renaming and the standard style. An editor starts it; it ends with the editor.",
		Example: "  fairlead serve",
		Args:    noArguments,
	}
	// What some editors add to every server that they start.
	cmd.Flags().Bool("stdio", true, "talk over standard input and output, as always")
	cmd.Flags().String("clientProcessId", "", "the editor's process, which is not asked about")
	for _, name := range []string{"stdio", "clientProcessId"} {
		cmd.Flags().Lookup(name).Hidden = true
	}
	cmd.RunE = func(*cobra.Command, []string) error {
		return lsp.New(built()).Serve(t.in, prompt{t.out})
	}
	return cmd
}

// prompt is a stream that holds nothing back.
type prompt struct{ *stream }

// Write writes and flushes.
func (p prompt) Write(b []byte) (int, error) {
	n, err := p.stream.Write(b)
	if err != nil {
		return n, err
	}
	return n, p.Flush()
}
