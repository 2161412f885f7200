package rigfmt

import (
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/markdown"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// FormatNotes gives a Markdown document with every rig block of it in the standard
// style, each on its own; what stands outside the blocks is not touched. If the
// notation has errors they are the problems, at their places in the file of the
// document, and the document is as it was.
func FormatNotes(f *source.File, notes *markdown.Notes) (text string, problems []diag.Diagnostic) {
	if problems = errorsOf(syntax.Parse(f)); len(problems) > 0 {
		return notes.Whole, problems
	}
	contents := make([]string, len(notes.Blocks))
	for i, b := range notes.Blocks {
		content := notes.Content(b)
		// What is right in the document is right on its own: statements do not go on from
		// one block to the next.
		contents[i], _ = Format(source.New(f.Name, content))
		if !strings.HasSuffix(content, "\n") && b.Span.End == len(notes.Whole) {
			contents[i] = strings.TrimRight(contents[i], "\r\n")
		}
	}
	return notes.Replace(contents), nil
}
