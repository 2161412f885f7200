package cli

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"fairlead/cmd/internal/show"
	"fairlead/cmd/internal/watch"
	"fairlead/lang/diag"
	"fairlead/lint/rules"
	"fairlead/solve/report/page"
)

// formatLines is one JSON object a line.
const formatLines = "jsonl"

// usualPoll is how often "--poll" looks: a hundred files cost it a thousandth of a core.
const usualPoll = 250 * time.Millisecond

// watch lints files as they are saved.
func (t *tool) watch() *cobra.Command {
	o := watch.Options{Rules: rules.All(), Quiet: watch.Quiet, Longest: watch.Longest}
	cmd := &cobra.Command{
		Use:   "watch [PATH...]",
		Short: "lints each file as it is saved",
		Long: "Lints files and folders, then each file again the moment it is saved, and shows what it found in it " +
			"with a line on all of them. Without a path, watches the folder it stands in. Ctrl-C ends it.\n\n" +
			"PATH is a rig file, Markdown notes with rig blocks, or a folder (all of both below it).",
		Example: "  fairlead watch rigs/\n  fairlead watch --format jsonl --poll=1s shared/rigs",
	}
	format := newChoice(formatText, formatLines)
	addChoice(cmd.Flags(), cmd, format, "format", "text for people, jsonl for editors: one JSON object a line")
	cmd.Flags().DurationVar(&o.Poll, "poll", 0, "look every `INTERVAL`, such as 1s, where the system reports no changes")
	cmd.Flags().Lookup("poll").NoOptDefVal = usualPoll.String()
	cmd.Flags().StringVar(&o.Policy, "policy", "", "the `FILE` of house rules for all files, in place of the nearest policy.rig of each")
	cmd.ValidArgsFunction = rigFiles
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if cmd.Flags().Changed("poll") && o.Poll <= 0 {
			return misused("--poll takes a time over 0, such as --poll=1s")
		}
		if err := holdsHouseRules(o.Policy); err != nil {
			return err
		}
		if o.Paths = args; len(args) == 0 {
			o.Paths = []string{"."}
		}
		for _, p := range o.Paths {
			if _, err := os.Stat(p); err != nil {
				return named(err)
			}
		}
		ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
		defer stop()
		return watch.Run(ctx, o, t.watched(format.value))
	}
	return cmd
}

// watched gives what writes the results of a look.
func (t *tool) watched(format string) func(watch.Batch) error {
	screen := &screen{out: t.out, size: t.out.size}
	return func(b watch.Batch) error {
		if b.Unread != nil {
			fmt.Fprintf(t.errs, "fairlead: %s\n", page.Clean(named(b.Unread).Error()))
			_ = t.errs.Flush() // nowhere left to say so
			screen.lines = 0   // what stands on standard error is not ours to clear
		}
		var err error
		if format == formatLines {
			err = t.watchedLines(b)
		} else {
			err = screen.show(t.watchedText(b, time.Now()))
		}
		if err != nil {
			return err
		}
		return t.out.Flush()
	}
}

// watchedLines writes one object for each file that was linted or has gone.
func (t *tool) watchedLines(b watch.Batch) error {
	for _, l := range b.Changed {
		if err := show.Publish(t.out, l.File.File.Name, l.Outcome.Findings); err != nil {
			return err
		}
	}
	for _, name := range b.Gone {
		if err := show.Publish(t.out, name, nil); err != nil {
			return err
		}
	}
	return nil
}

// watchedText gives what was found in the files that were saved, and a line on all.
func (t *tool) watchedText(b watch.Batch, now time.Time) string {
	var out strings.Builder
	var changed, every []diag.Diagnostic
	for _, l := range b.Changed {
		changed = append(changed, l.Outcome.Findings...)
	}
	rigs, accepted := 0, 0
	for _, l := range b.Every {
		every = append(every, l.Outcome.Findings...)
		accepted += l.Outcome.Accepted
		rigs += len(l.File.Model.Rigs)
	}
	paint := t.paint(t.out)
	_ = show.Text(&out, changed, paint) // a text in memory takes all
	total := show.Total(every, show.Sum{Rigs: rigs, Accepted: accepted})
	words := "watching: " + total
	if !b.First {
		words = now.Format(time.TimeOnly) + "  " + happened(b.Saved, b.Gone) + ": " + total
	}
	for _, line := range page.Wrap(words, page.Columns) {
		fmt.Fprintln(&out, paint.Set(page.Strong, line))
	}
	return out.String()
}

// happened says in words what became of files.
func happened(saved, gone []string) string {
	var words []string
	if len(saved) > 0 {
		words = append(words, several(saved)+" saved")
	}
	if len(gone) > 0 {
		words = append(words, several(gone)+" gone")
	}
	return strings.Join(words, ", ")
}

// several names up to three files and counts more.
func several(names []string) string {
	if len(names) > 3 {
		return fmt.Sprintf("%d files", len(names))
	}
	return page.List(names)
}
