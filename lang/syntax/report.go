package syntax

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// reporter gathers the faults of one file.
type reporter struct {
	file     *source.File
	problems []diag.Diagnostic
	// subject is the part whose statement is being read; empty if there is none.
	subject string
	// badRuns counts the places with bad characters; lastBad is the last of them among
	// the problems.
	badRuns, lastBad int
	// faulty says that an error was reported since it was last cleared.
	faulty bool
}

// fault reports an error. Its message is complete as it is.
func (r *reporter) fault(rule string, span source.Span, format string, args ...any) *diag.Diagnostic {
	r.faulty = true
	r.problems = append(r.problems, diag.Diagnostic{
		Rule: rule, Severity: diag.Error, Place: r.file.At(span),
		Message: fmt.Sprintf(format, args...), Subject: r.subject,
	})
	return &r.problems[len(r.problems)-1]
}

// related makes a place that helps to understand a fault.
func (r *reporter) related(span source.Span, message string) diag.Related {
	return diag.Related{Place: r.file.At(span), Message: message}
}

// partFault reports an error in the statement of a part, whose name it puts
// before the message.
func (r *reporter) partFault(rule string, span source.Span, message string) *diag.Diagnostic {
	if r.subject != "" {
		message = clip(r.subject) + ": " + message
	}
	return r.fault(rule, span, "%s", message)
}

// clip makes a piece of the file fit for a message: short, on one line, and
// without what cannot be printed.
func clip(text string) string {
	const most = 40
	shown := []rune(strings.Map(printable, text[:min(len(text), 4*most)]))
	if len(shown) < most || len(shown) == most && len(text) <= 4*most {
		return string(shown)
	}
	return string(shown[:most-1]) + "…"
}

func printable(r rune) rune {
	if unicode.IsPrint(r) {
		return r
	}
	return utf8.RuneError
}

// list joins words as one says them: "a, b or c".
func list(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	end := len(words) - 1
	return strings.Join(words[:end], ", ") + " " + last + " " + words[end]
}
