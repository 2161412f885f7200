package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// choice is the value of a flag that takes one of a few words, the first of them
// by default.
type choice struct {
	value   string
	allowed []string
}

func newChoice(words ...string) *choice { return &choice{value: words[0], allowed: words} }

// String gives the word.
func (c *choice) String() string { return c.value }

// Set takes one of the words.
func (c *choice) Set(word string) error {
	if !slices.Contains(c.allowed, word) {
		return fmt.Errorf("%s is none of %s", word, strings.Join(c.allowed, ", "))
	}
	c.value = word
	return nil
}

// Type gives the words as help shows them.
func (c *choice) Type() string { return strings.Join(c.allowed, "|") }

// addChoice adds a flag for a choice, with completion of its words.
func addChoice(flags *pflag.FlagSet, cmd *cobra.Command, c *choice, name, usage string) {
	flags.Var(c, name, usage)
	// The only error is a flag that does not exist.
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(c.allowed, cobra.ShellCompDirectiveNoFileComp))
}

const (
	formatText     = "text"
	formatJSON     = "json"
	formatBrief    = "brief"
	formatSARIF    = "sarif"
	formatMarkdown = "markdown"
)

// addFormat adds --format.
func addFormat(cmd *cobra.Command) *choice {
	c := newChoice(formatText, formatJSON)
	addChoice(cmd.Flags(), cmd, c, "format", "text for people, json for machines")
	return c
}

// addFindingsFormat adds --format of a command that shows findings.
func addFindingsFormat(cmd *cobra.Command) *choice {
	c := newChoice(formatText, formatJSON, formatBrief, formatSARIF)
	addChoice(cmd.Flags(), cmd, c, "format", "text for people, json for machines, brief for an editor's list, sarif for review services")
	return c
}
